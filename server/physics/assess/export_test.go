package assess

// Unbanded is the report of the base pass alone, for tests that ask for no bands.
func Unbanded(in Input) (Report, error) {
	geometry, err := Prepare(in)
	if err != nil {
		return Report{}, err
	}
	base := newPass(&in, geometry)
	base.walk()
	return base.report(), base.fault
}

package assess

// Version of the core: changes with every change that moves a number.
const Version = "0.2.0"

// Run computes the report of one input.
func Run(in Input) (Report, error) {
	return Report{CoreVersion: Version}, nil
}

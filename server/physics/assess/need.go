package assess

// need gathers what an answer needs and names what is missing.
type need struct {
	pass    *pass
	missing []string
}

func (p *pass) need() need { return need{pass: p} }

// quantity reads a quantity that the answer cannot do without.
func (n *need) quantity(name string, q *Quantity) float64 {
	value, ok := n.pass.read(name, q)
	if !ok {
		n.lack(name)
	}
	return value
}

// number reads a plain number that the answer cannot do without.
func (n *need) number(name string, value *float64) float64 {
	if value == nil {
		n.lack(name)
		return 0
	}
	return *value
}

// lack names a missing input once.
func (n *need) lack(names ...string) {
	for _, name := range names {
		if !contains(n.missing, name) {
			n.missing = append(n.missing, name)
		}
	}
}

// met reports whether nothing is missing.
func (n *need) met() bool { return len(n.missing) == 0 }

func contains(names []string, name string) bool {
	for _, n := range names {
		if n == name {
			return true
		}
	}
	return false
}

// optional reads a quantity, or the fallback when it is missing.
func (p *pass) optional(name string, q *Quantity, fallback float64) float64 {
	value, ok := p.read(name, q)
	if !ok {
		return fallback
	}
	return value
}

// orElse returns a plain number, or the fallback when it is missing.
func orElse(value *float64, fallback float64) float64 {
	if value == nil {
		return fallback
	}
	return *value
}

func yes(value *bool) bool { return value != nil && *value }

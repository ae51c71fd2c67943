package assess

// pairings give a value to each of a few keys. A map would do the same, but only after code has filled it at the start, which the page's core would carry;
// these are plain data.
type pairings[K comparable, V any] []pairing[K, V]

// pairing is one key with its value.
type pairing[K comparable, V any] struct {
	key   K
	value V
}

// find returns the value of a key, and whether there is one.
func (p pairings[K, V]) find(key K) (value V, known bool) {
	for i := range p {
		if p[i].key == key {
			return p[i].value, true
		}
	}
	return value, false
}

// of returns the value of a key, or none.
func (p pairings[K, V]) of(key K) V {
	value, _ := p.find(key)
	return value
}

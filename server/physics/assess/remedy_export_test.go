package assess

// TriedKnob is a document with one knob turned, and the answers that the search for remedies has for it when it asks for each alone.
type TriedKnob struct {
	Name     string
	Changed  Input
	Findings map[string]*Finding
}

// TryKnobs turns every knob of a document to the last of its first settings.
func TryKnobs(in Input, geometry *Geometry, ids []string) ([]TriedKnob, error) {
	r := &remedySearch{in: &in, whole: geometry}
	if err := r.begin(); err != nil {
		return nil, err
	}
	var list []TriedKnob
	for i := range knobs {
		places := r.placesOf(&knobs[i])
		for k := range places {
			found := &places[k]
			settings := found.settings()
			if len(settings) == 0 {
				continue
			}
			turned := settings[len(settings)-1:]
			one := TriedKnob{Name: found.knob.id + " " + found.title, Changed: copyInput(&in), Findings: map[string]*Finding{}}
			turned[0].set(&one.Changed)
			for _, id := range ids {
				one.Findings[id] = r.try(turned, r.neededFor([]int{indexOf(r.base.results, id)}), false).finding(id)
			}
			list = append(list, one)
		}
	}
	return list, nil
}

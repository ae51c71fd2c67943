package assess

import "slices"

// copied returns a copy of what a pointer leads to; nil of nil.
func copied[T any](p *T) *T {
	if p == nil {
		return nil
	}
	out := *p
	return &out
}

// apart returns a copy of a finding that outlives the pass which found it; nil of nil.
func (f *Finding) apart() *Finding {
	out := copied(f)
	if out != nil {
		out.Value, out.Margin, out.Limit, out.UpperLimit = copied(f.Value), copied(f.Margin), copied(f.Limit), copied(f.UpperLimit)
	}
	return out
}

// copyInput returns a copy of a document in which every part that a knob changes may be written to: quantities are replaced, never written.
func copyInput(in *Input) Input {
	out := *in
	out.Model, out.LaunchPlan, out.Day, out.Field = copyModel(in.Model), copyPlan(in.LaunchPlan), copied(in.Day), copied(in.Field)
	if out.Field != nil {
		out.Field.Strips = slices.Clone(in.Field.Strips)
	}
	return out
}

func copyPlan(plan *LaunchPlan) *LaunchPlan {
	out := copied(plan)
	if out != nil {
		out.Ramp, out.Bungee, out.Circuit, out.Landing = copied(plan.Ramp), copied(plan.Bungee), copied(plan.Circuit), copied(plan.Landing)
	}
	return out
}

func copyModel(m *ModelDescription) *ModelDescription {
	out := copied(m)
	if out == nil {
		return nil
	}
	out.Mass, out.Gear, out.FuelSystem, out.Radio, out.Structure = copied(m.Mass), copied(m.Gear), copied(m.FuelSystem), copied(m.Radio), copyStructure(m.Structure)
	out.Engines, out.Packs, out.HeatedParts = slices.Clone(m.Engines), slices.Clone(m.Packs), slices.Clone(m.HeatedParts)
	out.Surfaces = slices.Clone(m.Surfaces)
	for i := range out.Surfaces {
		out.Surfaces[i].Controls = slices.Clone(out.Surfaces[i].Controls)
		for k := range out.Surfaces[i].Controls {
			out.Surfaces[i].Controls[k].Linkage = copied(out.Surfaces[i].Controls[k].Linkage)
		}
	}
	if out.Mass != nil {
		out.Mass.Items, out.Mass.Tanks = slices.Clone(out.Mass.Items), slices.Clone(out.Mass.Tanks)
	}
	if out.FuelSystem != nil {
		out.FuelSystem.Lines = slices.Clone(out.FuelSystem.Lines)
	}
	if out.Radio != nil {
		out.Radio.Antennas = slices.Clone(out.Radio.Antennas)
	}
	return out
}

func copyStructure(s *Structure) *Structure {
	out := copied(s)
	if out == nil {
		return nil
	}
	out.WingSpar, out.CanardSpar, out.TailplaneSpar = copySpar(s.WingSpar), copySpar(s.CanardSpar), copySpar(s.TailplaneSpar)
	out.Boom, out.Joiner, out.TorsionBox = slices.Clone(s.Boom), copied(s.Joiner), copied(s.TorsionBox)
	if out.Joiner != nil {
		out.Joiner.Part = copied(out.Joiner.Part)
	}
	return out
}

func copySpar(spar []SparStation) []SparStation {
	out := slices.Clone(spar)
	for i := range out {
		out[i].Parts = slices.Clone(out[i].Parts)
	}
	return out
}

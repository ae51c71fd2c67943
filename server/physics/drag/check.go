package drag

import (
	"errors"
	"math"
	"strconv"

	"pitgate/server/physics/planform"
)

// field is one measure by name.
type field struct {
	name  string
	value float64
}

// Check returns the error that names the first measure that is negative, infinite or not a number, or the surface that cannot be measured.
// BuildUp counts such measures as zero and leaves such surfaces out.
func Check(a Aircraft, c Conditions) error {
	for i, s := range a.Surfaces {
		if err := planform.Check(s); err != nil {
			return errors.New("surfaces[" + strconv.Itoa(i) + "]: " + err.Error())
		}
	}
	fields := []field{
		{"speed", c.Speed}, {"reference area", c.ReferenceArea}, {"air density", c.Air.Density}, {"air viscosity", c.Air.Viscosity},
		{"leakage", a.Leakage}, {"step height", a.Step.Height}, {"step place", a.Step.Place},
	}
	fields = append(fields, bodyFields(a.Bodies)...)
	fields = append(fields, gearFields(a.Gear)...)
	fields = append(fields, itemFields(a.Items)...)
	if d := a.Duct; d != nil {
		fields = append(fields, field{"duct intake area", d.IntakeArea}, field{"duct length", d.Length}, field{"duct wetted area", d.WettedArea},
			field{"duct exit area", d.ExitArea}, field{"duct mass flow", d.MassFlow})
	}
	for _, f := range fields {
		if !(f.value >= 0) || math.IsInf(f.value, 0) {
			return errors.New(f.name + " must be a number of zero or more")
		}
	}
	return nil
}

// bodyFields lists the measures of bodies.
func bodyFields(bodies []Body) []field {
	var out []field
	for i, b := range bodies {
		at := "bodies[" + strconv.Itoa(i) + "] "
		out = append(out, field{at + "base area", b.BaseArea})
		for _, s := range b.Stations {
			out = append(out, field{at + "width", s.Width}, field{at + "height", s.Height})
		}
	}
	return out
}

// gearFields lists the measures of the gear.
func gearFields(g *Gear) []field {
	if g == nil {
		return nil
	}
	out := []field{
		{"gear strut frontal area", g.StrutFrontalArea}, {"gear strut diameter", g.StrutDiameter}, {"gear skid frontal area", g.SkidFrontalArea},
		{"gear skid slenderness", g.SkidSlenderness},
	}
	for i, w := range g.Wheels {
		at := "gear wheels[" + strconv.Itoa(i) + "] "
		out = append(out, field{at + "diameter", w.Diameter}, field{at + "width", w.Width})
	}
	return out
}

// itemFields lists the measures of items.
func itemFields(items []Item) []field {
	var out []field
	for i, item := range items {
		at := "items[" + strconv.Itoa(i) + "] "
		out = append(out, field{at + "coefficient", item.Coefficient}, field{at + "frontal area", item.FrontalArea},
			field{at + "interference", item.Interference}, field{at + "spread", item.Spread}, field{at + "count", float64(item.Count)})
	}
	return out
}

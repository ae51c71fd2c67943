package assess

import (
	"strings"

	"pitgate/server/physics/air"
	"pitgate/server/physics/heat"
)

// partNote says how hot the worst part becomes, by what, and what would mend it.
func partNote(a *heat.Answer) string {
	celsius := func(kelvin float64) float64 { return kelvin - air.FreezingPoint }
	note := say("%s (%s) stands %.0f C and becomes %.0f C by the %s, %.0f C by the conservative answer.", partName(a.Part.Name), a.Material.Name,
		celsius(a.Material.Service), celsius(a.Best), a.Cause, celsius(a.Worst))
	if a.Cause == heat.ByMeasured {
		return say("%s (%s) stands %.0f C; %.0f C were measured in a static run, told for the day's air.", partName(a.Part.Name), a.Material.Name,
			celsius(a.Material.Service), celsius(a.Best))
	}
	if !a.Known {
		note += " Its material is not one of the table: the weakest is taken."
	}
	if a.Cause == heat.BySoakBack {
		note += sayNumbers(" The peak comes %.0f s after shut-down.", a.Soak.After)
	}
	if a.Verdict == heat.Uncertain {
		return note + " Only a temperature measured in a static run settles it."
	}
	return note + heatFixes(a)
}

// partName begins a sentence with the name of a part.
func partName(name string) string {
	if name == "" {
		return "A part without a name"
	}
	return capital(name)
}

// heatFixes says the smallest changes that keep the part under its limit.
func heatFixes(a *heat.Answer) string {
	var words []string
	for _, fix := range a.Fixes {
		switch fix.Change {
		case heat.AddFoil:
			words = append(words, "foil on the face towards the pipe")
		case heat.FoilMove:
			words = append(words, sayNumbers("foil and %.0f mm instead of %.0f mm to the pipe", 1000*fix.To, 1000*fix.From))
		case heat.MoveBack:
			words = append(words, sayNumbers("%.0f mm behind the nozzle instead of %.0f mm", 1000*fix.To, 1000*fix.From))
		default:
			words = append(words, sayNumbers("%.0f mm away instead of %.0f mm", 1000*fix.To, 1000*fix.From))
		}
	}
	if len(words) == 0 {
		return ""
	}
	return " What would mend it: " + strings.Join(words, "; or ") + "."
}

// undeclaredNote names what was found in the plume and is not declared.
func (p *pass) undeclaredNote(parts []nearPart) string {
	var names []string
	for i := range parts {
		if parts[i].path == "" {
			names = append(names, say("%s (%.0f mm behind the nozzle, %.0f mm off its axis)", parts[i].part.Name, 1000*parts[i].part.Behind, 1000*parts[i].part.From))
		}
	}
	if len(names) == 0 {
		return ""
	}
	return " In the plume and not declared as heated: " + strings.Join(names, ", ") + "."
}

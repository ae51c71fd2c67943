package assess

import "pitgate/server/physics/heat"

const heatGroup = "Heat"

var benchHeatRows = []benchRow{
	{id: "bench.heat.part", group: heatGroup, title: "Highest temperature", each: benchHeatedParts, input: ".measuredTemperatureCelsius", unit: "C", photo: true,
		how: "Stick a label or a probe on the hottest place before the static run; read it again three minutes after shut-down, when the heat has soaked through.",
		why: "A measured temperature replaces a cautious guess.", findings: []string{"heat.skin", "heat.plume"}, wanted: wantedTemperature},
	{id: "bench.heat.foil", group: heatGroup, title: "Foil shield", each: benchHeatedParts, input: ".foilShield", photo: true,
		how: "Look at it: bright, whole, held at the edges, a gap of air behind it.", why: "The report counts on the bright face; a sooted one helps little.",
		findings: []string{"heat.skin"}, wanted: state("bright, whole, fixed"),
		applies: func(v *benchView, s *benchSubject) bool { return yes(v.model.HeatedParts[s.index].FoilShield) }},
	{id: "bench.heat.undeclared", group: heatGroup, title: "Parts near the exhaust that the document does not name", input: "model.heatedParts",
		how: "Look along the pipe and behind the nozzle: skin, tail, antenna, servo lead, hose, tyre. Label each that could become warm in the static run.",
		why: "The report heats only what it is told of.", findings: []string{"heat.plume", "heat.skin"}, applies: hasTurbine, wanted: state("each is in the document, or stays cool")},
	{id: "bench.heat.ground", group: heatGroup, title: "Ground behind the nozzle", unit: "m", applies: hasTurbine,
		how: "Start on bare ground, a wet mat or a sheet; clear dry grass and litter behind the nozzle as far as this.",
		why: "A start in dry grass is how a field burns.", findings: []string{"heat.ground"}, wanted: func(v *benchView, _ *benchSubject) benchWanted {
			return least(v.number("heat.reach"), "cleared or wetted length behind the nozzle")
		}},
}

func benchHeatedParts(v *benchView) []benchSubject {
	out := make([]benchSubject, len(v.model.HeatedParts))
	for i := range v.model.HeatedParts {
		out[i] = benchSubject{name: v.model.HeatedParts[i].Name, path: at("model.heatedParts", i), index: i}
	}
	return out
}

// wantedTemperature is what the part's material stands for long.
func wantedTemperature(v *benchView, s *benchSubject) benchWanted {
	material, _ := heat.Named(v.model.HeatedParts[s.index].Material)
	limit := material.Service - heat.Celsius
	return benchWanted{text: "what " + material.Name + " stands", high: &limit}
}

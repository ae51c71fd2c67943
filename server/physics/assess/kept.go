package assess

import (
	"slices"
	"strings"
)

// keptAnswer is an answer of the base pass with the numbers that it was computed from.
type keptAnswer struct {
	key    []float64
	answer answer
}

// remember answers a question that takes long: the base pass remembers its answer, and a moved pass computes its own only where the numbers
// that the answer is computed from have moved.
func (p *pass) remember(id string, key []float64, compute func() answer) answer {
	if p.base() {
		out := compute()
		if p.drawing.kept == nil {
			p.drawing.kept = map[string]keptAnswer{}
		}
		p.drawing.kept[id] = keptAnswer{key: key, answer: out}
		return out
	}
	if was, ok := p.drawing.kept[id]; ok && slices.Equal(was.key, key) {
		return was.answer
	}
	return compute()
}

// What moves the answers that take longest: how far a model without thrust comes, and how low a landing can be broken off.
var (
	glideMovers = []string{
		"day.windSpeedMetersPerSecond", "day.windDirectionDegrees", "method: zero-lift drag", reactionMethod,
	}
	failureMovers  = glideMovers[:2]
	goAroundMovers = []string{
		"day.windSpeedMetersPerSecond", "method: zero-lift drag", "method: greatest lift of the section", "model.mass.emptyMassKg",
		"model.engines[0].staticThrustNewtons", "model.engines[0].spoolUpSeconds",
	}
)

// bracket returns a key by which remember computes anew only in the passes that move one of some inputs.
func (p *pass) bracket(movers []string) []float64 {
	if slices.Contains(movers, p.moved) || strings.HasPrefix(p.moved, "model.engines[0].staticRun[") {
		return []float64{p.by}
	}
	return nil
}

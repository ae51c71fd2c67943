package elementary

import "testing"

var sink float64

func BenchmarkElementary(b *testing.B) {
	functions := map[string]func(float64) float64{
		"exp": Exp, "log": Log, "sin": Sin, "atan": Atan, "tanh": Tanh, "pow": func(x float64) float64 { return Pow(x, 0.19) },
	}
	for name, f := range functions {
		b.Run(name, func(b *testing.B) {
			x := 0.3
			for b.Loop() {
				x = max(0.1, min(0.9, x+1e-6))
				sink += f(x)
			}
		})
	}
}

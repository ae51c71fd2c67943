package motion

import (
	"fmt"
	"testing"
)

func TestScratch(t *testing.T) {
	a := Aircraft{Mass: 12, Area: .65, Span: 2, CD0: .035, InducedFactor: .068967, CLMax: 1.1, CLGround: .3, GroundDrag: .01, WingHeight: .24, Thrust: func(v, t float64) float64 { return 100 }}
	air := Conditions{Density: 1.225}
	l := Launch{Method: Wheels, Friction: .08, LiftoffSpeed: 1.2 * 16.392489, Distance: 200}
	r, err := l.Run(a, air)
	fmt.Printf("%+v %v\n", r.Path[len(r.Path)-1], err)
	r.Path = nil
	n := r.trace.runs[0].Steps()
	m := r.trace.flown.Steps()
	for _, d := range []float64{10, 30, 50, 100, 150, 200} {
		fmt.Println(r.At(d))
	}
	r.trace = trace{}
	fmt.Printf("%+v %d %d\n", r, n, m)
}

func BenchmarkLaunch(b *testing.B) {
	a := Aircraft{Mass: 12, Area: .65, Span: 2, CD0: .035, InducedFactor: .068967, CLMax: 1.1, CLGround: .3, GroundDrag: .01, WingHeight: .24, Thrust: func(v, t float64) float64 { return 100 }}
	air := Conditions{Density: 1.225}
	l := Launch{Method: Wheels, Friction: .08, LiftoffSpeed: 1.2 * 16.392489, Distance: 200}
	b.ReportAllocs()
	for b.Loop() {
		l.Run(a, air)
	}
}

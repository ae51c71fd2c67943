package weather

import (
	"math"
	"strings"
	"testing"
)

// trainer is a model on wheels.
var trainer = Wheels{
	Airspeed: 15, Density: 1.225, Area: 0.6, Span: 2, YawStiffness: 0.08, RudderPower: 0.06, RudderThrow: degrees(20), SideForce: 0.4,
	SteeringLoad: 8, SteeringArm: 0.5, WheelLoad: 40, SideFriction: 0.2, CrabAtTouching: degrees(10),
}

func TestCrosswindLimitsInClosedForm(t *testing.T) {
	t.Parallel()
	pressure := 0.5 * 1.225 * 15 * 15 * 0.6
	slip := degrees(20) * 0.06 / 0.08
	held := slip + 0.2*8*0.5/(pressure*2)/0.08
	cases := []struct {
		name      string
		got, want float64
	}{
		{"slip", trainer.SlipLimit().Speed, 15 * math.Tan(slip)},
		{"weathercock", trainer.WeathercockLimit().Speed, 15 * math.Tan(held)},
		{"slide", trainer.SlideLimit().Speed, 15 * math.Tan(0.2*40/(pressure*0.4))},
		{"crab", trainer.CrabLimit().Speed, 15 * math.Sin(degrees(10))},
		{"approach", trainer.ApproachLimit().Speed, 15 * math.Tan(slip)},
	}
	for _, c := range cases {
		if math.Abs(c.got-c.want) > 1e-12*c.want {
			t.Errorf("%s: %.15g, want %.15g", c.name, c.got, c.want)
		}
	}
}

func TestAtTheSlipLimitTheYawingMomentsBalance(t *testing.T) {
	t.Parallel()
	for _, throw := range []float64{2, 8, 15} {
		w := trainer
		w.RudderThrow = degrees(throw)
		sideslip := math.Atan2(w.SlipLimit().Speed, w.Airspeed)
		if left := w.YawStiffness*sideslip - w.RudderPower*w.RudderThrow; math.Abs(left) > 1e-12 {
			t.Errorf("throw %g: %g of yawing moment is left", throw, left)
		}
	}
}

func TestCrosswindTrends(t *testing.T) {
	t.Parallel()
	base := trainer.WeathercockLimit().Speed
	for name, change := range map[string]func(*Wheels){
		"less rudder": func(w *Wheels) { w.RudderThrow /= 2 }, "stiffer fin": func(w *Wheels) { w.YawStiffness *= 1.5 },
		"no steering": func(w *Wheels) { w.SteeringLoad = 0 }, "wet grass": func(w *Wheels) { w.SideFriction = 0.1 },
		"slower": func(w *Wheels) { w.Airspeed = 8; w.SteeringLoad = 0 },
	} {
		w := trainer
		change(&w)
		if got := w.WeathercockLimit().Speed; got >= base {
			t.Errorf("%s: limit %g is not below %g", name, got, base)
		}
	}
}

func TestCrosswindBeyondTheDerivativesIsHeld(t *testing.T) {
	t.Parallel()
	w := trainer
	w.RudderThrow = 1
	if slip := w.SlipLimit(); !slip.Extrapolated || math.Abs(slip.Speed-15*math.Tan(degrees(20))) > 1e-12 {
		t.Errorf("%+v", slip)
	}
	w.SideForce, w.CrabAtTouching = 0, 0
	if w.SlideLimit().Speed < 1e300 || w.CrabLimit().Speed < 1e300 || w.ApproachLimit() != w.SlipLimit() {
		t.Error("reasons that are left out limit")
	}
	w.CrabAtTouching = degrees(40)
	if w.ApproachLimit() != w.CrabLimit() {
		t.Error("the easier way of touching down is not taken")
	}
}

func TestImpossibleWheelsAreNamed(t *testing.T) {
	t.Parallel()
	if err := trainer.Check(); err != nil {
		t.Fatal(err)
	}
	for name, change := range map[string]func(*Wheels){
		"airspeed": func(w *Wheels) { w.Airspeed = 0 }, "yaw stiffness": func(w *Wheels) { w.YawStiffness = -0.1 },
		"rudder throw": func(w *Wheels) { w.RudderThrow = math.NaN() }, "wheel load": func(w *Wheels) { w.WheelLoad = math.Inf(1) },
	} {
		w := trainer
		change(&w)
		if err := w.Check(); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func FuzzWheels(f *testing.F) {
	f.Add(15.0, 0.6, 2.0, 0.08, 0.06, 0.35, 0.4, 8.0)
	f.Fuzz(func(t *testing.T, airspeed, area, span, stiffness, power, throw, side, load float64) {
		w := Wheels{Airspeed: airspeed, Density: 1.2, Area: area, Span: span, YawStiffness: stiffness, RudderPower: power, RudderThrow: throw,
			SideForce: side, SteeringLoad: load, SteeringArm: 0.5, WheelLoad: load, SideFriction: 0.5, CrabAtTouching: throw}
		if w.Check() != nil {
			return
		}
		for _, limit := range []CrosswindLimit{w.SlipLimit(), w.WeathercockLimit(), w.SlideLimit(), w.CrabLimit(), w.ApproachLimit()} {
			if !(limit.Speed >= 0) || math.IsInf(limit.Speed, 0) {
				t.Errorf("%+v: %+v", w, limit)
			}
		}
	})
}

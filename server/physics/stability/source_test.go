package stability

import (
	"path"
	"strconv"
	"strings"
	"testing"

	"pitgate/server/physics/lift"
)

// stateOf reads the state of a row; what a row does not have stays 0.
func (in inputs) stateOf(t *testing.T) State {
	t.Helper()
	return State{
		Mass: in.number(t, "mass"), Speed: in.number(t, "speed"), Density: in.number(t, "density"), Area: in.number(t, "area"),
		Span: in.number(t, "span"), Chord: in.number(t, "chord"), Lift: in.number(t, "lift"), Drag: in.number(t, "drag"),
		Gravity: in.number(t, "gravity"),
		Inertia: Inertia{Roll: in.number(t, "ixx"), Pitch: in.number(t, "iyy"), Yaw: in.number(t, "izz")},
	}
}

func (in inputs) longitudinal(t *testing.T) Longitudinal {
	t.Helper()
	return Longitudinal{
		LiftSlope: in.number(t, "cl_a"), DragSlope: in.number(t, "cd_a"), MomentSlope: in.number(t, "cm_a"),
		PitchDamping: in.number(t, "cm_q"), IncidenceRateDamping: in.number(t, "cm_adot"),
	}
}

func (in inputs) lateral(t *testing.T) Lateral {
	t.Helper()
	return Lateral{
		SideForceBeta: in.number(t, "cy_b"), RollBeta: in.number(t, "cl_b"), YawBeta: in.number(t, "cn_b"),
		RollRollRate: in.number(t, "cl_p"), YawRollRate: in.number(t, "cn_p"),
		RollYawRate: in.number(t, "cl_r"), YawYawRate: in.number(t, "cn_r"),
	}
}

// figure returns one figure of a motion.
func figure(t *testing.T, m Mode, name string) float64 {
	t.Helper()
	figures := map[string]float64{
		"real": m.Real, "imaginary": m.Imaginary, "frequency": m.NaturalFrequency, "damping": m.Damping, "period": m.Period, "half": m.HalfTime,
	}
	value, known := figures[name]
	if !known {
		t.Fatalf("no figure %q", name)
	}
	return value
}

// pitchFigure returns a figure of the motion that the name begins with.
func pitchFigure(t *testing.T, motions PitchMotions, name string) float64 {
	t.Helper()
	if rest, is := strings.CutPrefix(name, "short-period-"); is {
		return figure(t, motions.ShortPeriod, rest)
	}
	return figure(t, motions.Phugoid, strings.TrimPrefix(name, "phugoid-"))
}

func lateralFigure(t *testing.T, motions LateralMotions, name string) float64 {
	t.Helper()
	switch name {
	case "roll":
		return motions.Roll.Real
	case "spiral":
		return motions.Spiral.Real
	}
	return figure(t, motions.DutchRoll, strings.TrimPrefix(name, "dutch-roll-"))
}

func rootsOf(t *testing.T, m Matrix) [order]Root {
	t.Helper()
	roots, err := m.Roots()
	if err != nil {
		t.Fatal(err)
	}
	return roots
}

func TestLightAeroplaneOfTheTextbook(t *testing.T) {
	t.Parallel()
	checkPublished(t, "general_aviation_derivatives", map[string]formula{
		"force": func(t *testing.T, name string, in inputs) float64 {
			f := must(in.longitudinal(t).Dimensional(in.stateOf(t)))
			return map[string]float64{"xu": f.XU, "xw": f.XW, "zu": f.ZU, "zw": f.ZW, "mw": f.MW, "mw_dot": f.MWDot, "mq": f.MQ}[path.Base(name)]
		},
		"pitch-motion": func(t *testing.T, name string, in inputs) float64 {
			return pitchFigure(t, must(in.longitudinal(t).Motions(in.stateOf(t))), path.Base(name))
		},
		"pitch-estimate": func(t *testing.T, name string, in inputs) float64 {
			f := must(in.longitudinal(t).Dimensional(in.stateOf(t)))
			return pitchFigure(t, PitchMotions{ShortPeriod: f.ShortPeriodEstimate(), Phugoid: f.PhugoidEstimate()}, path.Base(name))
		},
		"lateral-motion": func(t *testing.T, name string, in inputs) float64 {
			return lateralFigure(t, must(in.lateral(t).Motions(in.stateOf(t))), path.Base(name))
		},
		"lateral-estimate": func(t *testing.T, name string, in inputs) float64 {
			f := must(in.lateral(t).Dimensional(in.stateOf(t)))
			spiral, _ := f.SpiralEstimate()
			return lateralFigure(t, LateralMotions{Roll: f.RollEstimate(), Spiral: spiral, DutchRoll: f.DutchRollEstimate()}, path.Base(name))
		},
		"margin": func(t *testing.T, _ string, in inputs) float64 {
			slope, balance := in.number(t, "cl_a"), in.number(t, "balance")
			neutral := balance - in.number(t, "cm_a")/slope
			return StaticMargin(neutral, balance, 1)
		},
		"tail-volume": func(t *testing.T, _ string, in inputs) float64 {
			return TailVolume(in.number(t, "tail"), in.number(t, "arm"), in.number(t, "area"), in.number(t, "length"))
		},
		"neutral-by-volume": func(t *testing.T, _ string, in inputs) float64 {
			return must(NeutralPointByVolume(in.number(t, "wing_centre"), in.number(t, "wing"), in.number(t, "tail"), in.number(t, "volume"),
				in.number(t, "pressure"), in.number(t, "downwash"), in.number(t, "body")))
		},
		"tail-damping": func(t *testing.T, name string, in inputs) float64 {
			rate, incidence := TailPitchDamping(in.number(t, "tail"), in.number(t, "volume"), in.number(t, "pressure"), in.number(t, "arm"),
				in.number(t, "downwash"))
			if name == "rate" {
				return rate
			}
			return incidence
		},
		"simple-downwash": func(t *testing.T, _ string, in inputs) float64 {
			return SimpleDownwash(in.number(t, "wing"), in.number(t, "aspect"))
		},
		"datcom-downwash": func(t *testing.T, _ string, in inputs) float64 {
			return lift.DownwashSlope(in.number(t, "aspect"), in.number(t, "taper"), 0, in.number(t, "arm"), in.number(t, "height"))
		},
		"manoeuvre-shift": func(t *testing.T, _ string, in inputs) float64 {
			p := Pitch{PitchDamping: in.number(t, "cm_q"), LiftPitchRate: in.number(t, "cl_q")}
			return must(p.ManoeuvreShift(in.stateOf(t)))
		},
	})
}

func TestJetTransport(t *testing.T) {
	t.Parallel()
	checkPublished(t, "transport_modes", map[string]formula{
		"pitch-roots": func(t *testing.T, name string, in inputs) float64 {
			motions := partPitch(rootsOf(t, in.matrix(t)))
			if path.Dir(name) == "fast" {
				return figure(t, motions.ShortPeriod, path.Base(name))
			}
			return figure(t, motions.Phugoid, path.Base(name))
		},
		"lateral-roots": func(t *testing.T, name string, in inputs) float64 {
			return lateralFigure(t, partLateral(rootsOf(t, in.matrix(t))), name)
		},
	})
}

// matrix reads a matrix by rows.
func (in inputs) matrix(t *testing.T) Matrix {
	t.Helper()
	entries := strings.Split(in["a"], ",")
	if len(entries) != order*order {
		t.Fatalf("%d entries", len(entries))
	}
	m := Matrix{}
	for i, entry := range entries {
		value, err := strconv.ParseFloat(entry, 64)
		if err != nil {
			t.Fatal(err)
		}
		m[i/order][i%order] = value
	}
	return m
}

func TestSecondLightAeroplane(t *testing.T) {
	t.Parallel()
	checkPublished(t, "light_aeroplane_modes", map[string]formula{
		"pitch-motion": func(t *testing.T, name string, in inputs) float64 {
			f := LongitudinalForces{
				XU: in.number(t, "xu"), XW: in.number(t, "xw"), ZU: in.number(t, "zu"), ZW: in.number(t, "zw"), MW: in.number(t, "mw"),
				MWDot: in.number(t, "mw_dot"), MQ: in.number(t, "mq"), Speed: in.number(t, "speed"), Gravity: in.number(t, "gravity"), PathCosine: 1,
			}
			return pitchFigure(t, partPitch(rootsOf(t, f.Matrix())), name)
		},
		"lateral-motion": func(t *testing.T, name string, in inputs) float64 {
			f := LateralForces{
				YV: in.number(t, "yv"), LV: in.number(t, "lv"), LP: in.number(t, "lp"), LR: in.number(t, "lr"), NV: in.number(t, "nv"),
				NP: in.number(t, "np"), NR: in.number(t, "nr"), Speed: in.number(t, "speed"), Gravity: in.number(t, "gravity"), PathCosine: 1,
			}
			return lateralFigure(t, partLateral(rootsOf(t, f.Matrix())), name)
		},
	})
}

func TestWorkedStaticStability(t *testing.T) {
	t.Parallel()
	bodyYaw := func(t *testing.T, in inputs) float64 {
		return BodyYaw(in.number(t, "volume"), in.number(t, "depth"), in.number(t, "width"), in.number(t, "area"), in.number(t, "span"))
	}
	wingYaw := func(t *testing.T, in inputs) float64 {
		return WingYaw(in.number(t, "lift"), in.number(t, "aspect"), 0, 0)
	}
	finYaw := func(t *testing.T, in inputs) float64 {
		fin := Fin{in.number(t, "slope"), in.number(t, "fin_area"), in.number(t, "arm"), in.number(t, "sidewash")}
		return FinYaw(fin, in.number(t, "area"), in.number(t, "span"))
	}
	tail := func(t *testing.T, in inputs) LiftingPart {
		return LiftingPart{LiftSlope: in.number(t, "tail"), Area: in.number(t, "tail_area"), PressureRatio: in.number(t, "pressure"), Downwash: in.number(t, "downwash")}
	}
	checkPublished(t, "course_stability", map[string]formula{
		"body-moment": func(t *testing.T, _ string, in inputs) float64 {
			return BodyMomentSlope(in.number(t, "factor"), in.number(t, "width"), in.number(t, "length"), in.number(t, "area"), in.number(t, "chord"))
		},
		"tail-slope": func(t *testing.T, _ string, in inputs) float64 {
			_, slope, err := NeutralPoint([]LiftingPart{tail(t, in)}, in.number(t, "area"), 1, 0)
			return must(slope, err)
		},
		"neutral": func(t *testing.T, _ string, in inputs) float64 {
			area, chord, tail := in.number(t, "area"), in.number(t, "chord"), tail(t, in)
			tail.X = in.number(t, "tail_x")
			wing := LiftingPart{LiftSlope: in.number(t, "wing"), Area: area, X: in.number(t, "wing_x"), PressureRatio: 1}
			x, _, err := NeutralPoint([]LiftingPart{wing, tail}, area, chord, in.number(t, "body"))
			return must(x, err) / chord
		},
		"margin": func(t *testing.T, _ string, in inputs) float64 {
			return StaticMargin(in.number(t, "neutral"), in.number(t, "balance"), 1)
		},
		"moment-slope": func(t *testing.T, _ string, in inputs) float64 {
			return MomentSlope(in.number(t, "slope"), in.number(t, "margin"))
		},
		"wing-yaw": func(t *testing.T, _ string, in inputs) float64 { return wingYaw(t, in) },
		"body-yaw": func(t *testing.T, _ string, in inputs) float64 { return bodyYaw(t, in) },
		"fin-yaw":  func(t *testing.T, _ string, in inputs) float64 { return finYaw(t, in) },
		"total-yaw": func(t *testing.T, _ string, in inputs) float64 {
			return FinStiffness{Fin: finYaw(t, in), Body: bodyYaw(t, in), Wing: wingYaw(t, in)}.Total()
		},
		"body-factor": func(t *testing.T, _ string, in inputs) float64 {
			factor, _ := BodyFactor(in.number(t, "position"))
			return factor
		},
		"neutral-by-aspect": func(t *testing.T, _ string, in inputs) float64 {
			return must(NeutralPointByAspect(in.number(t, "aspect"), in.number(t, "tail_aspect"), in.number(t, "volume")))
		},
	})
}

func TestLossOfTheAileron(t *testing.T) {
	t.Parallel()
	checkPublished(t, "aeroelastic_textbook", map[string]formula{
		"section-reversal": func(t *testing.T, _ string, in inputs) float64 {
			q, happens := SectionReversalPressure(in.number(t, "spring"), in.number(t, "area"), in.number(t, "chord"), in.number(t, "slope"),
				in.number(t, "lift_control"), in.number(t, "moment_control"))
			if !happens {
				t.Fatal("no reversal")
			}
			return SpeedOf(q, in.number(t, "density"))
		},
		"effectiveness": func(t *testing.T, _ string, in inputs) float64 {
			square := func(name string) float64 { return in.number(t, name) * in.number(t, name) }
			return AileronEffectiveness(square("speed"), square("reversal"), square("divergence"))
		},
		"box": func(t *testing.T, _ string, in inputs) float64 {
			box := Box{in.number(t, "width"), in.number(t, "depth"), in.number(t, "wall"), in.number(t, "modulus")}
			return must(box.TwistStiffness(in.number(t, "half_span")))
		},
		"uniform-wing": func(t *testing.T, _ string, in inputs) float64 {
			chord := in.number(t, "chord")
			q, happens, err := TwistingWing{
				Stiffness: in.number(t, "stiffness"), HalfSpan: in.number(t, "half_span"), Chords: []float64{chord, chord}, AileronTo: 1,
				LiftSlope: in.number(t, "slope"), LiftControl: in.number(t, "lift_control"), MomentControl: in.number(t, "moment_control"),
			}.ReversalPressure()
			if !happens {
				t.Fatal("no reversal")
			}
			return must(q, err)
		},
	})
}

func TestLimitsOfHandling(t *testing.T) {
	t.Parallel()
	quantities := map[string]CriterionQuantity{
		"short-period-damping": ShortPeriodDamping, "phugoid-damping": PhugoidDamping, "roll-time": RollTime, "spiral-double": SpiralDouble,
		"dutch-roll-damping": DutchRollDamping, "dutch-roll-frequency": DutchRollFrequency, "anticipation": AnticipationRatio,
	}
	criterion := func(t *testing.T, in inputs) Criterion {
		c, found := CriterionFor(quantities[in["quantity"]], FlightPhase(in["phase"]), int(in.number(t, "level")))
		if !found {
			t.Fatal("no such limit")
		}
		return c
	}
	checkPublished(t, "handling_criteria", map[string]formula{
		"low":  func(t *testing.T, _ string, in inputs) float64 { return criterion(t, in).Low },
		"high": func(t *testing.T, _ string, in inputs) float64 { return criterion(t, in).High },
		"tail": func(t *testing.T, name string, in inputs) float64 {
			row := TypicalTails()[int(in.number(t, "row"))]
			if path.Dir(name) == "horizontal" {
				return row.Horizontal
			}
			return row.Vertical
		},
		"froude": func(t *testing.T, _ string, in inputs) float64 {
			return in.number(t, "frequency") * FroudeTime(in.number(t, "full"), in.number(t, "model"))
		},
	})
}

// must returns a value that the row says exists.
func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}

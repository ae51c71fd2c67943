package assess

import (
	"math"

	"pitgate/server/physics/elementary"
)

// firstFlight is the card of the first flight: how long, how high, how steep, how fast, when to land and when to give up the launch.
func (w *cardWriter) firstFlight() {
	w.open()
	w.duration()
	w.heights()
	w.bank()
	w.speeds()
	w.abortPoint()
	w.winds()
	w.say("Give up the flight", "Climb straight, turn only above the height of turning back. Anything odd: throttle back, land; no second look.")
}

// flightCap is one thing that ends a flight.
type flightCap struct {
	name, from string
	seconds    float64
}

// flightCaps are the things that end a flight, in seconds from the launch: fuel or flight pack at the landing call, and the packs that feed receivers and
// engine controls.
func (v *benchView) flightCaps() []flightCap {
	var out []flightCap
	for _, one := range []flightCap{{name: "fuel", from: "fuel.landing_call"}, {name: "flight pack", from: "packs.landing_call"}} {
		if seconds, known := v.value[one.from]; known {
			one.seconds = seconds
			out = append(out, one)
		}
	}
	for i := range v.model.Packs {
		pack := &v.model.Packs[i]
		if pack.Use == PackUsePropulsion {
			continue
		}
		if seconds, known := v.packTime(i); known {
			out = append(out, flightCap{name: pack.Name, from: say("packs.pack%d.usable", i+1), seconds: seconds})
		}
	}
	return out
}

// packTime is how long a pack feeds its mean current from the share of its charge that a flight may use: t = s Q/I.
//
// Where: s share that may be used, Q usable charge (Ah), I mean current (A), t in s.
// Source: definition of the ampere hour.
func (v *benchView) packTime(i int) (float64, bool) {
	charge, chargeKnown := v.value[say("packs.pack%d.usable", i+1)]
	current, currentKnown := v.value[say("packs.pack%d.mean_current", i+1)]
	share := v.pass.limit(packUseFigure).value
	if !chargeKnown || !currentKnown || current <= 0 {
		return 0, false
	}
	return float64(secondsPerHour * share * charge / current), true
}

// duration gives the cap of the flight, what governs it, and the planned time.
func (w *cardWriter) duration() {
	caps := w.v.flightCaps()
	main := "fuel.endurance"
	if !w.v.turbine() {
		main = "packs.endurance"
	}
	if f := w.v.found[main]; len(caps) == 0 || f == nil || f.Verdict == VerdictUnknown {
		w.lacks("Landing call", main)
		return
	}
	governing := caps[0]
	for _, one := range caps[1:] {
		if one.seconds < governing.seconds {
			governing = one
		}
	}
	w.figure("Landing call, at the latest", "from the launch; governed by: "+governing.name, math.Floor(governing.seconds), "s", governing.from)
	if seconds, known := w.v.plannedTime(); known {
		w.figure("Planned flight", "launch, circuits as planned, landing; a first flight ends here", math.Ceil(seconds), "s", "fuel.circuit_time")
	} else {
		w.quantity("Planned flight", "launch, circuits as planned, landing; a first flight ends here", "packs.planned_time", "s", main)
	}
}

// plannedTime is launch and planned circuits of a model with fuel, and one more circuit's time for the landing.
func (v *benchView) plannedTime() (float64, bool) {
	circuit, known := v.value["fuel.circuit_time"]
	if v.plan.Circuit == nil || v.plan.Circuit.CircuitCount == nil {
		return 0, false
	}
	count := float64(*v.plan.Circuit.CircuitCount) + 1
	return v.value["launch.screen_time"] + float64(count*circuit), known
}

// heights give the band in which the first flight stays.
func (w *cardWriter) heights() {
	w.quantity("Not turned back below", "a dead engine does not bring it back from lower", "engine_out.turn_back_height", "m", "engine_out.reach")
	if f := w.v.found["height.limit"]; f != nil && f.Value != nil {
		w.figure("Circuit at", "over the ground", *f.Value, "m", "height.limit")
	}
	w.limit("Never above", "over the ground", "height.limit", "limits.maximumHeightMeters")
}

// bank gives the steepest bank: as planned, or less where the stall or the wing asks for less.
func (w *cardWriter) bank() {
	planned := defaultBankDegrees
	if w.v.plan.Circuit != nil {
		planned = orElse(w.v.plan.Circuit.BankDegrees, defaultBankDegrees)
	}
	steepest, known := w.v.steepestBank()
	switch {
	case !known:
		w.lacks("Bank", "stall.turn")
	case steepest < planned:
		w.figure("Bank no steeper than", sayNumbers("at the speed of the circuit; the %.0f deg planned leave too little over the stall", planned), steepest, "deg", "stall.turn")
	default:
		w.figure("Bank no steeper than", "as planned, at the speed of the circuit", planned, "deg", "stall.turn")
	}
}

// steepestBank is the bank at which the speed of the circuit, less what a gust takes away as it dies, is still the asked ratio over the stall: cos phi =
// (k Vs/(V - dV))^2.
//
// Where: k asked ratio, Vs stall speed in straight flight (m/s), V speed of the circuit (m/s), dV the gust's excess over the mean wind (m/s), phi in degrees.
// Source: Anderson, Introduction to Flight, chapter 6 (level turn).
func (v *benchView) steepestBank() (float64, bool) {
	stall, stallKnown := v.value["stall.speed"]
	speed, speedKnown := v.value["circuit.airspeed"]
	asked := v.limitOf("stall.turn")
	left := speed - v.value["wind.gust_excess"]
	if !stallKnown || !speedKnown || asked == nil || left <= 0 {
		return 0, false
	}
	ratio := *asked * stall / left
	cosine := float64(ratio * ratio)
	if cosine >= 1 {
		return 0, true
	}
	return degrees(elementary.Atan2(math.Sqrt(1-float64(cosine*cosine)), cosine)), true
}

// speeds are those to know by heart.
func (w *cardWriter) speeds() {
	if w.v.plan.Method == LaunchMethodWheels {
		w.quantity("Lift-off", "through the air", "liftoff.speed", "m/s", "liftoff.margin")
	} else {
		w.quantity("Leaving the launcher", "through the air", "launch.end_speed", "m/s", "launch.end_speed")
	}
	w.quantity("Stall", "straight flight", "stall.speed", "m/s", "stall.speed")
	w.quantity("Circuit", "through the air", "circuit.airspeed", "m/s", "stall.turn")
	w.quantity("Approach", "through the air, to the flare", "landing.approach_speed", "m/s", "approach.margin")
	w.quantity("Best glide", "engine stopped", "engine_out.glide_speed", "m/s", "engine_out.reach")
	w.quantity("Full stick back only below", "faster, the wing is loaded beyond what it stands", "loads.full_pull_speed", "m/s", "loads.wing")
	w.quantity("Never faster than", w.v.text["speed.never_exceed_term"], "speed.never_exceed", "m/s", "speed.never_exceed")
}

// abortPoint says until when the launch is given up.
func (w *cardWriter) abortPoint() {
	if w.v.plan.Method != LaunchMethodWheels {
		w.launcherAbort()
		return
	}
	run, stop := w.v.number("launch.ground_run"), w.v.number("launch.accelerate_stop")
	length := w.v.length()
	if run == nil || stop == nil || length == nil {
		w.lacks("Abort point of the launch", "launch.abort")
		return
	}
	last := *length - (*stop - *run)
	mark := *run * w.v.widest("launch.distance")
	if last <= 0 {
		w.say("Abort point of the launch", "None: from lift-off speed it does not stop on this strip.")
		return
	}
	if last < mark {
		w.figure("Abort point of the launch", "from the start: from farther on it does not stop on the strip", last, "m", "launch.abort")
		return
	}
	w.figure("Abort point of the launch", sayNumbers("from the start: not in the air here, close the throttle; it stops from as far as %.0f m", last), mark, "m", "launch.ground_run")
}

// widest is the upper end of a finding's band over its value, 1 where it has none.
func (v *benchView) widest(id string) float64 {
	f := v.found[id]
	if f == nil || f.Value == nil || f.BandHigh == nil || *f.Value <= 0 {
		return 1
	}
	return max(1, *f.BandHigh / *f.Value)
}

// launcherAbort is the abort point of a launch from ramp, bungee, hand or catapult: before it lets go, never after.
func (w *cardWriter) launcherAbort() {
	w.quantity("Abort point of the launch", "pull at the pin or the scale before release; less, and it is not released. After release there is no giving up: straight ahead, wings level",
		"thrust.static_day", "N", "thrust.ratio")
	if f := w.v.found["launch.end_speed"]; f != nil && f.Verdict == VerdictFails {
		w.say("Not yet", "It leaves the launcher too slowly as planned: do not launch.")
	}
}

// winds are the winds in which the card counts.
func (w *cardWriter) winds() {
	w.quantity("Wind as computed", "mean, at the height and from the direction of the day", "wind.mean", "m/s", "weather.gust")
	if head := w.v.number("launch.headwind"); head != nil {
		w.figure("Of it ahead, no less", "with less wind ahead compute again", *head, "m/s", "launch.headwind")
	}
	w.limit("Across, gusts included, no more than", "across the launch", "weather.crosswind", "limits.maximumCrosswindMetersPerSecond")
	w.limit("Gusts no more than", "highest of the last ten minutes", "weather.gust", "limits.maximumGustMetersPerSecond")
}

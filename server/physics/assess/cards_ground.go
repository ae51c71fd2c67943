package assess

import (
	"pitgate/server/physics/heat"
	"pitgate/server/physics/loads"
)

// tetherFactor is how many times the static thrust a tether holds.
//
// Source: common practice, no source.
const tetherFactor = 2.0

// staticRun is the run with the model held: what holds it, what is read, when to stop.
func (w *cardWriter) staticRun() {
	i, engine := w.v.engine()
	path := at("model.engines", i)
	w.say("Crew", "One at the transmitter, one at the extinguisher, one who reads and writes. Nobody ahead of the intake or behind the nozzle.")
	if thrust := engine.StaticThrustNewtons; thrust != nil && thrust.Value != nil {
		w.figure("Tether holds", "tied low, to the structure and not to the gear", tetherFactor**thrust.Value, "N", path+".staticThrustNewtons")
	}
	if engine.Kind != EngineKindTurbine {
		w.electricRun(path, engine)
		return
	}
	w.quantity("Clear behind the nozzle", "people and litter, as far as the jet still blows", "heat.blast_reach", "m", "heat.plume")
	w.quantity("Bare or wet ground behind it", "no dry grass", "heat.reach", "m", "heat.ground")
	w.quantity("Fuel on board", "tanks full, trap full, vent open", "mass.fuel", "kg", "fuel.endurance")
	w.givenQuantity("1. Idle, half a minute", "pull on the scale no more than this", engine.IdleThrustNewtons, "N", path+".idleThrustNewtons")
	w.givenQuantity("2. Idle to full", "no longer than this, by watch and scale", engine.SpoolUpSeconds, "s", path+".spoolUpSeconds")
	w.quantity("3. Full, five seconds", "pull on the scale at least this, installed, in the air of the day", "thrust.static_day", "N", "thrust.ratio")
	w.givenQuantity("4. Full, one minute", "fuel by weight before and after", engine.FullFuelFlowGramsPerMinute, "g/min", path+".fullFuelFlowGramsPerMinute")
	w.figure("Lines meanwhile", "time at full thrust with no bubble before the pump", *wantedBubbles(w.v, nil).low, "s", "fuel.suction")
	w.givenQuantity("5. Fuel cut at full", "thrust gone within this", engine.RunDownSeconds, "s", path+".runDownSeconds")
	w.stopExhaust(path, engine)
	for k := range w.v.model.HeatedParts {
		part := &w.v.model.HeatedParts[k]
		material, _ := heat.Named(part.Material)
		w.figure("Stop at: "+part.Name, "also three minutes after shut-down; "+material.Name, material.Service-heat.Celsius, "C", at("model.heatedParts", k)+".material")
	}
	w.say("Stop at once", "bubbles at the pump, flame outside the pipe, smell of fuel, a sound that changes, anything that moves on the model.")
	w.say("Afterwards", "Cool the engine down, wait three minutes, read every label, pull at engine and pipe, look into the bay. Enter the run in the document.")
}

// stopExhaust gives the exhaust temperature at which the run ends.
func (w *cardWriter) stopExhaust(path string, engine *Engine) {
	if engine.MaximumExhaustCelsius != nil {
		w.figure("Stop at: exhaust", "the maker's limit", *engine.MaximumExhaustCelsius, "C", path+".maximumExhaustCelsius")
		return
	}
	w.say("Stop at: exhaust", "No limit is given: "+path+".maximumExhaustCelsius.")
}

// electricRun is the run of a fan or propeller.
func (w *cardWriter) electricRun(path string, engine *Engine) {
	w.quantity("1. Full, five seconds", "pull on the scale at least this, in the air of the day", "thrust.static_day", "N", "thrust.ratio")
	w.givenQuantity("2. Idle to full", "no longer than this", engine.SpoolUpSeconds, "s", path+".spoolUpSeconds")
	for _, s := range benchDrivePacks(w.v) {
		pack := &w.v.model.Packs[s.index]
		w.givenQuantity("3. Current, "+pack.Name, "no more than this", pack.PeakCurrentAmperes, "A", s.path+".peakCurrentAmperes")
	}
	w.say("Stop at once", "smell, smoke, a pack or controller too hot to hold, a sound that changes, anything that moves on the model.")
	w.say("Afterwards", "Pack out, feel pack, controller and motor, look for rubbed blades. Enter the run in the document.")
}

// taxiSteps are the speeds of the taxi runs over the lift-off speed, from a walk to where the nose becomes light.
//
// Source: common practice, no source.
var taxiSteps = []struct {
	share         float64
	heading, text string
}{
	{0.15, "1. Walking pace", "straight, both ways; brakes, steering, fail-safe of the brakes. Abort: it pulls aside, a leg flexes, the nose digs in."},
	{0.4, "2. Slow run", "straight with wind ahead, throttle closed at this speed. Abort: a swing that rudder does not hold at once, shimmy."},
	{0.6, "3. Medium run", "elevator neutral, feel the rudder. Abort: nose or tail lifts by itself, bouncing, any twitch of the radio."},
	{0.8, "4. Fast run", "raise the nose gently once and lower it. Abort: it leaves the ground; close the throttle, hold level, let it settle."},
}

// taxi is the ladder of taxi runs: at each speed where the throttle must be closed at the latest.
func (w *cardWriter) taxi() {
	liftoff, length := w.v.number("liftoff.speed"), w.v.length()
	if liftoff == nil || length == nil {
		w.lacks("Speeds and stopping places", "launch.abort")
		w.say("Until then", "Walking pace only.")
		return
	}
	w.say("Before each run", "Fuel for the run only, flaps and gear as for take-off, wind along the strip, nobody ahead of or beside it, one person at the strip's end.")
	for i, step := range taxiSteps {
		speed := float64(step.share * *liftoff)
		w.figure(step.heading, step.text, speed, "m/s", "liftoff.speed")
		if stop, known := w.v.stopping(speed); known {
			w.abortPlace(i+1, *length-stop, stop)
		}
	}
	w.say("Stop for the day", "after any abort: find the cause before the next step. After the last step look at wheels, legs, brakes and their heat.")
}

// abortPlace says where the throttle is closed at the latest.
func (w *cardWriter) abortPlace(step int, place, stop float64) {
	heading := say("Abort point of step %d", step)
	if place <= 0 {
		w.say(heading, sayNumbers("none: it needs %.0f m to stop, and the strip has less. Do not do this step here.", stop))
		return
	}
	w.figure(heading, sayNumbers("from the start: throttle closed here at the latest, it rolls %.0f m more", stop), place, "m", "launch.rolling_friction")
}

// length is the length of the strip along the launch, m.
func (v *benchView) length() *float64 {
	if v.pass.launch.length > 0 {
		length := v.pass.launch.length
		return &length
	}
	return nil
}

// stopping is the way from a speed to rest without brakes and without lift: s = v t + v^2/(2 mu g).
//
// Where: v speed (m/s), t reaction of the pilot (s), mu rolling friction, g standard gravity (m/s2), s in m.
// Valid for: level ground and still air, idle thrust left out; brakes and drag shorten it.
// Source: kinematics of constant deceleration.
func (v *benchView) stopping(speed float64) (float64, bool) {
	friction, known := v.value["launch.rolling_friction"]
	if !known || friction <= 0 {
		return 0, false
	}
	reaction := float64(speed * v.pass.reaction())
	return reaction + float64(speed*speed/(2*friction*loads.StandardGravity)), true
}

// rangeCheck is the check on foot with reduced power.
func (w *cardWriter) rangeCheck() {
	radio := w.v.model.Radio
	w.say("Set up", "Model on a stand, antennas as in flight, everything that makes noise switched on, pilot on foot with the transmitter as in flight.")
	if h := radio.RangeCheckHeightMeters; h != nil {
		w.figure("Model above the ground", "as the prediction takes it", *h, "m", "model.radio.rangeCheckHeightMeters")
	}
	w.givenQuantity("Power reduced by", "by the transmitter's own setting", radio.RangeCheckReductionDecibels, "dB", "model.radio.rangeCheckReductionDecibels")
	w.quantity("Walk at least to", "with control in every attitude of the model", "radio.check_needed", "m", "radio.range_check")
	w.quantity("It stands for the corner at", "farthest place of launch, circuit and landing", "radio.farthest_range", "m", "radio.margin")
	w.limit("Margin wanted there", "full power", "radio.margin", "limits.minimumRadioMarginDecibels")
	w.quantity("Margin predicted where it is least", "by the link budget, 19 of 20 attitudes", "radio.margin", "dB", "radio.margin")
	w.quantity("Left at the check, predicted", "far less shown than this: an antenna, a plug or a noise", "radio.check_predicted", "dB", "radio.range_check")
	w.say("Turn the model", "nose, tail, both sides, belly towards you; then again with the engine running.")
	w.say("Stop", "at the first stutter: write down distance and attitude. Nearer than asked: no flight until the cause is found.")
	w.limit("Then the fail-safe", "transmitter off: throttle closed within this", "radio.failsafe", "limits.maximumFailSafeSeconds")
}

package assess

import "strings"

const controlGroup = "Controls"

// controlFindings are what rests on throw and direction of a control.
var controlFindings = pairings[ControlRole, []string]{
	{ControlRoleElevator, []string{"balance.trim", "balance.launch_trim", "pitch.sensitivity"}}, {ControlRoleAileron, []string{"roll.rate", "roll.reversal"}},
	{ControlRoleRudder, []string{"weather.crosswind"}}, {ControlRoleFlap, []string{"liftoff.margin", "landing.distance"}},
	{ControlRoleElevon, []string{"balance.trim", "balance.launch_trim", "pitch.sensitivity", "roll.rate"}},
	{ControlRoleFlaperon, []string{"roll.rate", "landing.distance"}},
	{ControlRoleRuddervator, []string{"balance.trim", "pitch.sensitivity", "weather.crosswind"}},
}

var benchControlRows = []benchRow{
	{id: "bench.controls.throw_up", group: controlGroup, title: "Throw, trailing edge up", each: benchControls, input: ".throwUpDegrees", unit: "deg",
		how: "Full stick, full rate, the model switched on. Read the travel of the trailing edge with a protractor or a rule.",
		why: "The report counts on this throw.", byRole: true, applies: throws(true),
		wanted: within(func(_ *benchView, s *benchSubject) *Quantity { return s.control.ThrowUpDegrees })},
	{id: "bench.controls.throw_down", group: controlGroup, title: "Throw, trailing edge down", each: benchControls, input: ".throwDownDegrees", unit: "deg",
		how: "Full stick, full rate, the model switched on. Read the travel of the trailing edge with a protractor or a rule.",
		why: "The report counts on this throw.", byRole: true, applies: throws(false),
		wanted: within(func(_ *benchView, s *benchSubject) *Quantity { return s.control.ThrowDownDegrees })},
	{id: "bench.controls.direction", group: controlGroup, title: "Direction", each: benchControls,
		how: "Stand behind the model; one says the stick, the other the surface. Also with each flight mode and rate.",
		why: "A reversed control is found on the ground or in the first second.", byRole: true, wanted: wantedDirection},
	{id: "bench.controls.neutral", group: controlGroup, title: "Setting for level flight in the circuit", each: benchControls, unit: "deg",
		how: "Trim centred. Trailing edge down is positive.", why: "So the first pull of the stick is not needed to hold level.",
		findings: []string{"balance.trim"}, applies: setsPitch, wanted: wantedNeutral},
	{id: "bench.controls.setting", group: controlGroup, title: "Settings for take-off and landing", each: benchControls,
		how: "Switch through the flap settings and read each, both sides.", why: "Uneven flaps roll the model.",
		findings: []string{"liftoff.margin", "landing.distance"}, applies: roleIs(ControlRoleFlap), wanted: wantedSettings},
	{id: "bench.controls.free_play", group: controlGroup, title: "Free play at the trailing edge", each: benchControls, input: ".freePlayMeters", unit: "m",
		how: "Servo switched on and holding. Move the trailing edge up and down by finger and read the whole slack with a rule.",
		why: "Slack lets a control flutter far below any computed speed.", findings: []string{"controls.free_play", "speed.never_exceed"},
		applies: hinges, wanted: wantedFreePlay},
	{id: "bench.controls.mass_balance", group: controlGroup, title: "Mass balance about the hinge", each: benchControls, input: ".massBalanced",
		how: "Linkage off, hinge line level: the surface stays where it is put, or its leading edge sinks.",
		why: "An unbalanced control is the first to flutter.", findings: []string{"controls.balance", "speed.never_exceed"}, applies: hinges,
		wanted: wantedMassBalance},
	{id: "bench.controls.linkage", group: controlGroup, title: "Pushrod", each: benchControls, input: ".linkage.rodDiameterMeters", unit: "m", photo: true,
		how: "Measure the rod. Hold the surface and drive the servo to full throw: the rod may not bow, horn and servo may not move in their seats. Clevises closed and secured.",
		why: "A rod that bows gives the control back to the air at speed.", findings: []string{"linkage.stiffness", "speed.never_exceed"}, applies: hinges,
		wanted: notUnder(func(_ *benchView, s *benchSubject) *Quantity {
			if s.control.Linkage == nil {
				return nil
			}
			return s.control.Linkage.RodDiameterMeters
		})},
	{id: "bench.controls.servo", group: controlGroup, title: "Servos", each: benchControls, input: ".linkage.servoCount", unit: "1",
		how: "Count them, read their type, compare its torque at the voltage of the bus with the figure below; screws tight, gear without a rough place.",
		why: "The weakest servo decides how fast the control still answers.", findings: []string{"servo.torque", "packs.voltage", "packs.energy"},
		applies: hinges, wanted: wantedServo},
}

// benchControls lists every control of the model, flaps too.
func benchControls(v *benchView) []benchSubject {
	chords := map[string]hingedControl{}
	for _, h := range v.pass.hingedControls() {
		chords[h.path] = h
	}
	var out []benchSubject
	for i := range v.model.Surfaces {
		surface := &v.model.Surfaces[i]
		for k := range surface.Controls {
			path := at(at(surfacesPath, i)+".controls", k)
			out = append(out, benchSubject{name: surface.Controls[k].Name, path: path, index: i, hinged: chords[path], surface: surface, control: &surface.Controls[k]})
		}
	}
	return out
}

// throws leaves out a throw that the document gives as none, as that of a flap upwards.
func throws(up bool) benchApplies {
	return func(_ *benchView, s *benchSubject) bool {
		q := s.control.ThrowDownDegrees
		if up {
			q = s.control.ThrowUpDegrees
		}
		return q == nil && (s.control.Role != ControlRoleFlap || !up) || q != nil && q.Value != nil && *q.Value != 0
	}
}

func roleIs(role ControlRole) benchApplies {
	return func(_ *benchView, s *benchSubject) bool { return s.control.Role == role }
}

// hinges leaves out flaps, which stand up at speed.
func hinges(_ *benchView, s *benchSubject) bool { return s.control.Role != ControlRoleFlap }

// setsPitch reports whether a control trims the model.
func setsPitch(v *benchView, s *benchSubject) bool {
	_, known := v.value["trim.control_circuit"]
	return known && (s.control.Role == ControlRoleElevator || s.control.Role == ControlRoleElevon)
}

// directions say what is to be seen from behind, by role.
var directions = pairings[ControlRole, string]{
	{ControlRoleElevator, "stick back: trailing edge up"}, {ControlRoleAileron, "stick to starboard: starboard up, port down"},
	{ControlRoleRudder, "stick to starboard: trailing edge to starboard"}, {ControlRoleFlap, "both down by the same angle"},
	{ControlRoleElevon, "stick back: both up; stick to starboard: starboard up, port down"},
	{ControlRoleFlaperon, "stick to starboard: starboard up, port down; flaps: both down"},
	{ControlRoleRuddervator, "stick back: both up; rudder to starboard: both trailing edges to starboard"},
}

// wantedDirection says which way the control moves; ahead of the wing the pitch control moves the other way.
func wantedDirection(_ *benchView, s *benchSubject) benchWanted {
	if s.control.Role == ControlRoleElevator && s.surface.Role == SurfaceRoleCanard {
		return benchWanted{text: "stick back: trailing edge down, since it stands ahead of the wing"}
	}
	if text, known := directions.find(s.control.Role); known {
		return benchWanted{text: text}
	}
	return benchWanted{text: "as the stick says"}
}

// neutralTolerance is how near a neutral setting is read, degrees.
const neutralTolerance = 0.5

func wantedNeutral(v *benchView, _ *benchSubject) benchWanted {
	middle := v.value["trim.control_circuit"]
	low, high := middle-neutralTolerance, middle+neutralTolerance
	return benchWanted{text: "as computed for the circuit", low: &low, high: &high}
}

func wantedSettings(_ *benchView, s *benchSubject) benchWanted {
	var parts []string
	if take := s.control.TakeoffSettingDegrees; take != nil {
		parts = append(parts, sayNumbers("take-off %.0f deg", *take))
	}
	if land := s.control.LandingSettingDegrees; land != nil {
		parts = append(parts, sayNumbers("landing %.0f deg", *land))
	}
	if len(parts) == 0 {
		return benchWanted{text: noFigureYet}
	}
	return benchWanted{text: strings.Join(parts, ", ") + ", both sides alike within 1 deg"}
}

// wantedFreePlay is the greatest slack over the chord times the chord of this control.
func wantedFreePlay(v *benchView, s *benchSubject) benchWanted {
	limit := v.limitOf("controls.free_play")
	if limit == nil || s.hinged.chord <= 0 {
		return benchWanted{text: noFigureYet}
	}
	high := float64(*limit * s.hinged.chord)
	return benchWanted{text: sayNumbers("%.0f %% of a chord of %.0f mm", 100**limit, 1000*s.hinged.chord), high: &high}
}

func wantedMassBalance(v *benchView, _ *benchSubject) benchWanted {
	top := v.number("speed.top")
	switch {
	case top == nil:
		return benchWanted{text: "balanced; whether this model needs it is not computed yet, its top speed is missing"}
	case *top > unbalancedSpeed:
		return benchWanted{text: sayNumbers("balanced: top speed is %.0f m/s, over %.0f m/s", *top, unbalancedSpeed)}
	default:
		return benchWanted{text: sayNumbers("may be unbalanced: top speed is %.0f m/s, not over %.0f m/s; say which it is", *top, unbalancedSpeed)}
	}
}

func wantedServo(_ *benchView, s *benchSubject) benchWanted {
	if s.control.Linkage == nil {
		return benchWanted{text: noFigureYet}
	}
	text := "as many as the report takes"
	if torque := s.control.Linkage.ServoTorqueNewtonMeters; torque != nil && torque.Value != nil {
		text += sayNumbers(", %.2f N m each", *torque.Value)
	}
	return exactly(s.control.Linkage.ServoCount, text)
}

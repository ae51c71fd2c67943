package assess

import (
	"strings"

	"pitgate/server/physics/footprint"
	"pitgate/server/physics/radio"
)

var radioActions = pairings[FailSafeAction, radio.Action]{
	{FailSafeActionCutNeutral, radio.CutNeutral}, {FailSafeActionCutSpiral, radio.CutSpiral}, {FailSafeActionIdleNeutral, radio.IdleNeutral},
	{FailSafeActionHold, radio.Hold}, {FailSafeActionNone, radio.None},
}

// answerFailSafe holds the time of the fail-safe against its limit; one that leaves the engine running fails whatever its time.
func (p *pass) answerFailSafe() {
	n, r := p.need(), p.radio()
	found := answer{id: "radio.failsafe", limit: p.limit(failSafeFigure)}
	action, declared := radioActions.find(r.FailSafeAction)
	if !declared {
		n.lack(radioPath + ".failSafeAction")
	}
	set := radio.FailSafe{Action: action, Decay: p.thrustGone()}
	if action != radio.Hold && action != radio.None {
		set.Delay = max(0, n.quantity(radioPath+".failSafeDelaySeconds", r.FailSafeDelaySeconds))
	}
	if n.met() {
		p.timeFailSafe(set, &found)
	}
	found.missing = n.missing
	p.conclude(found)
}

// thrustGone returns the longest time from the cut to no thrust, s: the time up to full thrust stands in where it was not timed, and zero for both.
func (p *pass) thrustGone() float64 {
	longest := 0.0
	for i := range p.engines() {
		e := &p.in.Model.Engines[i]
		longest = max(longest, valueOr(e.RunDownSeconds, valueOr(e.SpoolUpSeconds, 0)))
	}
	return longest
}

// engines returns the engines of the model.
func (p *pass) engines() []Engine {
	if p.in.Model == nil {
		return nil
	}
	return p.in.Model.Engines
}

// turbine reports whether a turbine drives the model.
func (p *pass) turbine() bool {
	for i := range p.engines() {
		if p.in.Model.Engines[i].Kind == EngineKindTurbine {
			return true
		}
	}
	return false
}

func (p *pass) timeFailSafe(set radio.FailSafe, found *answer) {
	speed := max(0, p.stall.circuitSpeed)
	result, err := radio.CheckFailSafe(set, radio.FailSafeLimit{Time: found.limit.value, MustStop: p.turbine()}, speed)
	if err != nil {
		found.missing = []string{radioPath + ".failSafeDelaySeconds"}
		return
	}
	found.value = set.Delay
	words := failSafeWords[footprint.Action(set.Action)]
	if action, known := failSafes[p.radio().FailSafeAction]; known {
		words = failSafeWords[action]
	}
	if !result.Acts {
		found.never = say("When the link is lost: %s. %s.", words, sentence(result.Remedy))
		return
	}
	found.note = say("When the link is lost: %s, after %.1f s as timed.", words, set.Delay)
	if speed > 0 {
		found.note += p.inWords(" At %.0f m/s the model flies %.0f m until thrust is gone.", speed, result.Flown)
		p.tell("radio.failsafe_distance", result.Flown)
	}
	if result.Remedy != "" {
		found.note += say(" %s by %.1f s.", sentence(result.Remedy), result.Shorten)
	}
}

// sentence begins a text with a capital letter.
func sentence(text string) string {
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// answerRedundancy counts the receivers that have a supply of their own; only a published rule makes a limit of it.
func (p *pass) answerRedundancy() {
	const id = "radio.redundancy"
	if !p.base() {
		p.keepStill(id)
		return
	}
	n, r := p.need(), p.radio()
	if r.ReceiverCount == nil {
		n.lack(radioPath + ".receiverCount")
	}
	count := p.countPacks(PackUseReceiver)
	if count == 0 {
		n.lack("model.packs")
	}
	if n.met() && *r.ReceiverCount > 1 && r.SeparateReceiverPacks == nil {
		n.lack(radioPath + ".separateReceiverPacks")
	}
	found := answer{id: id, missing: n.missing}
	if p.askedFor(id) {
		found.limit = limit{value: 2, set: true, rule: coreDefault}
	}
	if n.met() {
		p.countDoubled(int(*r.ReceiverCount), count, &found)
	}
	p.conclude(found)
}

func (p *pass) countPacks(use PackUse) int {
	count := 0
	for i := range p.packs() {
		if p.in.Model.Packs[i].Use == use {
			count++
		}
	}
	return count
}

func (p *pass) countDoubled(receivers, packs int, found *answer) {
	separate := yes(p.radio().SeparateReceiverPacks)
	pairs := min(receivers, packs, 1)
	if separate {
		pairs = min(receivers, packs)
	}
	found.value = float64(pairs)
	parts := radio.Equipment{
		Receivers: receivers, Antennas: p.whole.antennas.all.Counted, Packs: packs, Switches: packs, Buses: pairs, CrossFeed: !separate && packs > 1,
	}
	found.note = say("Receivers: %d; packs that feed them: %d.", receivers, packs)
	if singles := parts.SingleFailures(); len(singles) > 0 {
		found.note += say(" One failure of any of these ends control: %s.", strings.Join(singles, ", "))
		return
	}
	found.note += " No single failure of pack, switch, supply, antenna or receiver ends control, if the receivers take over from one another."
}

// counted writes a number of things.
func counted(count int, thing string) string {
	if count == 1 {
		return "1 " + thing
	}
	return say("%d %ss", count, thing)
}

// answerTelemetry tells of the way back where the document says anything of it; only a published rule makes its warning a must.
func (p *pass) answerTelemetry() {
	const id = "radio.telemetry"
	warned := p.radio().TelemetryLossWarned
	if warned == nil {
		return
	}
	found := answer{id: id, none: true, note: "The transmitter warns when the way back is lost: turn towards yourself and land, before control is lost too."}
	if !*warned {
		found.note = "The transmitter does not warn when the way back is lost: what it shows may be old, and the link's end comes unannounced."
		if p.askedFor(id) {
			found.never = found.note
		}
	}
	p.conclude(found)
}

// answerInterference counts the entries of the log that name no cause. Each fails: what once took the link away, and nobody knows why, may do so
// again, and no figure of the link budget has it in it.
func (p *pass) answerInterference() {
	const id = "radio.interference"
	if !p.base() {
		p.keepStill(id)
		return
	}
	found := answer{id: id, limit: limit{set: true, rule: coreDefault}}
	if p.in.Model == nil || p.in.Model.Radio == nil {
		found.missing = []string{radioPath}
		p.conclude(found)
		return
	}
	log := p.radio().Interference
	found.note = "No interference is noted."
	var last *InterferenceEntry
	for i := range log {
		if strings.TrimSpace(log[i].Cause) == "" {
			found.value++
			last = &log[i]
		}
	}
	switch {
	case last != nil:
		found.note = interferenceNote(last)
	case len(log) > 0:
		found.note = say("%s noted, each with its cause.", counted(len(log), "observation"))
	}
	p.conclude(found)
}

// interferenceNote tells the last entry without a cause.
func interferenceNote(entry *InterferenceEntry) string {
	note := "Without a known cause, the last:"
	for _, part := range []string{entry.Date, entry.Place, entry.Observation} {
		if part != "" {
			note += " " + part + ","
		}
	}
	note = strings.TrimSuffix(strings.TrimSuffix(note, ","), ".")
	if entry.DurationSeconds != nil {
		note += sayNumbers(", for %.1f s", *entry.DurationSeconds)
	}
	if entry.DistanceMeters != nil {
		note += sayNumbers(", %.0f m away", *entry.DistanceMeters)
	}
	return note + ". Find the cause, enter it and repeat the range check."
}

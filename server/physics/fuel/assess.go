package fuel

import "slices"

// nearTransition is the share of TransitionReynolds from which a small change makes the loss of a line jump.
const nearTransition = 0.9

// Assess computes a feed system at full flow: what lines, filter and vent cost, the suction at the pump in every load, trap and vent, what
// is wrong, and the smallest changes that mend it. Impossible input is an error that names the field; a temperature outside the laws of the
// fuel is held at their bound and marked in Mix.InRange.
func Assess(s System) (Result, error) {
	if err := s.Check(); err != nil {
		return Result{}, err
	}
	r := s.compute()
	r.Faults = s.faults(&r)
	r.Fixes = s.fixes(&r)
	r.Cautions = s.cautions(&r)
	return r, nil
}

// compute returns the result without faults and fixes.
func (s *System) compute() Result {
	r := Result{Mix: s.mix(), Filter: s.filter()}
	r.Flow = s.Flow / r.Mix.Density
	for _, line := range s.Lines {
		loss := line.Loss(r.Flow, r.Mix)
		r.Lines = append(r.Lines, loss)
		if line.Suction {
			r.LineLoss += loss.Total()
			r.Transient = r.Transient || nearJump(loss.Reynolds)
		}
	}
	r.Trap, r.Vent = s.trapCheck(r.Flow), s.ventCheck(r.Flow)
	s.cases(&r)
	return r
}

// nearJump reports whether a Reynolds number is just below the one at which friction jumps.
func nearJump(reynolds float64) bool {
	return reynolds >= nearTransition*TransitionReynolds && reynolds < TransitionReynolds
}

// cases fills in the suction of every load.
func (s *System) cases(r *Result) {
	for i, load := range s.Loads {
		head := HeadSuction(r.Mix.Density, load, s.PumpHeight, s.PumpAhead)
		suction := r.steady() + head
		r.Cases = append(r.Cases, Case{
			Load: load, Head: head, Suction: suction, Margin: AirReleaseSuction - suction, Air: ReleasedAir(suction, s.outside()),
		})
		if suction > r.Cases[r.Worst].Suction {
			r.Worst = i
		}
	}
	r.HasCases = len(r.Cases) > 0
}

// steady returns the part of the suction that no load changes.
func (r *Result) steady() float64 { return r.LineLoss + r.Filter + r.Vent.Suction }

// trapCheck compares the air trap with what the flow requires.
func (s *System) trapCheck(flow float64) TrapCheck {
	check := TrapCheck{
		Required: s.Turbine && !s.Bladder, Present: s.Trap,
		LeastSeconds: LeastTrapSeconds(s.Felt), LeastVolume: LeastTrap(flow, s.Felt),
	}
	if s.Trap {
		check.Seconds = TrapSeconds(s.TrapVolume, flow)
	}
	return check
}

// ventCheck returns the suction in the tank.
func (s *System) ventCheck(flow float64) VentCheck {
	density, viscosity := airOf(s.Temperature, s.outside())
	check := VentCheck{Present: s.Vent || s.Bladder, LeastBore: LeastVent(flow, ventLength, density, viscosity, VentLimit)}
	if s.Vent && s.VentBore > 0 && !s.Bladder {
		check.Suction = VentLoss(flow, s.VentBore, ventLength, density, viscosity)
		check.Tight = check.Suction > VentLimit || s.VentBore < check.LeastBore
	}
	return check
}

// faults lists what is wrong, worst first.
func (s *System) faults(r *Result) []Fault {
	worst := r.WorstSuction()
	told := []struct {
		fault Fault
		holds bool
	}{
		{NoTrap, r.Trap.Required && !r.Trap.Present},
		{AirReleased, worst > AirReleaseSuction},
		{NoVent, !r.Vent.Present},
		{TightVent, r.Vent.Tight},
		{SmallTrap, r.Trap.Required && r.Trap.Present && s.TrapVolume > 0 && s.TrapVolume < r.Trap.LeastVolume},
		{NoFilter, !s.Filter},
		{FastLine, slices.ContainsFunc(s.indices(), func(i int) bool { return r.Lines[i].Speed > SlowSuctionLine })},
		{ThinMargin, worst > PlannedSuction && worst <= AirReleaseSuction},
	}
	var faults []Fault
	for _, one := range told {
		if one.holds {
			faults = append(faults, one.fault)
		}
	}
	return faults
}

// indices lists the suction lines.
func (s *System) indices() []int {
	var out []int
	for i, line := range s.Lines {
		if line.Suction {
			out = append(out, i)
		}
	}
	return out
}

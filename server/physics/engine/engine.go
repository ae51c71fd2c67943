package engine

import (
	"errors"
	"fmt"
	"math"
)

// Kind is the kind of an engine.
type Kind int

// Kinds of engine.
const (
	Turbine Kind = iota + 1
	DuctedFan
	Propeller
)

// Defaults where an Engine leaves a field at zero.
const (
	// DefaultTurbineExponent is the exponent of a turbine's static thrust against rpm (from memory).
	DefaultTurbineExponent = 2.8
	// DefaultFanExponent is the exponent of a fan's or propeller's static thrust against rpm: square law.
	DefaultFanExponent = 2.0
	// DefaultExhaustTemperature is the total temperature of a small turbine's exhaust, K (common practice, no source).
	DefaultExhaustTemperature = 913.0
	// IntakeRecovery is the share of ram temperature rise an intake turns into pressure.
	IntakeRecovery = 0.95
)

// Engine is one engine as rated.
type Engine struct {
	Kind         Kind
	StaticThrust float64 // at full power in the rated air, N
	IdleThrust   float64 // at idle in the rated air, N
	Rated        Air     // air the static thrust is quoted in; zero means standard
	// MassFlow is the air mass flow of a turbine at full power in the rated air, kg/s.
	MassFlow float64
	// ExhaustTemperature is the total temperature of a turbine's exhaust, K; zero means DefaultExhaustTemperature.
	ExhaustTemperature float64
	// JetArea is the exit area of a ducted fan or the disc area of a propeller, m2.
	JetArea float64
	// ThrustExponent is the exponent of static thrust against rpm; zero means the default of the kind.
	ThrustExponent float64
	// SpoolTime is the time from idle to full, s.
	SpoolTime float64
	// InstallationLoss is the share of thrust lost to intake duct and tailpipe.
	InstallationLoss float64
	FullFuelFlow     float64     // at full thrust, kg/s
	IdleFuelFlow     float64     // at idle, kg/s; zero means unknown
	FuelRun          []FuelPoint // readings of a static run, sorted by thrust
}

// Check returns an error that names the first field with an impossible value.
func (e Engine) Check() error {
	if e.Kind < Turbine || e.Kind > Propeller {
		return errors.New("engine kind: not one of turbine, ducted fan, propeller")
	}
	if e.Kind != Turbine && !(e.JetArea > 0) {
		return errors.New("engine jet area: must be above zero for a fan or propeller")
	}
	fields := []struct {
		name  string
		value float64
		least float64
		most  float64
	}{
		{"static thrust", e.StaticThrust, 0, 1e5},
		{"idle thrust", e.IdleThrust, 0, e.StaticThrust},
		{"mass flow", e.MassFlow, 0, 1e3},
		{"exhaust temperature", e.ExhaustTemperature, 0, 3000},
		{"jet area", e.JetArea, 0, 100},
		{"thrust exponent", e.ThrustExponent, 0, 10},
		{"spool time", e.SpoolTime, 0, 600},
		{"installation loss", e.InstallationLoss, 0, 1},
		{"full fuel flow", e.FullFuelFlow, 0, 100},
		{"idle fuel flow", e.IdleFuelFlow, 0, 100},
	}
	for _, f := range fields {
		if !(f.value >= f.least && f.value <= f.most) {
			return fmt.Errorf("engine %s: %g is outside %g to %g", f.name, f.value, f.least, f.most)
		}
	}
	return nil
}

// exponent returns the exponent of static thrust against rpm.
func (e Engine) exponent() float64 {
	if e.ThrustExponent > 0 {
		return e.ThrustExponent
	}
	if e.Kind == Turbine {
		return DefaultTurbineExponent
	}
	return DefaultFanExponent
}

// IdleRatio returns idle rpm over full rpm, from idle thrust and the exponent.
func (e Engine) IdleRatio() float64 {
	if !(e.StaticThrust > 0) {
		return 0
	}
	return SpeedRatio(e.IdleThrust/e.StaticThrust, e.exponent())
}

// Ratio returns rpm over full rpm at a time (s) after the throttle is opened from idle.
func (e Engine) Ratio(time float64) float64 {
	return SpoolRatio(time, e.IdleRatio(), e.SpoolTime)
}

// installed returns the share of thrust left after installation losses.
func (e Engine) installed() float64 {
	return 1 - e.InstallationLoss
}

// DayStaticThrust returns the full static thrust in the air of the day before installation losses, N.
func (e Engine) DayStaticThrust(air Air) float64 {
	if e.Kind == Turbine {
		return e.StaticThrust * FixedSpeedThrustRatio(air.Against(e.Rated), e.exponent())
	}
	return e.atRatio(1, 0, air.orStandard().Density)
}

// Thrust returns the installed net thrust (N) at an airspeed (m/s) and a time (s) after the throttle was opened from idle: the form for take-off
// and climb margins. A turbine loses ram drag in full (SimpleNetThrust); a fan or propeller keeps its power. It may be negative at low
// power and high speed.
func (e Engine) Thrust(speed, time float64, air Air) float64 {
	return e.ThrustAtRatio(speed, e.Ratio(time), air)
}

// ThrustAtRatio is Thrust at a held speed ratio (rpm over full rpm).
func (e Engine) ThrustAtRatio(speed, ratio float64, air Air) float64 {
	air = air.orStandard()
	speed = max(speed, 0)
	if e.Kind != Turbine {
		return e.installed() * e.atRatio(ratio, speed, air.Density)
	}
	static := e.DayStaticThrust(air) * ThrustShare(ratio, e.exponent())
	return float64(e.installed()*static) - float64(e.DayMassFlow(air)*ratio*speed)
}

// IdleThrustAt returns the installed net thrust (N) at idle at an airspeed (m/s): what is left on an approach. It turns negative with speed.
func (e Engine) IdleThrustAt(speed float64, air Air) float64 {
	return e.ThrustAtRatio(speed, e.IdleRatio(), air)
}

// DayMassFlow returns the full air mass flow of a turbine in the air of the day, kg/s.
//
//	m = m0 delta / theta
//
// where delta and theta are the pressure and temperature ratios. Valid for: fixed rpm, flow growing with corrected speed. Source: corrected
// mass flow m sqrt(theta)/delta taken as proportional to corrected speed.
func (e Engine) DayMassFlow(air Air) float64 {
	c := air.Against(e.Rated)
	return e.MassFlow * c.Delta / c.Theta
}

// TopThrust returns the installed net thrust (N) at full power with ram recovery: the form for top speed and loads, where a high
// value is the careful one. A fan or propeller keeps its power.
func (e Engine) TopThrust(speed float64, air Air) float64 {
	air = air.orStandard()
	speed = max(speed, 0)
	if e.Kind != Turbine {
		return e.ThrustAtRatio(speed, 1, air)
	}
	exhaust := e.ExhaustTemperature
	if !(exhaust > 0) {
		exhaust = DefaultExhaustTemperature
	}
	static := e.installed() * e.DayStaticThrust(air)
	return RamNetThrust(static, e.DayMassFlow(air), speed, air.Temperature, exhaust, IntakeRecovery)
}

// atRatio returns the thrust of a fan or propeller at a speed ratio, with the power that gives its static thrust in the rated air.
func (e Engine) atRatio(ratio, speed, density float64) float64 {
	return e.driven(e.power(ThrustShare(ratio, e.exponent())), speed, density)
}

// power returns the power that gives a fan or propeller a share of its static thrust in the rated air, W.
func (e Engine) power(share float64) float64 {
	static := e.StaticThrust * share
	rated := e.Rated.orStandard().Density
	if e.Kind == DuctedFan {
		return FanJetPower(static, rated, e.JetArea)
	}
	return PropellerPower(static, rated, e.JetArea)
}

// driven returns the thrust of a fan or propeller that is given a power (W), N.
func (e Engine) driven(power, speed, density float64) float64 {
	if e.Kind == DuctedFan {
		return FanThrust(density, e.JetArea, power, speed)
	}
	return PropellerThrust(density, e.JetArea, power, speed)
}

// FullTime returns the time (s) from idle until the thrust share reaches the given share of full static thrust.
//
//	t = ts (s^(1/n) - r0) / (1 - r0)
//
// where ts is the spool time, s the share, n the exponent and r0 the idle ratio. Valid for: linear rpm ramp. Source: inverse of Ratio.
func (e Engine) FullTime(share float64) float64 {
	idle := e.IdleRatio()
	if idle >= 1 {
		return 0
	}
	return max(0, e.SpoolTime*(SpeedRatio(share, e.exponent())-idle)/(1-idle))
}

// JetSpeed returns the static jet speed F/m of a turbine, m/s, and zero when the mass flow is unknown.
func (e Engine) JetSpeed() float64 {
	if !(e.MassFlow > 0) || math.IsInf(e.StaticThrust, 0) {
		return 0
	}
	return e.StaticThrust / e.MassFlow
}

package assess

import (
	"math"

	"pitgate/server/physics/air"
	"pitgate/server/physics/weather"
)

// airSection is the air of the day and its wind.
type airSection struct {
	missing []string
	state   air.State

	windMissing []string
	stateRead   []string // inputs behind state
	wind        float64  // mean speed at the measured height, m/s
	gustExcess  float64  // highest gust over the mean, m/s
	from        float64  // direction the wind comes from, rad
	profile     weather.Profile
}

// Humidity assumed where neither humidity nor dew point is given: it moves the density by half a percent at most.
const (
	assumedHumidity       = 0.5
	assumedHumiditySpread = 0.29
)

func (p *pass) readAir() {
	p.readState()
	p.readWind()
}

func (p *pass) readState() {
	n, mark := p.need(), p.mark()
	day := p.in.Day
	if day == nil {
		day = &DayConditions{}
	}
	temperature := air.FreezingPoint + n.quantity("day.temperatureCelsius", day.TemperatureCelsius)
	pressure := n.stationPressure(day, p.in.Field)
	humidity := p.humidity(day, temperature)
	p.air.missing, p.air.stateRead = n.missing, p.since(mark)
	if n.met() {
		p.air.state = air.At(pressure, temperature, humidity)
	}
}

// stationPressure returns the pressure at the field: as measured there, or from the QNH and the elevation.
func (n *need) stationPressure(day *DayConditions, field *FieldDescription) float64 {
	if pressure, ok := n.pass.read("day.stationPressurePascals", day.StationPressurePascals); ok {
		return pressure
	}
	qnh := n.quantity("day.qnhPascals", day.QnhPascals)
	if field == nil {
		field = &FieldDescription{}
	}
	elevation := n.quantity("field.elevationMeters", field.ElevationMeters)
	if !n.met() {
		return 0
	}
	return air.StationPressure(qnh, elevation)
}

// humidity returns the relative humidity: as given, or from the dew point, or assumed.
func (p *pass) humidity(day *DayConditions, temperature float64) float64 {
	if humidity, ok := p.read("day.relativeHumidityRatio", day.RelativeHumidityRatio); ok {
		return humidity
	}
	if dew, ok := p.read("day.dewPointCelsius", day.DewPointCelsius); ok {
		return air.SaturationPressure(air.FreezingPoint+dew) / air.SaturationPressure(temperature)
	}
	return p.assumed("day.relativeHumidityRatio", assumedHumidity, assumedHumiditySpread)
}

func (p *pass) readWind() {
	n, mark := p.need(), p.mark()
	day := p.in.Day
	if day == nil {
		day = &DayConditions{}
	}
	p.air.wind = max(0, n.quantity("day.windSpeedMetersPerSecond", day.WindSpeedMetersPerSecond))
	if p.air.wind > 0 || !n.met() {
		p.air.from = radians(n.quantity("day.windDirectionDegrees", day.WindDirectionDegrees))
	}
	ground := roughness(p.in)
	p.air.profile = weather.NewProfile(ground, orElse(day.WindHeightMeters, 0))
	if n.met() {
		p.tell("wind.mean", p.air.wind, p.since(mark)...)
	}
	mark = p.mark()
	p.air.gustExcess = p.gustExcess(day, ground)
	p.air.windMissing = n.missing
	if n.met() {
		p.tell("wind.gust_excess", p.air.gustExcess, p.since(mark)...)
	}
}

// gustExcess returns the highest gust over the mean wind: as reported, or by the least gust factor of the ground.
func (p *pass) gustExcess(day *DayConditions, ground weather.Roughness) float64 {
	if gust, ok := p.read("day.gustSpeedMetersPerSecond", day.GustSpeedMetersPerSecond); ok {
		return max(0, gust-p.air.wind)
	}
	p.note("field.roughness")
	excess := p.air.wind * (weather.LeastGustFactor(ground) - 1)
	return excess * p.factor("method: least gust factor", spreadGust)
}

// windAlong returns the head wind and the cross wind from the right of a heading (rad), m/s at the measured height.
func (p *pass) windAlong(heading float64) (head, cross float64) {
	return weather.Headwind(p.air.wind, p.air.from, heading), weather.Crosswind(p.air.wind, p.air.from, heading)
}

func (p *pass) answerAir() {
	answer := answer{id: "air.density", missing: p.air.missing, value: p.air.state.DensityAltitude}
	answer.limit = p.optionalLimit(densityAltitudeFigure)
	if p.base() && len(p.air.missing) == 0 {
		state := p.air.state
		answer.note = say("Density %.4f kg/m3 at %.1f C and %.0f hPa, the air of %.0f m in the standard atmosphere; %s.",
			state.Density, state.Temperature-air.FreezingPoint, state.Pressure/100, state.DensityAltitude, state.Method)
		answer.outside = state.Pressure < 60000 || state.Pressure > 110000 || math.Abs(state.Temperature-288.15) > 45
		p.tellAir()
	}
	p.conclude(answer)
}

func (p *pass) tellAir() {
	state, read := p.air.state, p.air.stateRead
	p.tell("air.station_pressure", state.Pressure, read...)
	p.tell("air.density", state.Density, read...)
	p.tell("air.density_altitude", state.DensityAltitude)
	p.tell("air.viscosity", state.Viscosity)
	p.tell("air.sound_speed", state.SoundSpeed)
}

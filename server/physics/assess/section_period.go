package assess

import (
	"math"

	"pitgate/server/physics/weather"
)

// period is the wind from the time of the day to the last change that the day lists, and the figures it is held against.
type period struct {
	forecast   weather.Forecast
	now        float64 // s since 1970-01-01 UTC
	times      []float64
	heading    float64 // of the launch, rad
	across     *float64
	gust       *float64
	toldLimits []string
}

// answerLater holds the wind to come against the limits of the wind across and of the gust. Without a list of changes there is nothing to answer.
func (p *pass) answerLater() {
	if len(p.today().WindChanges) == 0 {
		return
	}
	if !p.base() {
		p.keepStill("weather.later")
		return
	}
	n := p.need()
	later := answer{id: "weather.later", limit: limit{set: true, rule: coreDefault + ", over the limits of crosswind and gust"}}
	if span := p.period(&n); n.met() {
		p.later(&span, &later)
	}
	later.missing = n.missing
	p.conclude(later)
	p.markForecastEstimates()
}

// period reads the list of changes and names what it lacks.
func (p *pass) period(n *need) period {
	now, _ := p.now(n)
	n.lack(p.launch.placeMissing...)
	n.lack(p.air.windMissing...)
	span := period{now: now, heading: p.launch.heading, across: p.limitHeld("weather.crosswind"), gust: p.limitHeld("weather.gust")}
	span.toldLimits = append(p.limitPath(crosswindFigure), p.limitPath(gustFigure)...)
	if span.across == nil && span.gust == nil {
		n.lack("limits.maximumCrosswindMetersPerSecond", "limits.maximumGustMetersPerSecond")
	}
	list := []weather.Change{{Time: now, Wind: weather.Wind{Speed: p.air.wind, Gust: p.air.wind + p.air.gustExcess, From: p.air.from}}}
	for i := range p.in.Day.WindChanges {
		if change := p.change(n, i); n.met() && change.Time > now {
			list = append(list, change)
		}
	}
	if n.met() && len(list) == 1 {
		n.lack("day.windChanges")
	}
	if !n.met() {
		return span
	}
	for _, change := range list {
		span.times = append(span.times, change.Time)
	}
	var err error
	if span.forecast, err = weather.NewForecast(list); err != nil {
		n.lack("day.windChanges")
	}
	return span
}

// limitHeld returns the figure that a finding of this pass was held against, nil where there is none.
func (p *pass) limitHeld(id string) *float64 {
	for i := range p.results {
		if p.results[i].ID == id {
			return p.results[i].Limit
		}
	}
	return nil
}

// change reads one change of the wind; a gust that is not named is what the ground makes at least, as for the wind of the day.
func (p *pass) change(n *need, i int) weather.Change {
	given, path := &p.in.Day.WindChanges[i], at("day.windChanges", i)
	moment, err := weather.Moment(given.Time)
	n.lackUnless(err == nil, path+".time")
	n.lackUnless(given.WindSpeedMetersPerSecond != nil && given.WindSpeedMetersPerSecond.Value != nil, path+".windSpeedMetersPerSecond")
	speed := max(0, valueOr(given.WindSpeedMetersPerSecond, 0))
	if turn := given.WindDirectionDegrees; speed > 0 {
		n.lackUnless(turn != nil && turn.Value != nil, path+".windDirectionDegrees")
	}
	return weather.Change{Time: moment, Wind: weather.Wind{
		Speed: speed, Gust: max(speed, valueOr(given.GustSpeedMetersPerSecond, speed*weather.LeastGustFactor(roughness(p.in)))),
		From: radians(valueOr(given.WindDirectionDegrees, 0)),
	}}
}

// excess returns by how much a wind is over its limits, m/s: the greater of the wind across and of the gust; negative within both.
func (s *period) excess(wind weather.Wind) float64 {
	most := math.Inf(-1)
	if s.across != nil {
		most = math.Abs(weather.Crosswind(wind.Gust, wind.From, s.heading)) - *s.across
	}
	if s.gust != nil {
		most = max(most, wind.Gust-*s.gust)
	}
	return most
}

// closeEnough is how closely the first moment is found, s.
const closeEnough = 1.0

// first returns the first moment at which a limit is no longer held, to the second; false when they hold over the whole period.
//
// Valid for: winds that leave and regain their limits no more often than Forecast.Worst can tell. Source: bisection.
func (s *period) first() (float64, bool) {
	for i := 1; i < len(s.times); i++ {
		begin, worst := s.times[i-1], s.forecast.Worst(s.times[i-1], s.times[i], s.excess)
		if s.excess(worst.Wind) <= 0 {
			continue
		}
		if s.excess(s.forecast.At(begin)) > 0 {
			return begin, true
		}
		end := worst.Time
		for end-begin > closeEnough {
			if middle := begin + float64((end-begin)/2); s.excess(s.forecast.At(middle)) > 0 {
				end = middle
			} else {
				begin = middle
			}
		}
		return end, true
	}
	return 0, false
}

// later answers with the least margin over the period and tells when and in which wind it is.
func (p *pass) later(s *period, later *answer) {
	worst := s.forecast.Worst(s.now, s.times[len(s.times)-1], s.excess)
	later.value = -s.excess(worst.Wind)
	later.from = append(later.from, s.toldLimits...)
	later.from = append(later.from, p.toldUnder("crosswind.limit")...)
	later.note = say("Both limits hold until %s; least margin at %s in %s.", p.clock(s.times[len(s.times)-1]), p.clock(worst.Time), s.words(worst.Wind))
	shown := worst
	if moment, over := s.first(); over {
		shown = weather.Change{Time: moment, Wind: s.forecast.At(moment)}
		later.note = say("From %s a limit is no longer held: %s; worst at %s in %s.", p.clock(moment), s.words(shown.Wind), p.clock(worst.Time), s.words(worst.Wind))
		p.tell("weather.later_time", (moment-s.now)/secondsPerMinute)
	}
	p.tell("weather.later_worst_time", (worst.Time-s.now)/secondsPerMinute)
	p.tell("weather.later_gust", shown.Wind.Gust)
	p.tell("weather.later_crosswind", math.Abs(weather.Crosswind(shown.Wind.Gust, shown.Wind.From, s.heading)))
}

// words says a wind and its part across the launch.
func (s *period) words(wind weather.Wind) string {
	return sayNumbers("%.1f m/s gusting %.1f m/s from %.0f degrees, %.1f m/s across",
		wind.Speed, wind.Gust, compass(wind.From), math.Abs(weather.Crosswind(wind.Gust, wind.From, s.heading)))
}

// clock writes a moment as the clock shows it that day.time was written by, with the date where that is another.
func (p *pass) clock(moment float64) string {
	now, _ := weather.Moment(p.today().Time)
	local := localTimeOf(p.today().Time)
	minutes := local.minute + int(math.Round(moment/secondsPerMinute-math.Floor(now/secondsPerMinute)))
	clock := say("%02d:%02d", minutes/60%24, minutes%60)
	if days := minutes / (24 * 60); days > 0 {
		clock += say(" (%s later)", dayWords(days))
	}
	return clock
}

// markForecastEstimates says that the finding just concluded rests on an estimate when a wind of the list is estimated.
func (p *pass) markForecastEstimates() {
	f := &p.results[len(p.results)-1]
	for i := range p.in.Day.WindChanges {
		c := &p.in.Day.WindChanges[i]
		for _, q := range []*Quantity{c.WindSpeedMetersPerSecond, c.GustSpeedMetersPerSecond, c.WindDirectionDegrees} {
			if f.Value != nil && q != nil && q.estimated() {
				f.RestsOnEstimate = true
			}
		}
	}
}

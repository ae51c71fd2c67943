package metar

// Kind says what sort of report a text is.
type Kind string

// Kinds of report.
const (
	// Unnamed is a report whose text does not say its kind.
	Unnamed Kind = ""
	// Routine is a METAR.
	Routine Kind = "METAR"
	// Special is a SPECI.
	Special Kind = "SPECI"
)

// Value is a number the report may leave out.
type Value struct {
	Number float64 // in the unit its field names
	Known  bool    // false when the report leaves it out or gives slashes
}

// known returns a value that is given.
func known(number float64) Value { return Value{Number: number, Known: true} }

// Report is one decoded report.
type Report struct {
	Kind      Kind   // METAR, SPECI or not said
	Station   string // four-character location indicator
	Time      Clock  // day of the month and time, UTC
	Corrected bool   // COR, or a lettered correction such as CCA
	Automatic bool   // AUTO: no observer
	Nil       bool   // NIL: the station had no report to give

	Wind        Wind
	Visibility  Visibility
	FineWeather bool     // CAVOK: 10 km or more, no cloud of operational significance, no significant weather
	RunwayRange []string // runway visual range, as text

	Weather        []Weather // present weather
	WeatherUnknown bool      // slashes in place of the present weather
	Clouds         []Cloud   // layers, lowest first as reported
	Sky            Sky       // word in place of layers
	CloudUnknown   bool      // slashes in place of the cloud

	Temperature Value // degrees Celsius
	DewPoint    Value // degrees Celsius
	QNH         Value // Pa

	Recent    []Weather // weather of the last hour, over by now
	WindShear []string  // as text
	Surface   []string  // sea and runway state, as text
	Colour    string    // military colour state, as text
	Trend     string    // NOSIG, BECMG and TEMPO with what follows, as text
	Remarks   string    // what follows RMK, as text
}

// Wind is the wind of a report: a mean over ten minutes (two in North America) at 10 m.
type Wind struct {
	Speed     Value // mean, m/s
	Direction Value // where it comes from, degrees true from above 0 to 360; absent when calm, variable or not given
	Gust      Value // highest, m/s; absent when it is not 10 kt (5 m/s) above the mean, so that absence is no calm
	Variable  bool  // VRB: no one direction
	Calm      bool  // below 0.5 m/s (1 kt)
	// SpeedAtLeast and GustAtLeast say that the instrument ended there and the true value may be higher.
	SpeedAtLeast, GustAtLeast bool
	// SectorFrom and SectorTo are the extremes of direction, degrees true, clockwise from one to the other, when HasSector.
	SectorFrom, SectorTo float64
	HasSector            bool
}

// Visibility is the prevailing visibility near the ground.
type Visibility struct {
	Meters   float64 // m
	Known    bool
	AtLeast  bool // the true value may be higher: 9999, P6SM
	LessThan bool // the true value is lower: 0000, M1/4SM
	// NoDirection is NDV: the sensor cannot tell directions apart.
	NoDirection bool
	// Directions hold the visibility towards points of the compass.
	Directions []DirectionalVisibility
}

// DirectionalVisibility is the visibility towards one point of the compass.
type DirectionalVisibility struct {
	Meters  float64 // m
	Towards string  // N, NE, E, SE, S, SW, W or NW
}

// LeastVisibility returns the lowest visibility in any direction, m.
func (r Report) LeastVisibility() Value {
	if !r.Visibility.Known {
		return Value{}
	}
	least := r.Visibility.Meters
	for _, direction := range r.Visibility.Directions {
		least = min(least, direction.Meters)
	}
	return known(least)
}

// Fixed returns the direction of the wind, degrees true, or an error when the report has no one direction.
func (w Wind) Fixed() (float64, error) {
	switch {
	case w.Direction.Known:
		return w.Direction.Number, nil
	case w.Calm:
		return 0, errCalm
	case w.Variable:
		return 0, errVariable
	}
	return 0, errNoDirection
}

// Absent names what the report leaves out or gives as slashes, in the order of the code form. Elements that are left out because there is
// nothing to say (gust, weather, runway range) are not named.
func (r Report) Absent() []string {
	sky := len(r.Clouds) > 0 || r.Sky != "" || r.FineWeather
	elements := []struct {
		name  string
		given bool
	}{
		{"time", r.Time.Known},
		{"wind speed", r.Wind.Speed.Known},
		{"wind direction", r.Wind.Direction.Known || r.Wind.Variable || r.Wind.Calm},
		{"visibility", r.Visibility.Known},
		{"present weather", !r.WeatherUnknown},
		{"cloud", sky && !r.CloudUnknown},
		{"temperature", r.Temperature.Known},
		{"dew point", r.DewPoint.Known},
		{"pressure", r.QNH.Known},
	}
	var absent []string
	for _, element := range elements {
		if !element.given {
			absent = append(absent, element.name)
		}
	}
	return absent
}

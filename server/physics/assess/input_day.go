package assess

// SurfaceState says: state of the surface on the day.
type SurfaceState string

// Values of SurfaceState; the empty string means that nothing was said.
const (
	SurfaceStateDry    SurfaceState = "SURFACE_STATE_DRY"
	SurfaceStateWet    SurfaceState = "SURFACE_STATE_WET"
	SurfaceStateSoft   SurfaceState = "SURFACE_STATE_SOFT"
	SurfaceStateFrozen SurfaceState = "SURFACE_STATE_FROZEN"
	SurfaceStateSnow   SurfaceState = "SURFACE_STATE_SNOW"
)

// Names lists every value that may stand in a document.
func (SurfaceState) Names() []string {
	return []string{string(SurfaceStateDry), string(SurfaceStateWet), string(SurfaceStateSoft), string(SurfaceStateFrozen), string(SurfaceStateSnow)}
}

// Frost says: frost on the model.
type Frost string

// Values of Frost; the empty string means that nothing was said.
const (
	FrostNone    Frost = "FROST_NONE"
	FrostPresent Frost = "FROST_PRESENT"
)

// Names lists every value that may stand in a document.
func (Frost) Names() []string {
	return []string{string(FrostNone), string(FrostPresent)}
}

// DayConditions: air and ground on the day.
type DayConditions struct {
	// RFC 3339, with offset.
	Time               string    `json:"time,omitempty" range:"max_len=40"`
	TemperatureCelsius *Quantity `json:"temperatureCelsius,omitempty" range:"gte=-60,lte=60"`
	// QNH: pressure reduced to sea level by the standard atmosphere.
	QnhPascals *Quantity `json:"qnhPascals,omitempty" range:"gte=85000,lte=110000"`
	// Pressure at the field itself; used instead of the QNH when given.
	StationPressurePascals *Quantity `json:"stationPressurePascals,omitempty" range:"gte=40000,lte=110000"`
	// 0 to 1.
	RelativeHumidityRatio *Quantity `json:"relativeHumidityRatio,omitempty" range:"gte=0,lte=1"`
	// Mean wind at 10 m unless wind_height_meters says otherwise.
	WindSpeedMetersPerSecond *Quantity `json:"windSpeedMetersPerSecond,omitempty" range:"gte=0,lte=60"`
	// Highest gust. Absent: the least gust factor of the terrain is used.
	GustSpeedMetersPerSecond *Quantity `json:"gustSpeedMetersPerSecond,omitempty" range:"gte=0,lte=60"`
	// Direction the wind comes from, degrees true.
	WindDirectionDegrees *Quantity `json:"windDirectionDegrees,omitempty" range:"gte=0,lte=360"`
	// Height at which the wind was measured. Absent: 10 m.
	WindHeightMeters *float64     `json:"windHeightMeters,omitempty" range:"gt=0,lte=300"`
	VisibilityMeters *Quantity    `json:"visibilityMeters,omitempty" range:"gte=0,lte=100000"`
	CloudBaseMeters  *Quantity    `json:"cloudBaseMeters,omitempty" range:"gte=0,lte=20000"`
	SurfaceState     SurfaceState `json:"surfaceState,omitempty"`
	Frost            Frost        `json:"frost,omitempty"`
	// Report the values were read from.
	Metar           string    `json:"metar,omitempty" range:"max_len=800"`
	DewPointCelsius *Quantity `json:"dewPointCelsius,omitempty" range:"gte=-90,lte=60"`
	// Wind expected later on the day, in order of time.
	WindChanges []WindChange `json:"windChanges,omitempty" range:"max_items=48"`
}

// WindChange: wind from one time on.
type WindChange struct {
	// RFC 3339, with offset.
	Time                     string    `json:"time,omitempty" range:"max_len=40"`
	WindSpeedMetersPerSecond *Quantity `json:"windSpeedMetersPerSecond,omitempty" range:"gte=0,lte=60"`
	GustSpeedMetersPerSecond *Quantity `json:"gustSpeedMetersPerSecond,omitempty" range:"gte=0,lte=60"`
	WindDirectionDegrees     *Quantity `json:"windDirectionDegrees,omitempty" range:"gte=0,lte=360"`
}

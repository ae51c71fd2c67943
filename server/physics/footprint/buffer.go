package footprint

import (
	"errors"
	"math"

	"pitgate/server/physics/elementary"
)

// Operation is what contingency volume and ground risk buffer are worked out from.
type Operation struct {
	Speed    float64 // greatest, over the ground, m/s
	Size     float64 // greatest dimension of the model, m
	Bank     float64 // greatest bank, or tilt when it stops, rad
	Reaction float64 // time, s
	Height   float64 // of the flight geography, m
	// PositionError, HoldError and MapError are the errors of place, of holding it and of the map, m. HeightError is that of the height, m.
	PositionError, HoldError, MapError, HeightError float64
	// Stops is true for a model that stops on the spot instead of turning.
	Stops   bool
	Gravity float64 // m/s2; zero means standard
}

// Contingency is the volume around the flight geography.
type Contingency struct {
	ReactionDistance, ManoeuvreDistance, Distance float64 // m
	ReactionHeight, ManoeuvreHeight, Height       float64 // m; Height is over the ground
}

// GeographySize returns the least width of the flight geography, m: three times the greatest dimension of the model.
//
// Source: German federal aviation authority, guideline on flight geography, contingency volume and ground risk buffer (from memory).
func GeographySize(size float64) float64 { return 3 * size }

// Contingency returns the contingency volume.
//
//	sideways: s = V t + r + errors, r = V^2/(g tan(b)) for a turn, V^2/(2 g tan(b)) for a stop
//	up: h = H + 0.7 V t + 0.3 V^2/g + error for a turn, V^2/(2 g) in its place for a stop
//
// where V is the speed (m/s), t the reaction time (s), b the bank or tilt (rad) and H the height (m).
// Valid for: level flight; climb of 45 degrees at the reaction. Source: German federal aviation authority, guideline on flight geography,
// contingency volume and ground risk buffer (from memory).
func (o Operation) Contingency() (Contingency, error) {
	if err := o.check(); err != nil {
		return Contingency{}, err
	}
	square := float64(o.Speed * o.Speed)
	turn := square / (o.gravity() * elementary.Tan(o.Bank))
	up := float64(0.3 * square / o.gravity())
	if o.Stops {
		turn, up = turn/2, square/(2*o.gravity())
	}
	c := Contingency{ReactionDistance: float64(o.Speed * o.Reaction), ManoeuvreDistance: turn}
	c.ReactionHeight, c.ManoeuvreHeight = float64(0.7*c.ReactionDistance), up
	c.Distance = o.PositionError + o.HoldError + o.MapError + c.ReactionDistance + c.ManoeuvreDistance
	c.Height = o.Height + o.HeightError + c.ReactionHeight + c.ManoeuvreHeight
	return c, nil
}

// check returns an error that names the first impossible value.
func (o Operation) check() error {
	return firstOutside([]bounded{
		{"speed", o.Speed, 0, 1e3},
		{"size", o.Size, 0, 1e3},
		{"bank", o.Bank, 0.01, 1.55},
		{"reaction time", o.Reaction, 0, 600},
		{"height", o.Height, 0, 1e5},
		{"position error", o.PositionError, 0, 1e4},
		{"hold error", o.HoldError, 0, 1e4},
		{"map error", o.MapError, 0, 1e4},
		{"height error", o.HeightError, 0, 1e4},
		{"gravity", o.Gravity, 0, 1e3},
	})
}

// gravity returns the acceleration of free fall.
func (o Operation) gravity() float64 {
	if o.Gravity > 0 {
		return o.Gravity
	}
	return standardGravity
}

// EqualBuffer returns the ground risk buffer as wide as the contingency volume is high, m: h + s/2, s the greatest dimension.
//
// Valid for: models that fall steeply; it understates a fall from speeds above sqrt(g h/2). Source: the one-to-one rule of the European and British
// authorities.
func EqualBuffer(height, size float64) float64 { return height + float64(0.5*size) }

// BallisticBuffer returns the ground risk buffer of a fall without drag, m: V sqrt(2 h/g) + s/2.
//
// Valid for: release level, no wind; height and gravity above zero, else half the size is left. Source: kinematics.
func BallisticBuffer(height, speed, size, gravity float64) float64 {
	if !(height > 0) || !(gravity > 0) {
		return float64(0.5 * size)
	}
	return float64(speed*math.Sqrt(2*height/gravity)) + float64(0.5*size)
}

// GlideBuffer returns the ground risk buffer of a glide in still air, m: E h, E the glide ratio. Source: kinematics.
func GlideBuffer(height, glideRatio float64) float64 { return glideRatio * height }

// ParachuteBuffer returns the ground risk buffer under a parachute, m: V t + w h/v.
//
// where t is the time to open (s), w the wind and v the rate of fall (m/s), which must be above zero. Source: kinematics.
func ParachuteBuffer(height, speed, opening, wind, sink float64) (float64, error) {
	if !(sink > 0) {
		return 0, errors.New("rate of fall: must be above zero")
	}
	return float64(speed*opening) + float64(wind*(height/sink)), nil
}

// AdjacentRadius returns how far the surroundings are looked at, m: the way in three minutes, within 5 to 35 km.
//
// Source: JARUS SORA 2.5, main body (from memory).
func AdjacentRadius(speed float64) float64 { return min(max(180*speed, 5000), 35000) }

// TwoSecondDistance returns the way in two seconds, m, with which an authority's guidance for the open category sets a least distance.
//
// Source: Italian civil aviation authority, guidance on subcategory A3.
func TwoSecondDistance(speed float64) float64 { return 2 * speed }

// SteadyGlide is a straight glide in a steady wind.
type SteadyGlide struct {
	Time     float64 // to the ground, s
	Distance float64 // over the ground, m; negative when the wind carries the model backwards
	Sink     float64 // m/s
}

// Glide returns the straight glide from a height (m) at an airspeed (m/s) and a glide ratio with a wind along the way (m/s, from behind positive).
//
//	tan(a) = 1/E, sink = V sin(a), t = h/sink, x = (V cos(a) + w) t
//
// Valid for: steady glide from the start, the same wind at all heights. Source: kinematics.
func Glide(height, speed, glideRatio, tailWind float64) (SteadyGlide, error) {
	if err := firstOutside([]bounded{
		{"height", height, 0, 1e5}, {"speed", speed, leastSpeed, 1e3}, {"glide ratio", glideRatio, 0, 100}, {"wind along", tailWind, -100, 100},
	}); err != nil {
		return SteadyGlide{}, err
	}
	length := math.Sqrt(1 + float64(glideRatio*glideRatio))
	sink := speed / length
	time := height / sink
	return SteadyGlide{Time: time, Distance: float64((float64(speed*(glideRatio/length)) + tailWind) * time), Sink: sink}, nil
}

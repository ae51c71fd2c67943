package footprint

import (
	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// leastWindHeight is the height below which the wind is taken as at this height, m: a model is no point, and the profile has no meaning in the grass.
const leastWindHeight = 1.0

// Wind is the mean wind over the field.
type Wind struct {
	Speed   float64         // at the profile's reference height, m/s
	From    float64         // direction it comes from, rad clockwise from north
	Profile weather.Profile // change with height; the zero profile is the same at all heights
}

// Check returns an error that names the first impossible value.
func (w Wind) Check() error {
	return firstOutside([]bounded{
		{"wind speed", w.Speed, 0, 60},
		{"wind direction", w.From, -1e3, 1e3},
		{"wind roughness length", w.Profile.RoughnessLength, 0, 5},
		{"wind reference height", w.Profile.ReferenceHeight, 0, 1000},
	})
}

// At returns the velocity of the air at a height over the ground, m/s.
//
//	w(z) = -W f(z) (sin(d), cos(d)), z at least 1 m
//
// where W is the wind speed at the reference height, f weather.Profile.Factor and d the direction the wind comes from.
// Valid for: as weather.Profile.Factor. Source: logarithmic wind profile.
func (w Wind) At(height float64) field.Point {
	speed := w.SpeedAt(height)
	return field.Point{X: float64(-speed * elementary.Sin(w.From)), Y: float64(-speed * elementary.Cos(w.From))}
}

// SpeedAt returns the wind speed at a height over the ground, m/s.
func (w Wind) SpeedAt(height float64) float64 {
	if w.Speed == 0 {
		return 0
	}
	return float64(w.Speed * w.Profile.Factor(max(height, leastWindHeight)))
}

// air is a Wind prepared for many heights.
type air struct {
	toward  field.Point // velocity at the reference height
	profile weather.Profile
	calm    bool
	table   factors
}

// factors are the profile's factors at heights a quarter of a metre apart, from zero up.
type factors []float64

// spacing is the inverse of the distance between the heights of factors, 1/m.
const spacing = 4

// tabled returns the factors up to a height.
func tabled(profile weather.Profile, highest float64) factors {
	out := make(factors, int(spacing*highest)+2)
	for i := range out {
		out[i] = profile.Factor(max(float64(i)/spacing, leastWindHeight))
	}
	return out
}

// at returns the factor at a height, straight between those of the table; false beyond its end.
func (t factors) at(height float64) (factor float64, ok bool) {
	x := max(float64(spacing*height), 0)
	i := int(x)
	if !(x < float64(len(t)-1)) {
		return 0, false
	}
	return t[i] + float64((x-float64(i))*(t[i+1]-t[i])), true
}

// prepare returns the wind with its direction worked out.
func (w Wind) prepare() air {
	toward := field.Point{X: float64(-w.Speed * elementary.Sin(w.From)), Y: float64(-w.Speed * elementary.Cos(w.From))}
	return air{toward: toward, profile: w.Profile, calm: w.Speed == 0}
}

// at returns the velocity of the air at a height.
func (a *air) at(height float64) (x, y float64) {
	if a.calm {
		return 0, 0
	}
	factor := a.factor(height)
	return float64(a.toward.X * factor), float64(a.toward.Y * factor)
}

// factor returns the wind at a height over that at the reference height.
func (a *air) factor(height float64) float64 {
	factor, ok := a.table.at(height)
	if !ok {
		factor = a.profile.Factor(max(height, leastWindHeight))
	}
	return factor
}

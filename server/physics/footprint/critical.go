package footprint

import (
	"errors"
	"math"

	"pitgate/server/physics/elementary"
)

// Ground is what a critical area assumes of people and ground.
type Ground struct {
	PersonRadius float64 // m
	PersonHeight float64 // m
	Friction     float64 // coefficient of the slide
	LethalEnergy float64 // kinetic energy above which the slide counts, J
	Gravity      float64 // m/s2
	// ObstacleFactor is the share left by what stands in the way, for widths above 1 m and below 40 m; zero means 1.
	ObstacleFactor float64
}

// AnnexF returns the assumptions of the published model, obstacles not counted.
//
// Source: JARUS SORA Annex F, edition 2.5: person 0.3 m radius, 1.8 m tall, 290 J, friction 0.65.
func AnnexF() Ground {
	return Ground{PersonRadius: 0.3, PersonHeight: 1.8, Friction: 0.65, LethalEnergy: 290, Gravity: 9.81, ObstacleFactor: 1}
}

// Obstructed returns the assumptions with obstacles counted as published: the critical area falls to 0.6 of itself.
func (g Ground) Obstructed() Ground {
	g.ObstacleFactor = 0.6
	return g
}

// Strike is a model meeting the ground.
type Strike struct {
	Width float64 // m
	Mass  float64 // kg
	Speed float64 // along the path, m/s
	Angle float64 // of the path below the horizontal, rad
}

// CriticalArea is the ground on which a person would be struck.
type CriticalArea struct {
	Glide, Slide             float64 // areas swept below a person's height and while sliding, m2
	Total                    float64 // m2
	GlideLength, SlideLength float64 // m
	SlideTime                float64 // until the energy falls to the limit, s
}

// Limits of the model's angles.
const (
	narrowWidth    = 1.0
	wideWidth      = 40.0
	shallowest     = math.Pi / 180
	narrowShallow  = 35 * math.Pi / 180
	flatRestores   = 0.8
	steepRestores  = 0.6
	restoringStart = 10 * math.Pi / 180
)

// Restitution returns the share of speed left after the impact.
//
//	e = 0.8 - 0.2 (a - 10 deg)/80 deg, within 0.6 to 0.8
//
// where a is the angle of impact (rad). Valid for: aeroplanes on open ground. Source: JARUS SORA Annex F, edition 2.5.
func Restitution(angle float64) float64 {
	return min(max(flatRestores-float64((flatRestores-steepRestores)*(angle-restoringStart)/(math.Pi/2-restoringStart)), steepRestores), flatRestores)
}

// Check returns an error that names the first impossible value.
func (g Ground) Check() error {
	return firstOutside([]bounded{
		{"person radius", g.PersonRadius, 0, 10},
		{"person height", g.PersonHeight, 0, 500},
		{"friction", g.Friction, 0, 10},
		{"lethal energy", g.LethalEnergy, 0, 1e9},
		{"gravity", g.Gravity, 0, 100},
		{"obstacle factor", g.ObstacleFactor, 0, 1},
	})
}

// Check returns an error that names the first impossible value.
func (s Strike) Check() error {
	return firstOutside([]bounded{
		{"width", s.Width, 0, 1000},
		{"mass", s.Mass, 0, 1e6},
		{"speed", s.Speed, 0, 1e4},
		{"angle", s.Angle, -math.Pi, math.Pi},
	})
}

// CriticalArea returns the critical area of a strike.
//
//	glide: d = h/tan(a), A = 2 (r + w/2) d + pi (r + w/2)^2/2
//	slide: u = e V cos(a), t = (u - sqrt(2 E/m))/(f g), d = u t - f g t^2/2, A = (2 r + w) d + pi (r + w/2)^2/2
//
// where r and h are the radius and height of a person, w the width (m), a the angle (rad), e the Restitution, E the lethal energy (J), m the mass (kg)
// and f the friction. Up to 1 m of width the angle is at least 35 degrees and nothing slides. The angle is at least 1 degree.
// Valid for: widths up to 40 m, open ground, no fire. Source: JARUS SORA Annex F, edition 2.5, appendix B.
func (s Strike) CriticalArea(g Ground) (CriticalArea, error) {
	if err := errors.Join(s.Check(), g.Check()); err != nil {
		return CriticalArea{}, err
	}
	return s.area(g), nil
}

// area is CriticalArea without the checks.
func (s Strike) area(g Ground) CriticalArea {
	angle := min(max(s.Angle, shallowest), math.Pi/2)
	narrow := s.Width <= narrowWidth
	if narrow {
		angle = max(angle, narrowShallow)
	}
	radius := g.PersonRadius + float64(0.5*s.Width)
	end := float64(math.Pi * radius * radius / 2)
	glide := max(0, g.PersonHeight*elementary.Cos(angle)/elementary.Sin(angle))
	out := CriticalArea{Glide: float64(2*radius*glide) + end, GlideLength: glide}
	if !narrow {
		out.SlideTime, out.SlideLength = s.slide(angle, g)
		out.Slide = float64(2*radius*out.SlideLength) + end
	}
	return out.reduced(g.factor(s.Width))
}

// slide returns the time and the way until the energy falls to the limit.
func (s Strike) slide(angle float64, g Ground) (time, length float64) {
	level := float64(Restitution(angle) * s.Speed * elementary.Cos(angle))
	braking := g.Friction * g.Gravity
	if !(braking > 0) || !(s.Mass > 0) {
		return 0, 0
	}
	time = max(0, (level-SpeedOfEnergy(s.Mass, g.LethalEnergy))/braking)
	return time, float64(level*time) - float64(braking*time*time/2)
}

// factor returns the share left by obstacles for a width.
func (g Ground) factor(width float64) float64 {
	if g.ObstacleFactor > 0 && width > narrowWidth && width < wideWidth {
		return g.ObstacleFactor
	}
	return 1
}

// reduced returns the areas at a share, and their sum.
func (c CriticalArea) reduced(share float64) CriticalArea {
	c.Glide, c.Slide = float64(c.Glide*share), float64(c.Slide*share)
	c.Total = c.Glide + c.Slide
	return c
}

// ExpectedStruck returns the number of people struck at one impact: area (m2) times density (people/m2). Valid for: people spread evenly,
// none warned. Source: JARUS SORA Annex F.
func ExpectedStruck(area, density float64) float64 { return area * density }

// RiskClass returns the intrinsic risk class of the ground, raw and as the next whole number of the raw one rounded to a tenth.
//
//	raw = 1 - log10(1e-6/(D A))
//
// where D is the density of people (people/m2) and A the critical area (m2).
// Valid for: the target of 1e-6 deaths a flight hour. Source: JARUS SORA Annex F, edition 2.5.
func RiskClass(area, density float64) (raw float64, class int, err error) {
	if !(area > 0 && area < 1e12) || !(density > 0 && density < 1e3) {
		return 0, 0, errors.New("critical area and density of people: must be above zero")
	}
	raw = 1 - elementary.Log10(1e-6/(density*area))
	return raw, int(math.Ceil(math.Floor(float64(raw*10)+0.5) / 10)), nil
}

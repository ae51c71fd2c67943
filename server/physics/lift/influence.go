package lift

import "math"

// inverseFourPi is 1/(4 pi).
const inverseFourPi = 1 / (4 * math.Pi)

// coreFactor is the core radius of a trailing leg felt by another surface, over the wider of the two strips.
const coreFactor = 0.7

// influence returns the matrix of normal velocities at the control points per unit circulation over speed, port side included:
// image 1 for the same circulation there (symmetric flight), -1 for the opposite one (rolling, yawing, sideslip).
func (l *lattice) influence(image float64) []float64 {
	n := len(l.panels)
	matrix := make([]float64, n*n)
	cores := make([]float64, len(l.strips))
	strip := -1
	for i := range l.panels {
		p := &l.panels[i]
		if p.strip != strip {
			strip = p.strip
			l.coresAround(strip, cores)
		}
		row := matrix[i*n : (i+1)*n]
		for j := range row {
			source := &l.panels[j]
			y, z := l.induced(source, p.control, cores[source.strip], image)
			row[j] = float64(p.normalY*y) + float64(p.normalZ*z)
		}
	}
	l.decamber(matrix)
	return matrix
}

// coresAround fills in the squares of the core radii that one strip feels in all others.
func (l *lattice) coresAround(strip int, cores []float64) {
	for j := range cores {
		cores[j] = l.coreBetween(strip, j)
	}
}

// decamber adds what every strip loses of its incidence by its own lift, so that its section has its own lift slope.
//
// Formula: -2/c loss at every pair of panels of one strip; where loss as loseSlope gives it, 2/c the lift coefficient of unit circulation.
// Valid for: attached flow.
// Source: decambering of strips, linear in the lift.
func (l *lattice) decamber(matrix []float64) {
	n := len(l.panels)
	for i := range l.panels {
		strip := &l.strips[l.panels[i].strip]
		if strip.slopeLoss == 0 {
			continue
		}
		lost := float64(2*strip.slopeLoss) / strip.Chord
		for j := range l.panels {
			if l.panels[j].strip == l.panels[i].strip {
				matrix[i*n+j] -= lost
			}
		}
	}
}

// induced returns the y and z velocity at a point per unit circulation of a horseshoe and of its images at port and below the ground.
func (l *lattice) induced(p *panel, place point, core, image float64) (y, z float64) {
	y, z = p.velocity(place, core)
	if !l.strips[p.strip].alone {
		my, mz := p.velocity(point{place.x, -place.y, place.z}, core)
		y, z = y-float64(image*my), z+float64(image*mz)
	}
	if l.ground > 0 {
		gy, gz := l.belowGround(p, place, image)
		y, z = y+gy, z-gz
	}
	return y, z
}

// belowGround returns the velocity at the mirror point below the ground; the image's own velocity there has the opposite z.
//
// Formula: v_image(P) = R v(R P); where R turns z into -2 h - z for places and w into -w for velocities, so that nothing passes the ground.
// Valid for: level ground, the wake along x.
// Source: method of images.
func (l *lattice) belowGround(p *panel, place point, image float64) (y, z float64) {
	under := point{place.x, place.y, -float64(2*l.ground) - place.z}
	y, z = p.velocity(under, 0)
	if l.strips[p.strip].alone {
		return y, z
	}
	under.y = -under.y
	my, mz := p.velocity(under, 0)
	return y - float64(image*my), z + float64(image*mz)
}

// coreBetween returns the square of the core radius that a strip feels in the trailing legs of another.
//
// Within a surface, and between surfaces that meet edge to edge, the legs run along strip edges and need none. Between other surfaces a leg
// may pass through a control point, where the
// bare vortex would give any velocity whatever; the core spreads it over the wider strip.
func (l *lattice) coreBetween(receiver, source int) float64 {
	r, s := &l.strips[receiver], &l.strips[source]
	if l.joints.joined(r.surface, s.surface) {
		return 0
	}
	core := float64(coreFactor * max(r.Width, s.Width))
	return float64(core * core)
}

// velocity returns the y and z velocity at a point per unit circulation of the horseshoe.
//
// Formula: Biot-Savart law for the bound leg and two legs that run along +x to infinity.
// Valid for: any point; on a leg itself the leg adds nothing.
// Source: Bertin and Smith, Aerodynamics for Engineers, vortex lattice method.
func (p *panel) velocity(at point, core float64) (y, z float64) {
	ax, ay, az := at.x-p.a.x, at.y-p.a.y, at.z-p.a.z
	bx, by, bz := at.x-p.b.x, at.y-p.b.y, at.z-p.b.z
	ra := math.Sqrt(float64(ax*ax) + float64(ay*ay) + float64(az*az))
	rb := math.Sqrt(float64(bx*bx) + float64(by*by) + float64(bz*bz))
	y, z = p.boundVelocity(ax, ay, az, ra, bx, by, bz, rb)
	la := legFactor(ax, float64(ay*ay)+float64(az*az), ra, core-float64(az*az))
	lb := legFactor(bx, float64(by*by)+float64(bz*bz), rb, core-float64(bz*bz))
	y += float64(la*az) - float64(lb*bz)
	z += float64(lb*by) - float64(la*ay)
	return float64(y * inverseFourPi), float64(z * inverseFourPi)
}

// boundVelocity returns y and z of the bound leg's velocity times 4 pi.
//
// Formula: (ra x rb)/|ra x rb|^2 (r0 . (ra/|ra| - rb/|rb|)); where r0 the leg from a to b.
// Valid for: points off the leg's line; nothing on it.
// Source: Biot-Savart law for a straight segment.
func (p *panel) boundVelocity(ax, ay, az, ra, bx, by, bz, rb float64) (y, z float64) {
	cx := float64(ay*bz) - float64(az*by)
	cy := float64(az*bx) - float64(ax*bz)
	cz := float64(ax*by) - float64(ay*bx)
	square := float64(cx*cx) + float64(cy*cy) + float64(cz*cz)
	lx, ly, lz := p.b.x-p.a.x, p.b.y-p.a.y, p.b.z-p.a.z
	length := float64(lx*lx) + float64(ly*ly) + float64(lz*lz)
	if square <= float64(1e-12*float64(length*length)) || ra == 0 || rb == 0 {
		return 0, 0
	}
	dotA := float64(lx*ax) + float64(ly*ay) + float64(lz*az)
	dotB := float64(lx*bx) + float64(ly*by) + float64(lz*bz)
	dot := dotA/ra - dotB/rb
	scale := dot / square
	return float64(scale * cy), float64(scale * cz)
}

// legFactor returns the velocity of a leg that runs along +x, times 4 pi, over the distance vector from its line.
//
// Formula: (1 + dx/r) (h^2 + 3 c^2)/(h^2 + c^2)^2; where h distance from the line, c core radius, less the height over the line: what
// passes well above a leg needs no core. The form keeps the mean velocity of a smooth sheet to second order of the core; without
// core it is (1 + dx/r)/h^2.
// Valid for: any point.
// Source: Biot-Savart law; core by the condition that the removed part has no mean.
func legFactor(dx, square, r, core float64) float64 {
	if r == 0 || square+max(0, core) <= float64(1e-18*float64(r*r)) {
		return 0
	}
	along := 1 + dx/r
	if core <= 0 {
		return along / square
	}
	sum := square + core
	return float64(along*(square+float64(3*core))) / float64(sum*sum)
}

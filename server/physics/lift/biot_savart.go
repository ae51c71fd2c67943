package lift

import "math"

// inverseFourPi is 1/(4 pi).
const inverseFourPi = 1 / (4 * math.Pi)

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

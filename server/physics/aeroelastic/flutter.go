package aeroelastic

import "math"

// PlateFin is a thin solid fin.
type PlateFin struct {
	Root, Tip    float64 // chords, m
	Span         float64 // of the one panel, m
	Thickness    float64 // m
	ShearModulus float64 // Pa
}

// Flutter is a screening result: it can warn, it cannot clear.
type Flutter struct {
	Speed  float64 // true, m/s
	Inside bool    // false for a shape outside that of thin low-aspect plates
}

// ScreeningOnly is what a report says beside Flutter.
const ScreeningOnly = "screening only: it can warn of a thin plate fin, it does not clear a built-up surface or a control"

// shapeFactor of the boundary, 39.3 psi in standard air, over the standard pressure of 14.696 psi.
const shapeFactor = 39.3 / 14.696

// Flutter returns the speed at which a thin plate fin may flutter in air of a pressure (Pa) and speed of sound (m/s). Errors name the impossible field.
//
// Formula: V = a sqrt(G/((39.3/14.696) P A^3 (t + 1)/(2 (A + 2) (h/c)^3))); where A span^2 over area of the panel, t tip over root chord, h thickness, c root
// chord, P pressure.
// Valid for: solid plates of even thickness, A up to 3, h/c up to 0.1, centre of gravity at half the chord. Screening only.
// Source: D. J. Martin, NACA TN 4197, 1958, from memory; strip theory with unsteady air forces flutters at 1.15 to 1.40 times it. Some public calculations halve
// the factor again and come out 1.4 times too fast.
func (f PlateFin) Flutter(pressure, sound float64) (Flutter, error) {
	err := checkPositive(named{"root chord", f.Root}, named{"span", f.Span}, named{"finPlate.thickness", f.Thickness}, named{"shearModulus", f.ShearModulus},
		named{"pressure", pressure}, named{"speed of sound", sound})
	if err != nil {
		return Flutter{}, err
	}
	if err := checkNotNegative(named{"tip chord", f.Tip}); err != nil {
		return Flutter{}, err
	}
	aspect, taper, thickness := 2*f.Span/(f.Root+f.Tip), f.Tip/f.Root, f.Thickness/f.Root
	cubes := float64(aspect*aspect*aspect) / float64(thickness*thickness*thickness)
	stiffness := f.ShearModulus / (shapeFactor * pressure * cubes * (taper + 1) / (2 * (aspect + 2)))
	r := Flutter{Speed: sound * math.Sqrt(stiffness), Inside: aspect <= 3 && thickness <= 0.1 && taper <= 1}
	return r, checkResult(r.Speed)
}

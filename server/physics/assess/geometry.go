package assess

import (
	"errors"
	"math"
	"slices"

	"pitgate/server/physics/footprint"
	"pitgate/server/physics/lift"
	"pitgate/server/physics/planform"
)

// Geometry is what follows from the surfaces, bodies and antennas of a model alone, whatever its mass, the day and the launch: the solved lattice
// and all that is dear to compute. It never changes after Prepare, so that any number of runs may share one at the same time.
type Geometry struct {
	surfaces []planform.Surface
	missing  []string // what the geometry lacks
	main     int      // index of the main wing
	wing     planform.Measures
	lattice  *lift.Solution
	// bodyMoment is the slope of the pitching moment that the bodies add, per rad.
	bodyMoment float64
	lateral    *lift.Lateral  // nil where the lattice has no answer for sideslip
	ground     *lift.Solution // standing on its wheels with the image in the ground; nil without wheels
	antennas   installed
	draws      *footprint.Draws // what losses of link are sampled from, the same for all
}

// GeometryParts is all that Prepare reads of a document.
type GeometryParts struct {
	Surfaces []LiftingSurface `json:"surfaces,omitempty"`
	Bodies   []Body           `json:"bodies,omitempty"`
	Wheels   []Wheel          `json:"wheels,omitempty"`
	Antennas []Antenna        `json:"antennas,omitempty"`
}

// GeometryOf returns the parts of a document that decide its Geometry and nothing beside them: two documents with equal parts have
// equal geometries.
func GeometryOf(in Input) GeometryParts {
	if in.Model == nil {
		return GeometryParts{}
	}
	parts := GeometryParts{Surfaces: slices.Clone(in.Model.Surfaces), Bodies: in.Model.Bodies}
	if in.Model.Gear != nil {
		parts.Wheels = in.Model.Gear.Wheels
	}
	if in.Model.Radio != nil {
		parts.Antennas = in.Model.Radio.Antennas
	}
	for i := range parts.Surfaces {
		parts.Surfaces[i].MassKg = nil
		parts.Surfaces[i].Controls = slices.Clone(parts.Surfaces[i].Controls)
		for k := range parts.Surfaces[i].Controls {
			parts.Surfaces[i].Controls[k].Linkage = nil
		}
	}
	return parts
}

// Prepare computes the geometry of an input's model. A part that is missing is no error: the findings that need it are then unknown.
// An error names a geometry that cannot exist.
func Prepare(in Input) (*Geometry, error) {
	parts, w := GeometryOf(in), &Geometry{main: -1, draws: footprint.NewDraws()}
	w.antennas = install(parts.Antennas)
	for i := range parts.Surfaces {
		if err := w.addSurface(&parts.Surfaces[i], at(surfacesPath, i)); err != nil {
			return nil, err
		}
	}
	w.main = planform.MainWing(w.surfaces)
	if len(w.missing) > 0 || w.main < 0 {
		w.lackWing()
		return w, nil
	}
	if err := planform.CheckAll(w.surfaces); err != nil {
		return nil, err
	}
	return w, w.solveLattice(&parts)
}

// nominalReynolds is the Reynolds number per metre at which the sections' own lift slopes are taken, 1/m: 20 m/s in the standard air at
// sea level. A geometry does not know the day; a slope moves by 1 % when the speed is halved or doubled.
const nominalReynolds = 20 / 1.46e-5

func (w *Geometry) lackWing() {
	if len(w.missing) == 0 {
		w.missing = []string{surfacesPath}
	}
}

func (w *Geometry) solveLattice(parts *GeometryParts) error {
	measures, err := planform.Measure(w.surfaces[w.main])
	if err != nil {
		return err
	}
	w.wing = measures
	reference := lift.Reference{ReynoldsPerMeter: nominalReynolds}
	w.lattice, err = lift.Solve(w.surfaces, reference)
	if errors.Is(err, lift.ErrNothingLifts) {
		w.lackWing()
		return nil
	}
	if err != nil {
		return err
	}
	w.bodyMoment = w.bodies(parts.Bodies)
	w.ground = w.overGround(parts.Wheels, reference)
	w.lateral, err = lift.SolveLateral(w.surfaces, reference)
	return err
}

// overGround solves the lattice with its image in the ground under the wheels; nil without wheels or where a surface would touch the ground.
func (w *Geometry) overGround(wheels []Wheel, reference lift.Reference) *lift.Solution {
	lowest := math.Inf(1)
	for _, wheel := range wheels {
		if wheel.ZMeters != nil {
			lowest = min(lowest, *wheel.ZMeters-float64(orElse(wheel.DiameterMeters, 0)/2))
		}
	}
	if !(lowest < 0) || math.IsInf(lowest, 0) {
		return nil
	}
	reference.GroundHeight = -lowest
	solution, err := lift.Solve(w.surfaces, reference)
	if err != nil {
		return nil
	}
	return solution
}

// downwash returns the slope of the downwash angle at a surface; zero for what takes no part.
func (w *Geometry) downwash(surface string) float64 {
	slope, _, _ := w.lattice.Downwash(surface)
	return slope
}

// sectionAt returns the section of a surface's station inboard of a place along its half span.
func (w *Geometry) sectionAt(surface string, y float64) planform.Section {
	var found planform.Section
	for i := range w.surfaces {
		if w.surfaces[i].Name != surface {
			continue
		}
		for k, station := range w.surfaces[i].Stations {
			if k == 0 || station.Y <= y {
				found = station.Section
			}
		}
		return found
	}
	return found
}

// bodies adds up the moment slopes of all bodies whose stations are whole.
func (w *Geometry) bodies(bodies []Body) float64 {
	root := w.surfaces[w.main].Stations[0]
	sum := 0.0
	for i := range bodies {
		body := &bodies[i]
		sections, z := bodySections(body)
		sides := 1.0
		if yes(body.Mirrored) {
			sides = 2
		}
		sum += float64(sides * w.lattice.BodyMomentSlope(sections, root.X, root.X+root.Chord, z))
	}
	return sum
}

// bodySections returns places and widths of a body and the mean height of its axis.
func bodySections(body *Body) ([]lift.BodySection, float64) {
	var sections []lift.BodySection
	z := 0.0
	for _, station := range body.Stations {
		if station.XMeters == nil || station.WidthMeters == nil {
			continue
		}
		sections = append(sections, lift.BodySection{X: *station.XMeters, Width: *station.WidthMeters})
		z += orElse(station.CenterZMeters, 0) / float64(len(body.Stations))
	}
	return sections, z
}

// addSurface turns one surface of the document into the planform package's, in radians.
func (w *Geometry) addSurface(s *LiftingSurface, name string) error {
	surface := planform.Surface{
		Name: s.Name, Role: role(s.Role), Mirrored: mirrored(s), AllMoving: yes(s.AllMoving),
		Incidence: radians(valueOr(s.IncidenceDegrees, 0)),
	}
	if len(s.Stations) < 2 {
		w.missing = append(w.missing, name+".stations")
		return nil
	}
	section := planform.Section{}
	for i := range s.Stations {
		station := &s.Stations[i]
		if station.ChordMeters == nil || station.LeadingEdgeXMeters == nil || station.LeadingEdgeYMeters == nil {
			w.lackStation(station, at(name+".stations", i))
			continue
		}
		if station.Section != nil {
			var err error
			if section, err = sectionOf(station.Section, at(name+".stations", i)+".section"); err != nil {
				return err
			}
		}
		surface.Stations = append(surface.Stations, planform.Station{
			X: *station.LeadingEdgeXMeters, Y: *station.LeadingEdgeYMeters, Z: orElse(station.LeadingEdgeZMeters, 0),
			Chord: *station.ChordMeters, Twist: radians(orElse(station.TwistDegrees, 0)), Section: section,
		})
	}
	for i := range s.Controls {
		surface.Controls = append(surface.Controls, controlOf(&s.Controls[i]))
	}
	w.surfaces = append(w.surfaces, surface)
	return nil
}

func (w *Geometry) lackStation(s *Station, name string) {
	for _, part := range []struct {
		value *float64
		field string
	}{{s.ChordMeters, "chordMeters"}, {s.LeadingEdgeXMeters, "leadingEdgeXMeters"}, {s.LeadingEdgeYMeters, "leadingEdgeYMeters"}} {
		if part.value == nil {
			w.missing = append(w.missing, name+"."+part.field)
		}
	}
}

// mirrored follows the contract: all but a fin at the plane of symmetry exist on both sides unless the document says otherwise.
func mirrored(s *LiftingSurface) bool {
	if s.Mirrored != nil {
		return *s.Mirrored
	}
	atMiddle := len(s.Stations) > 0 && orElse(s.Stations[0].LeadingEdgeYMeters, 0) == 0
	return s.Role != SurfaceRoleFin || !atMiddle
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

func degrees(radians float64) float64 { return radians * 180 / math.Pi }

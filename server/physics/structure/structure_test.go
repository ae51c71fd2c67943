package structure

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/loads"
)

// near fails when two numbers differ by more than a tolerance.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g within %.2g", what, got, want, tolerance)
	}
}

func material(t testing.TB, words string) Material {
	t.Helper()
	m, found := FindMaterial(words)
	if !found {
		t.Fatalf("no material %q", words)
	}
	return m
}

func mustStation(t testing.TB, at loads.Load, parts ...Part) StationResult {
	t.Helper()
	r, err := AssessStation(Station{Parts: parts}, at, false)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// bent is a load of bending and shear for each unit of load factor.
func bent(moment, shear float64) loads.Load {
	return loads.Load{Bending: loads.Line{PerLoad: moment}, Shear: loads.Line{PerLoad: shear}}
}

// carbonTube is a tube of 25 and 22 mm.
func carbonTube(t testing.TB) Part {
	return Part{Shape: ShapeTube, Material: material(t, "carbon tube"), Outer: 0.025, Wall: 0.0015}
}

func TestTubeByHand(t *testing.T) {
	t.Parallel()
	r := mustStation(t, bent(20, 30), carbonTube(t))
	// 685 MPa pressed (half of 1370), Z 6.1406e-7 m3, so 420.6 N m, 280.4 with the factor, 14.02 g at 20 N m a g.
	near(t, "stands", r.Stands, 685e6*6.140596e-7/1.5/20, 1e-4)
	near(t, "inverted", r.StandsInverted, -r.Stands, 1e-9)
	c := r.Checks[r.Governs]
	if c.Mode != ModeCompression || c.Part != 0 || r.ShearUncarried {
		t.Errorf("governed by %+v", c)
	}
	near(t, "margin where it stands", c.Margin(r.Stands), 0, 1e-9)
	near(t, "margin at half of it", c.Margin(r.Stands/2), 1, 1e-9)
}

// A part twice as large under eight times the moment and four times the shear bears the same stress.
func TestStressScales(t *testing.T) {
	t.Parallel()
	small := []Part{carbonTube(t), {Shape: ShapeCapsAndWeb, Material: material(t, "spruce"), Width: 0.012, Depth: 0.03, Cap: 0.004, Web: 0.002, OffsetZ: 0.004}}
	large := make([]Part, len(small))
	for i, p := range small {
		large[i] = Part{p.Shape, p.Material, 2 * p.Outer, 2 * p.Wall, 2 * p.Width, 2 * p.Depth, 2 * p.Cap, 2 * p.Web, 2 * p.OffsetZ, p.KnockDown}
	}
	a, b := mustStation(t, bent(20, 60), small...), mustStation(t, bent(160, 240), large...)
	near(t, "stands", b.Stands, a.Stands, 1e-9)
	near(t, "stiffness", b.Section.Bending, 16*a.Section.Bending, 1e-6)
	turned := mustStation(t, bent(20, 60), small[1], small[0])
	near(t, "order of parts", turned.Stands, a.Stands, 1e-9)
	half := mustStation(t, bent(40, 120), small...)
	near(t, "twice the load", half.Stands, a.Stands/2, 1e-9)
}

func TestMoreMaterialStandsMore(t *testing.T) {
	t.Parallel()
	last := 0.0
	for _, wall := range []float64{0.0005, 0.001, 0.0015, 0.003, 0.006, 0.0125, 0.02} {
		p := carbonTube(t)
		p.Wall = wall
		r := mustStation(t, bent(20, 30), p)
		if r.Stands < last {
			t.Errorf("wall %v stands %v after %v", wall, r.Stands, last)
		}
		last = r.Stands
	}
	p := carbonTube(t)
	p.Wall = 0.0001
	if r := mustStation(t, bent(20, 30), p); r.Checks[r.Governs].Mode != ModeWallBuckling {
		t.Errorf("a wall of 0.1 mm fails by %v", r.Checks[r.Governs].Mode)
	}
	a := mustStation(t, bent(20, 30), carbonTube(t))
	b := mustStation(t, bent(20, 30), carbonTube(t), Part{Shape: ShapeSolid, Material: material(t, "spruce"), Width: 0.01, Depth: 0.025})
	if b.Section.Bending <= a.Section.Bending || b.Section.Axial <= a.Section.Axial {
		t.Error("a part more must be stiffer")
	}
}

func TestKnockDowns(t *testing.T) {
	t.Parallel()
	m := material(t, "carbon tube")
	usual, err := m.Allow(0)
	if err != nil || usual.Compression != 685e6 || usual.Tension != m.Tension || len(usual.KnockDowns) != 1 {
		t.Errorf("%+v, %v", usual, err)
	}
	own, err := m.Allow(0.8)
	if err != nil || own.Tension != 0.8*m.Tension || own.Compression != 0.8*m.Compression || own.KnockDowns[0].Ratio != 0.8 {
		t.Errorf("%+v, %v", own, err)
	}
	laid, err := material(t, "carbon cloth").Allow(0)
	if err != nil || laid.Tension != 600e6 || laid.Compression != 300e6 {
		t.Errorf("%+v, %v", laid, err)
	}
	for _, ratio := range []float64{-0.1, 1.1, math.NaN()} {
		if _, err := m.Allow(ratio); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), "knockDown") {
			t.Errorf("%v: %v", ratio, err)
		}
	}
	for _, k := range []KnockDown{Hole, Warmth, Age} {
		if !(k.Ratio > 0 && k.Ratio < 1) || k.Name == "" || k.Status == "" {
			t.Errorf("%+v", k)
		}
	}
}

func TestWordsFindTheirMaterial(t *testing.T) {
	t.Parallel()
	for words, name := range map[string]string{
		"Carbon tube 12x10": "pultruded carbon tube or rod", "CFRP, wet laid": "carbon and epoxy, laid along", "birch plywood 3 mm": "birch plywood",
		"liteply": "birch plywood", "birch": "yellow birch, 12 % moisture", "hard balsa": "balsa, 12 % moisture", "EPP foam": "expanded polypropylene foam",
		"white foam": "expanded polystyrene foam, 15 kg/m3", "XPS": "extruded polystyrene foam, 25 kg/m3", "6061-T6": "aluminium alloy 6061-T6",
		"GFRP": "glass and epoxy laminate", "music wire": "spring steel wire", "mild steel": "steel, mild", "M6 nylon": "nylon", "hardwood": "balsa, 12 % moisture",
		"balsa sheet, glassed": "balsa, 12 % moisture", "glassed balsa": "balsa, 12 % moisture", "carbon and aramid cloth": "aramid and epoxy laminate",
		"glass over white foam": "glass and epoxy laminate", "XPS foam": "extruded polystyrene foam, 25 kg/m3", "steel bolt 8.8": "steel bolt, class 8.8",
		"spring steel wire": "spring steel wire", "pultruded carbon tube": "pultruded carbon tube or rod", "plywood": "birch plywood",
	} {
		if m := material(t, words); m.Name != name {
			t.Errorf("%q is %q, want %q", words, m.Name, name)
		}
	}
	if _, found := FindMaterial("unobtainium"); found {
		t.Error("found what is not there")
	}
	for _, m := range Materials() {
		if err := (Part{Shape: ShapeSolid, Material: m, Width: 1, Depth: 1}).check(); err != nil || m.Source == "" || m.Status == "" || m.Density <= 0 {
			t.Errorf("%s: %v", m.Name, err)
		}
	}
}

// A skin that buckles gives its load to the spar; the station stands what the spar stands alone, and says so.
func TestBuckledSkinLeavesTheSpar(t *testing.T) {
	t.Parallel()
	skin := Part{Shape: ShapeSheet, Material: material(t, "balsa"), Width: 0.15, Wall: 0.0015, Depth: 0.03}
	spar := carbonTube(t)
	alone, both := mustStation(t, bent(20, 30), spar), mustStation(t, bent(20, 30), skin, spar)
	near(t, "stands", both.Stands, alone.Stands, 1e-9)
	if !both.SkinBuckles || !(both.SkinBucklesAt > 0 && both.SkinBucklesAt < alone.Stands) || both.Checks[both.Governs].Part != 1 {
		t.Errorf("%+v", both)
	}
	core := Part{Shape: ShapeFoamCore, Material: material(t, "xps"), Width: 0.15, Depth: 0.027}
	held := mustStation(t, bent(2, 3), skin, core)
	bare := mustStation(t, bent(2, 3), skin)
	if held.Stands <= bare.Stands || held.ShearUncarried || !bare.ShearUncarried {
		t.Errorf("on foam %v, without %v; shear %v %v", held.Stands, bare.Stands, held.ShearUncarried, bare.ShearUncarried)
	}
}

func TestThinWebsBuckle(t *testing.T) {
	t.Parallel()
	p := Part{Shape: ShapeCapsAndWeb, Material: material(t, "spruce"), Width: 0.012, Depth: 0.06, Cap: 0.006, Web: 0.0004}
	if r := mustStation(t, bent(1, 200), p); r.Checks[r.Governs].Mode != ModeWebBuckling {
		t.Errorf("fails by %v", r.Checks[r.Governs].Mode)
	}
	p.Web = 0.006
	if r := mustStation(t, bent(1, 200), p); r.Checks[r.Governs].Mode != ModeShear {
		t.Errorf("fails by %v", r.Checks[r.Governs].Mode)
	}
	p.Web = 0
	if r := mustStation(t, bent(1, 200), p); !r.ShearUncarried {
		t.Error("no web carries shear")
	}
}

// A moment at a load factor of 0 shifts what the station stands by its share.
func TestLoadAtZeroShifts(t *testing.T) {
	t.Parallel()
	plain := mustStation(t, bent(20, 30), carbonTube(t))
	shifted := mustStation(t, loads.Load{Bending: loads.Line{AtZero: 40, PerLoad: 20}, Shear: loads.Line{PerLoad: 30}}, carbonTube(t))
	near(t, "stands", shifted.Stands, plain.Stands-2, 1e-9)
	near(t, "inverted", shifted.StandsInverted, plain.StandsInverted-2, 1e-9)
	near(t, "nothing limits", mustStation(t, loads.Load{}, carbonTube(t)).Stands, Unlimited, 0)
	broken := mustStation(t, loads.Load{Bending: loads.Line{AtZero: 1e6}}, carbonTube(t))
	near(t, "broken already", broken.Stands, 0, 0)
}

func TestTheWeakestStationGoverns(t *testing.T) {
	t.Parallel()
	thin := carbonTube(t)
	thin.Wall = 0.0008
	stations := []Station{{0, []Part{carbonTube(t)}}, {0.5, []Part{thin}}, {0.9, []Part{thin}}}
	r, err := Assess(stations, []loads.Load{bent(20, 40), bent(18, 30), bent(2, 5)}, false)
	if err != nil || r.Station != 1 || r.Governing().Mode != ModeCompression || r.Stands != r.Stations[1].Stands {
		t.Errorf("%+v, %v", r, err)
	}
	if _, err := Assess(stations, nil, false); !errors.Is(err, ErrInput) {
		t.Errorf("no loads: %v", err)
	}
	if _, err := Assess(nil, nil, false); !errors.Is(err, ErrInput) {
		t.Errorf("no stations: %v", err)
	}
}

func TestTwistTakesFromTheTube(t *testing.T) {
	t.Parallel()
	at := loads.Load{Shear: loads.Line{PerLoad: 200}, Torsion: loads.Line{PerLoad: -15}, Bending: loads.Line{PerLoad: 1}}
	free, err := AssessStation(Station{Parts: []Part{carbonTube(t)}}, at, false)
	twisted, err2 := AssessStation(Station{Parts: []Part{carbonTube(t)}}, at, true)
	if err != nil || err2 != nil || twisted.Stands >= free.Stands {
		t.Errorf("%v and %v, %v, %v", free.Stands, twisted.Stands, err, err2)
	}
	// 200 N over half of 110.74 mm2 (nearly) and 15 N m over J/(D/2) = 1.22812e-6 m3 against 41.3 MPa.
	near(t, "by hand", twisted.Stands, 41.3e6/1.5/(200/(110.7411e-6/2)+15/1.228119e-6), 0.01)
}

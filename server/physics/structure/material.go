package structure

import (
	"slices"
	"strings"
)

// Status says how well a value is known.
type Status string

// Statuses of values.
const (
	Verified   Status = "verified"    // read in the source
	FromMemory Status = "from memory" // recalled from the source
	Judgement  Status = "judgement"   // the low end of what makers and builders tell
)

// KnockDown is a share of the table's strength that is left.
type KnockDown struct {
	Name   string
	Ratio  float64
	Status Status
}

// Material is the strength and stiffness of a material along its length, at the low end of what its source gives.
type Material struct {
	Name string
	// Modulus and ShearModulus, Pa.
	Modulus, ShearModulus float64
	// Tension, Compression and Shear are stresses that break or buckle the fibre, Pa.
	Tension, Compression, Shear float64
	Density                     float64 // kg/m3
	Source                      string
	Status                      Status
	// Usual knocks off the strength when the builder gives no ratio of his own.
	Usual []KnockDown
	// Foam is true for what carries no bending worth counting and keeps skins from wrinkling.
	Foam  bool
	words []string
}

var (
	pressedFibre = KnockDown{"pressed side of laid fibre, not tested", 0.5, Judgement}
	handLaid     = KnockDown{"laid by hand or of an unknown batch", 0.5, Judgement}
	grain        = KnockDown{"slope of grain up to 1 in 10", 0.8, Judgement}
)

// Knock-downs that a builder may have to add to the usual ones.
var (
	Hole   = KnockDown{"hole or step", 0.6, Judgement}
	Warmth = KnockDown{"epoxy or foam above 50 C", 0.7, Judgement}
	Age    = KnockDown{"age, crash repair or fuel on wood", 0.8, Judgement}
)

// table is searched for every word that stands in a name.
//
// Source: in each row, with what in it is judged. Strengths are the lowest of the editions or makers named.
var table = []Material{
	{Name: "pultruded carbon tube or rod", Modulus: 127e9, ShearModulus: 4.5e9, Tension: 1650e6, Compression: 1370e6, Shear: 41.3e6, Density: 1500,
		Source: "makers' data sheet of pultruded carbon, least values; pressed side by its flexure; shear modulus judged", Status: Verified,
		Usual: []KnockDown{pressedFibre}, words: []string{"pultruded carbon", "carbon tube", "carbon rod", "carbon strip", "carbon pultru"}},
	{Name: "carbon and epoxy, laid along", Modulus: 110e9, ShearModulus: 4.5e9, Tension: 1200e6, Compression: 600e6, Shear: 40e6, Density: 1500,
		Source: "class of laminates of standard modulus laid by hand", Status: Judgement, Usual: []KnockDown{handLaid}, words: []string{"carbon", "cfrp"}},
	{Name: "pultruded glass rod or tube", Modulus: 41e9, ShearModulus: 3.5e9, Tension: 414e6, Compression: 414e6, Shear: 30e6, Density: 1900,
		Source: "makers' data sheets of pultruded E-glass, lowest of their range; shear judged", Status: Verified, words: []string{"pultruded glass", "glass rod", "glass tube"}},
	{Name: "glass and epoxy laminate", Modulus: 20e9, ShearModulus: 3.5e9, Tension: 300e6, Compression: 200e6, Shear: 30e6, Density: 1800,
		Source: "class of glass cloth laminates", Status: Judgement, Usual: []KnockDown{handLaid}, words: []string{"glass", "gfk", "frp"}},
	{Name: "aramid and epoxy laminate", Modulus: 30e9, ShearModulus: 1.8e9, Tension: 450e6, Compression: 130e6, Shear: 20e6, Density: 1350,
		Source: "class of aramid cloth laminates; weak when pressed", Status: Judgement, Usual: []KnockDown{handLaid}, words: []string{"aramid"}},
	{Name: "aluminium alloy 6061-T6", Modulus: 68.3e9, ShearModulus: 26e9, Tension: 241e6, Compression: 241e6, Shear: 186e6, Density: 2700,
		Source: "MIL-HDBK-5H, table 3.6.2, A basis, yield", Status: FromMemory, words: []string{"6061", "aluminium", "aluminum", "dural", "alu"}},
	{Name: "steel bolt, class 8.8", Modulus: 205e9, ShearModulus: 79e9, Tension: 580e6, Compression: 580e6, Shear: 335e6, Density: 7850,
		Source: "ISO 898-1, proof stress of class 8.8; shear 0.58 of it", Status: FromMemory, words: []string{"8.8", "steel bolt", "steel screw"}},
	{Name: "steel, mild", Modulus: 205e9, ShearModulus: 79e9, Tension: 235e6, Compression: 235e6, Shear: 135e6, Density: 7850,
		Source: "EN 10025, S235, yield", Status: FromMemory, words: []string{"mild steel"}},
	{Name: "spring steel wire", Modulus: 205e9, ShearModulus: 79e9, Tension: 900e6, Compression: 900e6, Shear: 520e6, Density: 7850,
		Source: "EN 10270-1, drawn wire, low end", Status: Judgement, words: []string{"steel", "piano wire", "music wire"}},
	{Name: "birch plywood", Modulus: 7e9, ShearModulus: 0.65e9, Tension: 40e6, Compression: 25e6, Shear: 9e6, Density: 680,
		Source: "half of the plies along the load, Wood Handbook for birch", Status: Judgement, words: []string{"ply", "plywood"}},
	{Name: "Sitka spruce, 12 % moisture", Modulus: 9.9e9, ShearModulus: 0.6e9, Tension: 65e6, Compression: 35.7e6, Shear: 7.9e6, Density: 360,
		Source: "Wood Handbook; ANC-18; the lower of their editions", Status: FromMemory, Usual: []KnockDown{grain}, words: []string{"spruce"}},
	{Name: "pine, straight grain", Modulus: 8.5e9, ShearModulus: 0.6e9, Tension: 55e6, Compression: 30e6, Shear: 6e6, Density: 400,
		Source: "class of softwoods in the Wood Handbook, low end", Status: Judgement, Usual: []KnockDown{grain}, words: []string{"pine"}},
	{Name: "yellow birch, 12 % moisture", Modulus: 13.9e9, ShearModulus: 0.9e9, Tension: 56.3e6, Compression: 56.3e6, Shear: 13e6, Density: 620,
		Source: "Wood Handbook; tension taken no higher than compression", Status: Verified, Usual: []KnockDown{grain}, words: []string{"birch", "beech"}},
	{Name: "basswood or lime, 12 % moisture", Modulus: 10.1e9, ShearModulus: 0.4e9, Tension: 32.6e6, Compression: 32.6e6, Shear: 6.8e6, Density: 370,
		Source: "Wood Handbook; tension taken no higher than compression", Status: Verified, Usual: []KnockDown{grain}, words: []string{"basswood", "lime", "obechi"}},
	{Name: "balsa, 12 % moisture", Modulus: 3.4e9, ShearModulus: 0.15e9, Tension: 14.9e6, Compression: 14.9e6, Shear: 2e6, Density: 160,
		Source: "Wood Handbook; tension taken no higher than compression; shear judged", Status: Verified, Usual: []KnockDown{grain}, words: []string{"balsa", "wood"}},
	{Name: "nylon", Modulus: 1.5e9, ShearModulus: 0.5e9, Tension: 45e6, Compression: 45e6, Shear: 35e6, Density: 1140,
		Source: "class of conditioned polyamide 6.6", Status: Judgement, words: []string{"nylon", "polyamide"}},
	{Name: "expanded polypropylene foam", Modulus: 1e6, ShearModulus: 0.4e6, Tension: 250e3, Compression: 90e3, Shear: 100e3, Density: 20,
		Source: "foam makers' sheets, low end", Status: FromMemory, Foam: true, words: []string{"epp", "epp foam", "polypropylene", "polypropylene foam"}},
	{Name: "extruded polystyrene foam, 25 kg/m3", Modulus: 10e6, ShearModulus: 3e6, Tension: 173e3, Compression: 173e3, Shear: 140e3, Density: 25,
		Source: "ASTM C578 type IV, compression; stiffness and shear judged", Status: Verified, Foam: true, words: []string{"xps", "xps foam", "extruded polystyrene", "extruded polystyrene foam", "blue foam"}},
	{Name: "expanded polystyrene foam, 15 kg/m3", Modulus: 1.24e6, ShearModulus: 1.93e6, Tension: 110e3, Compression: 69e3, Shear: 124e3, Density: 15,
		Source: "ASTM C578 type I, compression; foam makers' typical values, low end", Status: Verified, Foam: true, words: []string{"eps", "polystyrene", "foam"}},
}

// Materials returns the table, in the order of search.
func Materials() []Material { return slices.Clone(table) }

// FindMaterial returns the material that a builder's words name; false when none of the table's words stands in them. Where they name several, "balsa
// sheet, glassed", the one that the least pressure breaks counts; a foam counts only where nothing else is named, since what it fills carries the load.
//
// Valid for: the words of the table; what is not named closer (carbon, glass, foam) is taken for the weaker kind.
// Source: each material names its own.
func FindMaterial(name string) (Material, bool) {
	var found Material
	known := false
	for _, m := range namedIn(strings.ToLower(name)) {
		if !known || found.Foam && !m.Foam || found.Foam == m.Foam && m.Compression < found.Compression {
			found, known = m, true
		}
	}
	return found, known
}

// wordAt is a word of a material where it stands in a name.
type wordAt struct {
	material   int // place in the table
	start, end int
}

// covers reports whether another word lies inside this longer one, as "steel" in "mild steel"; of two alike the one higher in the table counts.
func (w wordAt) covers(other wordAt) bool {
	inside := w.start <= other.start && other.end <= w.end
	return inside && (w.end-w.start > other.end-other.start || w.material < other.material)
}

// namedIn returns the materials whose words stand in a name in small letters, each word only where no longer one says it closer.
func namedIn(lower string) []Material {
	var words []wordAt
	for i, m := range table {
		for _, word := range m.words {
			if start := strings.Index(lower, word); start >= 0 {
				words = append(words, wordAt{i, start, start + len(word)})
			}
		}
	}
	var out []Material
	for _, w := range words {
		if !slices.ContainsFunc(words, func(other wordAt) bool { return other.covers(w) }) {
			out = append(out, table[w.material])
		}
	}
	return out
}

// Allowable is what a material may bear in a part, with what was knocked off.
type Allowable struct {
	Tension, Compression, Shear float64 // Pa
	KnockDowns                  []KnockDown
}

// Allow returns the allowable stresses: of the table times the builder's own ratio, or times the material's usual knock-downs when the ratio is 0 (not given).
// The usual knock-down of the pressed side does not weaken tension and shear. Errors name the impossible field.
//
// Valid for: ratios above 0 up to 1.
// Source: Material and KnockDown.
func (m Material) Allow(ratio float64) (Allowable, error) {
	a := Allowable{Tension: m.Tension, Compression: m.Compression, Shear: m.Shear}
	if err := checkNotNegative(named{"knockDown", ratio}, named{"1 - knockDown", 1 - ratio}); err != nil {
		return Allowable{}, err
	}
	if ratio > 0 {
		a.KnockDowns = []KnockDown{{"builder's own", ratio, Judgement}}
		a.Tension, a.Compression, a.Shear = float64(a.Tension*ratio), float64(a.Compression*ratio), float64(a.Shear*ratio)
		return a, nil
	}
	a.KnockDowns = m.Usual
	for _, k := range m.Usual {
		a.Compression *= k.Ratio
		if k != pressedFibre {
			a.Tension *= k.Ratio
			a.Shear *= k.Ratio
		}
	}
	return a, nil
}

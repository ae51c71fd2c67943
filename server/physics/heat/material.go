package heat

import "strings"

// Status says how well a value is known.
type Status string

// Statuses of values.
const (
	Verified   Status = "verified"        // read in the source
	FromMemory Status = "from memory"     // recalled from the source
	Practice   Status = "common practice" // told by builders, no source
)

// Material is what a part stands.
type Material struct {
	Name string
	// Service is the temperature at which it stays in shape under light load for as long as it likes, K.
	Service float64
	// Short is what it stands for a minute or unloaded, K.
	Short  float64
	Source string
	Status Status
	words  []string
}

// table is searched from the top: the first with a word that stands in the name counts. Where sources differ the lower value is taken.
//
// Source: in each row.
var table = []Material{
	{"expanded polypropylene foam", 90 + Celsius, 100 + Celsius, "long-term limit of polypropylene 100 C (polymer table; Plastics Engineering table 1.8); foam a tenth under", Verified, []string{"epp", "expanded polypropylene"}},
	{"extruded polystyrene foam", 75 + Celsius, 85 + Celsius, "insulation makers: 75 C sustained, a third of the strength lost at 85 C", Verified, []string{"xps", "extruded polystyrene", "depron"}},
	{"expanded polystyrene foam", 75 + Celsius, 85 + Celsius, "insulation makers: 70 to 80 C continuous, 85 C unloaded, softens about 100 C", Verified, []string{"eps", "polystyrene", "styrofoam", "foam"}},
	{"expanded PVC board", 55 + Celsius, 60 + Celsius, "museum table of sheet plastics: 55 to 60 C", Verified, []string{"expanded pvc", "pvc board"}},
	{"cross-linked PVC core", 70 + Celsius, 80 + Celsius, "core makers' class, 70 to 80 C; 80 C in processing", Practice, []string{"pvc core", "cross-linked"}},
	{"rigid PVC", 50 + Celsius, 60 + Celsius, "Plastics Engineering table 1.8: 50 C; polymer table: 60 C", Verified, []string{"pvc"}},
	{"printed polylactide", 50 + Celsius, 55 + Celsius, "glass transition 59 C, heat distortion 59 C", Verified, []string{"pla", "polylactide"}},
	{"printed PETG", 65 + Celsius, 70 + Celsius, "polymer table: 70 C; heat distortion 76 C", Verified, []string{"petg", "pet-g"}},
	{"ABS", 70 + Celsius, 80 + Celsius, "Plastics Engineering table 1.8: 70 C; makers' table: 60 to 80 C", Verified, []string{"abs"}},
	{"adhesive tape, acrylic", 60 + Celsius, 100 + Celsius, "adhesive makers: flows above 60 C under load; handbook range to 121 C", Verified, []string{"tape", "decal", "sticker"}},
	{"acrylic sheet", 50 + Celsius, 80 + Celsius, "Plastics Engineering table 1.8: 50 C; polymer table: 90 C", Verified, []string{"acrylic", "pmma", "canopy"}},
	{"polycarbonate", 115 + Celsius, 125 + Celsius, "Plastics Engineering table 1.8: 125 C", Verified, []string{"polycarbonate"}},
	{"nylon", 80 + Celsius, 90 + Celsius, "Plastics Engineering table 1.8: 90 C", Verified, []string{"nylon", "polyamide"}},
	{"iron-on covering film", 90 + Celsius, 120 + Celsius, "ironing temperatures of covering films: adhesive tacks at 90 C and lets go there; film shrinks from 100 to 150 C", Verified, []string{"film", "covering", "iron-on"}},
	{"hot-melt glue", 50 + Celsius, 60 + Celsius, "adhesive makers: softens from 40 to 100 C by grade; fails below its ring-and-ball point", Verified, []string{"hot melt", "hot-melt", "hot glue"}},
	{"vinyl ester laminate, room cure", 50 + Celsius, 60 + Celsius, "glass transition of neat resin 60 C after room cure (Herzog and others 2005)", Verified, []string{"vinyl ester", "vinylester"}},
	{"epoxy laminate, post-cured", 60 + Celsius, 75 + Celsius, "data sheet: glass transition 73 C after 16 h at 50 C; limit 10 to 20 K below", Verified, []string{"post-cured", "postcured", "tempered"}},
	{"epoxy laminate, room cure", 45 + Celsius, 58 + Celsius, "data sheet: glass transition 58 C after 28 d at 21 C; limit 10 to 20 K below", Verified, []string{"epoxy", "glass", "carbon", "gfrp", "cfrp", "aramid", "laminate", "fibre", "fiber", "composite"}},
	{"balsa, spruce and plywood", 100 + Celsius, 150 + Celsius, "tests of wood: strength lost from 120 C in weeks; long contact at 121 to 149 C has started fires", Verified, []string{"balsa", "spruce", "plywood", "ply", "wood", "wooden", "hardwood", "pine", "birch"}},
	{"fabric, doped", 90 + Celsius, 120 + Celsius, "heat-shrunk polyester fabric: shrinks from about 100 C", Practice, []string{"fabric", "cloth", "silk", "tissue"}},
	{"silicone", 200 + Celsius, 230 + Celsius, "class of silicone rubber", FromMemory, []string{"silicone"}},
	{"PTFE", 250 + Celsius, 260 + Celsius, "Plastics Engineering table 1.8: 250 C", Verified, []string{"ptfe"}},
	{"aluminium alloy", 150 + Celsius, 200 + Celsius, "MIL-HDBK-5, loss of strength of heat-treated alloys from 150 C", FromMemory, []string{"alumin", "dural"}},
	{"stainless steel", 800 + Celsius, 850 + Celsius, "Plastics Engineering table 1.8: 800 C", Verified, []string{"stainless", "steel", "titanium", "inconel", "nickel"}},
	{"rubber tyre or tube", 80 + Celsius, 100 + Celsius, "class of natural and nitrile rubber", FromMemory, []string{"rubber", "tyre", "tire", "tube", "fuel line"}},
	{"servo, receiver, battery or wiring", 60 + Celsius, 70 + Celsius, "usual limits of hobby electronics and packs, 50 to 70 C", Practice, []string{"servo", "receiver", "battery", "pack", "wire", "wiring", "electron"}},
}

// Unknown is the material of a part whose name says nothing: the weakest common one.
var Unknown = Material{"unknown material", 45 + Celsius, 55 + Celsius, "lowest of the common building materials, the laminate cured at room temperature", Practice, nil}

// Materials returns the table.
func Materials() []Material { return append([]Material(nil), table...) }

// shortWord is the length up to which a word of the table must stand alone: "pla" is not found in "plank".
const shortWord = 4

// Named returns the material whose usual words stand in a name, in any case of letters. Other names give Unknown and false.
func Named(name string) (Material, bool) {
	low := spaced(name)
	for _, material := range table {
		for _, word := range material.words {
			if standsIn(low, word) {
				return material, true
			}
		}
	}
	return Unknown, false
}

// spaced returns a name in small letters with one space for each other sign, and one at either end.
func spaced(name string) string {
	return " " + strings.Map(func(r rune) rune {
		if (r >= 'a' && r <= 'z') || (r >= '0' && r <= '9') {
			return r
		}
		return ' '
	}, strings.ToLower(name)) + " "
}

// standsIn reports whether a word begins in a spaced name, or stands in it alone when it is short.
func standsIn(spacedName, word string) bool {
	if len(word) <= shortWord {
		return strings.Contains(spacedName, spaced(word))
	}
	return strings.Contains(spacedName, strings.TrimSuffix(spaced(word), " "))
}

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

// row makes a line of the table from degrees Celsius.
func row(name string, service, short float64, status Status, source string, words ...string) Material {
	return Material{Name: name, Service: service + Celsius, Short: short + Celsius, Status: status, Source: source, words: words}
}

// table is searched from the top: the first with a word that stands in the name counts. Where sources differ the lower value is taken.
//
// Source: in each row.
var table = []Material{
	row("expanded polypropylene foam", 90, 100, Verified, "long-term limit of polypropylene 100 C (polymer table; Plastics Engineering table 1.8); foam a tenth under", "epp", "expanded polypropylene"),
	row("extruded polystyrene foam", 75, 85, Verified, "insulation makers: 75 C sustained, a third of the strength lost at 85 C", "xps", "extruded polystyrene", "depron"),
	row("expanded polystyrene foam", 75, 85, Verified, "insulation makers: 70 to 80 C continuous, 85 C unloaded, softens about 100 C", "eps", "polystyrene", "styrofoam", "foam"),
	row("expanded PVC board", 55, 60, Verified, "museum table of sheet plastics: 55 to 60 C", "expanded pvc", "pvc board"),
	row("cross-linked PVC core", 70, 80, Practice, "core makers' class, 70 to 80 C; 80 C in processing", "pvc core", "cross-linked"),
	row("rigid PVC", 50, 60, Verified, "Plastics Engineering table 1.8: 50 C; polymer table: 60 C", "pvc"),
	row("printed polylactide", 50, 55, Verified, "glass transition 59 C, heat distortion 59 C", "pla", "polylactide"),
	row("printed PETG", 65, 70, Verified, "polymer table: 70 C; heat distortion 76 C", "petg", "pet-g"),
	row("ABS", 70, 80, Verified, "Plastics Engineering table 1.8: 70 C; makers' table: 60 to 80 C", "abs"),
	row("adhesive tape, acrylic", 60, 100, Verified, "adhesive makers: flows above 60 C under load; handbook range to 121 C", "tape", "decal", "sticker"),
	row("acrylic sheet", 50, 80, Verified, "Plastics Engineering table 1.8: 50 C; polymer table: 90 C", "acrylic", "pmma", "canopy"),
	row("polycarbonate", 115, 125, Verified, "Plastics Engineering table 1.8: 125 C", "polycarbonate"),
	row("nylon", 80, 90, Verified, "Plastics Engineering table 1.8: 90 C", "nylon", "polyamide"),
	row("iron-on covering film", 90, 120, Verified, "ironing temperatures of covering films: adhesive tacks at 90 C and lets go there; film shrinks from 100 to 150 C", "film", "covering", "iron-on"),
	row("hot-melt glue", 50, 60, Verified, "adhesive makers: softens from 40 to 100 C by grade; fails below its ring-and-ball point", "hot melt", "hot-melt", "hot glue"),
	row("vinyl ester laminate, room cure", 50, 60, Verified, "glass transition of neat resin 60 C after room cure (Herzog and others 2005)", "vinyl ester", "vinylester"),
	row("epoxy laminate, post-cured", 60, 75, Verified, "data sheet: glass transition 73 C after 16 h at 50 C; limit 10 to 20 K below", "post-cured", "postcured", "tempered"),
	row("epoxy laminate, room cure", 45, 58, Verified, "data sheet: glass transition 58 C after 28 d at 21 C; limit 10 to 20 K below", "epoxy", "glass", "carbon", "gfrp", "cfrp", "aramid", "laminate", "fibre", "fiber", "composite"),
	row("balsa, spruce and plywood", 100, 150, Verified, "tests of wood: strength lost from 120 C in weeks; long contact at 121 to 149 C has started fires", "balsa", "spruce", "plywood", "ply", "wood", "wooden", "hardwood", "pine", "birch"),
	row("fabric, doped", 90, 120, Practice, "heat-shrunk polyester fabric: shrinks from about 100 C", "fabric", "cloth", "silk", "tissue"),
	row("silicone", 200, 230, FromMemory, "class of silicone rubber", "silicone"),
	row("PTFE", 250, 260, Verified, "Plastics Engineering table 1.8: 250 C", "ptfe"),
	row("aluminium alloy", 150, 200, FromMemory, "MIL-HDBK-5, loss of strength of heat-treated alloys from 150 C", "alumin", "dural"),
	row("stainless steel", 800, 850, Verified, "Plastics Engineering table 1.8: 800 C", "stainless", "steel", "titanium", "inconel", "nickel"),
	row("rubber tyre or tube", 80, 100, FromMemory, "class of natural and nitrile rubber", "rubber", "tyre", "tire", "tube", "fuel line"),
	row("servo, receiver, battery or wiring", 60, 70, Practice, "usual limits of hobby electronics and packs, 50 to 70 C", "servo", "receiver", "battery", "pack", "wire", "wiring", "electron"),
}

// Unknown is the material of a part whose name says nothing: the weakest common one.
var Unknown = row("unknown material", 45, 55, Practice, "lowest of the common building materials, the laminate cured at room temperature")

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

package assess

// Structure: what carries the loads.
type Structure struct {
	WingSpar []SparStation `json:"wingSpar,omitempty" range:"max_items=24"`
	Joiner   *Joiner       `json:"joiner,omitempty"`
	Boom     []SparPart    `json:"boom,omitempty" range:"max_items=8"`
	// Skin that carries torsion at the root: closed box of these measures.
	TorsionBox *TorsionBox `json:"torsionBox,omitempty"`
	// Load factor the builder designed for.
	DesignLoadFactor *float64 `json:"designLoadFactor,omitempty" range:"gt=0,lte=40"`
	// Builder's own sandbag test: load factor held without damage.
	ProofLoadFactor *Quantity `json:"proofLoadFactor,omitempty" range:"gte=0.1,lte=40"`
	// Fin plate for the flutter boundary.
	FinPlate *FinPlate `json:"finPlate,omitempty"`
	// Wing seat bolts or dowels.
	WingBoltDiameterMeters *Quantity `json:"wingBoltDiameterMeters,omitempty" range:"gte=0.0005,lte=0.05"`
	WingBoltCount          *int32    `json:"wingBoltCount,omitempty" range:"gte=0,lte=12"`
	// Twisting moment at the tip of one panel over the twist it causes there, root held (a bar across the tip, a weight at its end).
	WingTwistStiffnessNewtonMetersPerRadian *Quantity `json:"wingTwistStiffnessNewtonMetersPerRadian,omitempty" range:"gte=0.001,lte=1000000"`
	WingBoltMaterial                        string    `json:"wingBoltMaterial,omitempty" range:"max_len=60"`
	// Distance between the front and the rear fastening of the wing along the model.
	WingBoltLeverMeters *Quantity `json:"wingBoltLeverMeters,omitempty" range:"gte=0.001,lte=3"`
	// Tail booms carry the parts under "boom" each. Absent: one.
	BoomCount *int32 `json:"boomCount,omitempty" range:"gte=1,lte=4"`
	// Free length of a boom, from its last fastening to the tail surface.
	BoomLengthMeters *Quantity `json:"boomLengthMeters,omitempty" range:"gte=0.01,lte=5"`
	// Spar of the canard, as that of the wing.
	CanardSpar []SparStation `json:"canardSpar,omitempty" range:"max_items=24"`
	// Spar of the tailplane, as that of the wing.
	TailplaneSpar []SparStation `json:"tailplaneSpar,omitempty" range:"max_items=24"`
	// True when the wing is one piece without a joiner.
	OnePieceWing *bool `json:"onePieceWing,omitempty"`
}

// SparStation: the spar at one place along the half span.
type SparStation struct {
	// Fraction of the half span.
	SpanRatio *float64   `json:"spanRatio,omitempty" range:"gte=0,lte=1"`
	Parts     []SparPart `json:"parts,omitempty" range:"max_items=12"`
}

// SparShape says: shape of a spar part.
type SparShape string

// Values of SparShape; the empty string means that nothing was said.
const (
	SparShapeTube       SparShape = "SPAR_SHAPE_TUBE"
	SparShapeCapsAndWeb SparShape = "SPAR_SHAPE_CAPS_AND_WEB"
	SparShapeSolid      SparShape = "SPAR_SHAPE_SOLID"
	SparShapeSheet      SparShape = "SPAR_SHAPE_SHEET"
	SparShapeFoamCore   SparShape = "SPAR_SHAPE_FOAM_CORE"
)

// Names lists every value that may stand in a document.
func (SparShape) Names() []string {
	return []string{string(SparShapeTube), string(SparShapeCapsAndWeb), string(SparShapeSolid), string(SparShapeSheet), string(SparShapeFoamCore)}
}

// SparPart: one part of a stacked spar.
type SparPart struct {
	Shape               SparShape `json:"shape,omitempty"`
	Material            string    `json:"material,omitempty" range:"max_len=60"`
	OuterDiameterMeters *Quantity `json:"outerDiameterMeters,omitempty" range:"gte=0.0005,lte=0.5"`
	WallThicknessMeters *Quantity `json:"wallThicknessMeters,omitempty" range:"gte=0.00005,lte=0.1"`
	WidthMeters         *Quantity `json:"widthMeters,omitempty" range:"gte=0.0005,lte=1"`
	DepthMeters         *Quantity `json:"depthMeters,omitempty" range:"gte=0.0005,lte=0.5"`
	CapThicknessMeters  *Quantity `json:"capThicknessMeters,omitempty" range:"gte=0.00005,lte=0.1"`
	WebThicknessMeters  *Quantity `json:"webThicknessMeters,omitempty" range:"gte=0,lte=0.1"`
	// Height of the part's own centre above the spar's middle.
	OffsetZMeters *float64 `json:"offsetZMeters,omitempty" range:"gte=-1,lte=1"`
	// Fraction of the table's strength left: holes, hand lay-up, age.
	KnockDownRatio *float64 `json:"knockDownRatio,omitempty" range:"gt=0,lte=1"`
}

// Joiner: what joins the wing panels.
type Joiner struct {
	Part *SparPart `json:"part,omitempty"`
	// Length inside one panel.
	EngagedLengthMeters *Quantity `json:"engagedLengthMeters,omitempty" range:"gte=0.001,lte=2"`
}

// TorsionBox: closed box that carries torsion.
type TorsionBox struct {
	WidthMeters         *Quantity `json:"widthMeters,omitempty" range:"gte=0.001,lte=2"`
	DepthMeters         *Quantity `json:"depthMeters,omitempty" range:"gte=0.001,lte=1"`
	SkinThicknessMeters *Quantity `json:"skinThicknessMeters,omitempty" range:"gte=0.00002,lte=0.05"`
	Material            string    `json:"material,omitempty" range:"max_len=60"`
	// Where the elastic axis lies behind the leading edge, over chord.
	ElasticAxisRatio *float64 `json:"elasticAxisRatio,omitempty" range:"gt=0,lte=1"`
}

// FinPlate: a solid plate fin.
type FinPlate struct {
	ThicknessMeters *Quantity `json:"thicknessMeters,omitempty" range:"gte=0.0002,lte=0.1"`
	Material        string    `json:"material,omitempty" range:"max_len=60"`
}

package assess

// FieldDescription: a flying site in metres from its datum: x east, y north, z up.
type FieldDescription struct {
	DisplayName string `json:"displayName,omitempty" range:"max_len=120"`
	// Datum on the WGS-84 ellipsoid.
	DatumLatitudeDegrees  *float64 `json:"datumLatitudeDegrees,omitempty" range:"gte=-90,lte=90"`
	DatumLongitudeDegrees *float64 `json:"datumLongitudeDegrees,omitempty" range:"gte=-180,lte=180"`
	// Height of the datum above mean sea level.
	ElevationMeters *Quantity `json:"elevationMeters,omitempty" range:"gte=-500,lte=6000"`
	// Where models may fly.
	FlyingArea   *Polygon     `json:"flyingArea,omitempty"`
	Strips       []Strip      `json:"strips,omitempty" range:"max_items=12"`
	LaunchSpots  []LaunchSpot `json:"launchSpots,omitempty" range:"max_items=24"`
	Obstacles    []Obstacle   `json:"obstacles,omitempty" range:"max_items=200"`
	KeepOuts     []KeepOut    `json:"keepOuts,omitempty" range:"max_items=60"`
	PeopleLines  []NamedLine  `json:"peopleLines,omitempty" range:"max_items=12"`
	LandingAreas []NamedArea  `json:"landingAreas,omitempty" range:"max_items=24"`
	Pits         []NamedArea  `json:"pits,omitempty" range:"max_items=12"`
	// Where the pilot stands.
	PilotPosition *Point `json:"pilotPosition,omitempty"`
	// Ground up wind of the field, for the wind profile.
	Roughness RoughnessClass `json:"roughness,omitempty"`
	// Height limit above the ground: airspace or owner.
	HeightLimitMeters *Quantity `json:"heightLimitMeters,omitempty" range:"gte=1,lte=2000"`
	// Roads and paths that the public uses.
	Roads       []NamedLine `json:"roads,omitempty" range:"max_items=40"`
	Permission  *Permission `json:"permission,omitempty"`
	KeeperNotes string      `json:"keeperNotes,omitempty" range:"max_len=4000"`
	Parking     []NamedArea `json:"parking,omitempty" range:"max_items=12"`
	// How and when the field was surveyed, and how far its places may be off.
	Survey *Survey `json:"survey,omitempty"`
}

// Survey: how a field was surveyed.
type Survey struct {
	Method SurveyMethod `json:"method,omitempty"`
	// RFC 3339 date.
	Date       string `json:"date,omitempty" pattern:"^([0-9]{4}-[0-9]{2}-[0-9]{2})?$"`
	SurveyedBy string `json:"surveyedBy,omitempty" range:"max_len=120"`
	// How far a surveyed place may be off, one standard deviation.
	PositionSpreadMeters *float64 `json:"positionSpreadMeters,omitempty" range:"gte=0,lte=100"`
}

// SurveyMethod says: what a field was surveyed with.
type SurveyMethod string

// Values of SurveyMethod; the empty string means that nothing was said.
const (
	SurveyMethodTape SurveyMethod = "SURVEY_METHOD_TAPE"
	// Walked with a phone.
	SurveyMethodWalked     SurveyMethod = "SURVEY_METHOD_WALKED"
	SurveyMethodMap        SurveyMethod = "SURVEY_METHOD_MAP"
	SurveyMethodInstrument SurveyMethod = "SURVEY_METHOD_INSTRUMENT"
)

// Names lists every value that may stand in a document.
func (SurveyMethod) Names() []string {
	return []string{string(SurveyMethodTape), string(SurveyMethodWalked), string(SurveyMethodMap), string(SurveyMethodInstrument)}
}

// Point: a point on the field.
type Point struct {
	XMeters *float64 `json:"xMeters,omitempty" range:"gte=-20000,lte=20000"`
	YMeters *float64 `json:"yMeters,omitempty" range:"gte=-20000,lte=20000"`
	// Ground height above the datum; absent means level with it.
	ZMeters *float64 `json:"zMeters,omitempty" range:"gte=-1000,lte=1000"`
}

// Polygon: a closed outline; the last corner joins the first.
type Polygon struct {
	Corners []Point `json:"corners,omitempty" range:"max_items=400"`
}

// NamedArea: an outline with a name.
type NamedArea struct {
	Name string   `json:"name,omitempty" range:"min_len=1,max_len=80"`
	Area *Polygon `json:"area,omitempty"`
	// What a model lands on there.
	Surface Surface `json:"surface,omitempty"`
}

// NamedLine: a line with a name.
type NamedLine struct {
	Name   string  `json:"name,omitempty" range:"min_len=1,max_len=80"`
	Points []Point `json:"points,omitempty" range:"max_items=200"`
}

// Surface says: surface of a strip.
type Surface string

// Values of Surface; the empty string means that nothing was said.
const (
	SurfacePaved      Surface = "SURFACE_PAVED"
	SurfaceHardTurf   Surface = "SURFACE_HARD_TURF"
	SurfaceShortGrass Surface = "SURFACE_SHORT_GRASS"
	SurfaceLongGrass  Surface = "SURFACE_LONG_GRASS"
	SurfaceFirmDirt   Surface = "SURFACE_FIRM_DIRT"
	SurfaceSoftGround Surface = "SURFACE_SOFT_GROUND"
)

// Names lists every value that may stand in a document.
func (Surface) Names() []string {
	return []string{string(SurfacePaved), string(SurfaceHardTurf), string(SurfaceShortGrass), string(SurfaceLongGrass), string(SurfaceFirmDirt), string(SurfaceSoftGround)}
}

// Strip: a strip between two thresholds.
type Strip struct {
	// Name, usually the two directions: "06/24".
	Name string `json:"name,omitempty" range:"min_len=1,max_len=40"`
	// First threshold: the launch along the first direction starts here.
	Start       *Point    `json:"start,omitempty"`
	End         *Point    `json:"end,omitempty"`
	WidthMeters *Quantity `json:"widthMeters,omitempty" range:"gte=0.5,lte=500"`
	Surface     Surface   `json:"surface,omitempty"`
	// Ground height along the strip from its start, relative to the start.
	GroundProfile []ProfilePoint `json:"groundProfile,omitempty" range:"max_items=200"`
}

// LaunchSpot: a place from which models are launched without a strip.
type LaunchSpot struct {
	Name     string `json:"name,omitempty" range:"min_len=1,max_len=80"`
	Position *Point `json:"position,omitempty"`
	// Direction of launch, degrees true.
	HeadingDegrees *float64 `json:"headingDegrees,omitempty" range:"gte=0,lt=360"`
	// Ground height along the launch direction, relative to the spot.
	GroundProfile []ProfilePoint `json:"groundProfile,omitempty" range:"max_items=200"`
}

// ProfilePoint: ground height at a distance along the launch.
type ProfilePoint struct {
	DistanceMeters *float64 `json:"distanceMeters,omitempty" range:"gte=-1000,lte=5000"`
	HeightMeters   *float64 `json:"heightMeters,omitempty" range:"gte=-500,lte=500"`
}

// ObstacleKind says: kind of obstacle.
type ObstacleKind string

// Values of ObstacleKind; the empty string means that nothing was said.
const (
	ObstacleKindHedge    ObstacleKind = "OBSTACLE_KIND_HEDGE"
	ObstacleKindWall     ObstacleKind = "OBSTACLE_KIND_WALL"
	ObstacleKindTree     ObstacleKind = "OBSTACLE_KIND_TREE"
	ObstacleKindBuilding ObstacleKind = "OBSTACLE_KIND_BUILDING"
	ObstacleKindWire     ObstacleKind = "OBSTACLE_KIND_WIRE"
	ObstacleKindBank     ObstacleKind = "OBSTACLE_KIND_BANK"
	ObstacleKindMast     ObstacleKind = "OBSTACLE_KIND_MAST"
	ObstacleKindFence    ObstacleKind = "OBSTACLE_KIND_FENCE"
)

// Names lists every value that may stand in a document.
func (ObstacleKind) Names() []string {
	return []string{string(ObstacleKindHedge), string(ObstacleKindWall), string(ObstacleKindTree), string(ObstacleKindBuilding), string(ObstacleKindWire), string(ObstacleKindBank), string(ObstacleKindMast), string(ObstacleKindFence)}
}

// Obstacle: an obstacle: one point, a line, or an outline when closed.
type Obstacle struct {
	Name string       `json:"name,omitempty" range:"min_len=1,max_len=80"`
	Kind ObstacleKind `json:"kind,omitempty"`
	// One point, or a line, or the corners of an outline.
	Points []Point `json:"points,omitempty" range:"min_items=1,max_items=200"`
	Closed *bool   `json:"closed,omitempty"`
	// Top above the ground at its place.
	HeightMeters *Quantity `json:"heightMeters,omitempty" range:"gte=0,lte=1000"`
	// How far its place may be off, one standard deviation.
	PositionSpreadMeters *float64 `json:"positionSpreadMeters,omitempty" range:"gte=0,lte=100"`
	// How far a wire hangs below the straight line between its poles, at the middle of each span.
	SagMeters *Quantity `json:"sagMeters,omitempty" range:"gte=0,lte=100"`
	// Share of the wind that goes through: 0 for a wall, about 0.5 for a hedge in leaf. Absent: by kind.
	PorosityRatio *float64 `json:"porosityRatio,omitempty" range:"gte=0,lte=1"`
}

// KeepOutReason says: why an area must not be flown over.
type KeepOutReason string

// Values of KeepOutReason; the empty string means that nothing was said.
const (
	KeepOutReasonPeople    KeepOutReason = "KEEP_OUT_REASON_PEOPLE"
	KeepOutReasonBuildings KeepOutReason = "KEEP_OUT_REASON_BUILDINGS"
	KeepOutReasonRoad      KeepOutReason = "KEEP_OUT_REASON_ROAD"
	KeepOutReasonLivestock KeepOutReason = "KEEP_OUT_REASON_LIVESTOCK"
	KeepOutReasonNeighbour KeepOutReason = "KEEP_OUT_REASON_NEIGHBOUR"
	KeepOutReasonAirspace  KeepOutReason = "KEEP_OUT_REASON_AIRSPACE"
)

// Names lists every value that may stand in a document.
func (KeepOutReason) Names() []string {
	return []string{string(KeepOutReasonPeople), string(KeepOutReasonBuildings), string(KeepOutReasonRoad), string(KeepOutReasonLivestock), string(KeepOutReasonNeighbour), string(KeepOutReasonAirspace)}
}

// KeepOut: an area that must not be flown over.
type KeepOut struct {
	Name   string        `json:"name,omitempty" range:"min_len=1,max_len=80"`
	Area   *Polygon      `json:"area,omitempty"`
	Reason KeepOutReason `json:"reason,omitempty"`
}

// RoughnessClass says: roughness of the ground up wind, which sets the wind profile.
type RoughnessClass string

// Values of RoughnessClass; the empty string means that nothing was said.
const (
	RoughnessClassOpenWater      RoughnessClass = "ROUGHNESS_CLASS_OPEN_WATER"
	RoughnessClassOpenGrass      RoughnessClass = "ROUGHNESS_CLASS_OPEN_GRASS"
	RoughnessClassLowCrops       RoughnessClass = "ROUGHNESS_CLASS_LOW_CROPS"
	RoughnessClassHighCrops      RoughnessClass = "ROUGHNESS_CLASS_HIGH_CROPS"
	RoughnessClassParkland       RoughnessClass = "ROUGHNESS_CLASS_PARKLAND"
	RoughnessClassSuburbOrForest RoughnessClass = "ROUGHNESS_CLASS_SUBURB_OR_FOREST"
)

// Names lists every value that may stand in a document.
func (RoughnessClass) Names() []string {
	return []string{string(RoughnessClassOpenWater), string(RoughnessClassOpenGrass), string(RoughnessClassLowCrops), string(RoughnessClassHighCrops), string(RoughnessClassParkland), string(RoughnessClassSuburbOrForest)}
}

// Permission: field owner's permission.
type Permission struct {
	GrantedBy string `json:"grantedBy,omitempty" range:"max_len=120"`
	// RFC 3339 dates, e.g. "2026-04-01".
	ValidFromDate string `json:"validFromDate,omitempty" pattern:"^([0-9]{4}-[0-9]{2}-[0-9]{2})?$"`
	ValidToDate   string `json:"validToDate,omitempty" pattern:"^([0-9]{4}-[0-9]{2}-[0-9]{2})?$"`
	// Daily hours in which nothing may fly, local time, e.g. "20:00".
	QuietFrom string `json:"quietFrom,omitempty" pattern:"^([0-9]{2}:[0-9]{2})?$"`
	QuietTo   string `json:"quietTo,omitempty" pattern:"^([0-9]{2}:[0-9]{2})?$"`
}

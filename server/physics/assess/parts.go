package assess

// parts are parts of a pass that one section computes and others read.
type parts uint64

const (
	partAir parts = 1 << iota
	partMass
	partWing
	partDrag
	partRolling
	partEngine
	partStall
	partLaunch
	partPitch
	partInertia
	partYaw
	partLanding
	partGlide
	partDay
	partLoads
	partFeed
	partTop
	partHeights
	partDescent
	partDrags
	// What a pass draws on and finds out for itself: its marks on the launch and landing paths and the polar, the twists, linkages and fittings, the
	// coldest pack, the landing place, and what fuel and heat find.
	partMarks
	partLifts
	partTwist
	partStiffness
	partPlace
	partGround
	partCold
	partHot
	// partFalls are the losses of link on their way down.
	partFalls
)

// partsDrawn are for lines and diagrams alone, which a quiet pass leaves out.
const partsDrawn = partMarks | partLifts | partHeights | partDescent | partDrags

// copies hand one part of a pass on to another.
var copies = []struct {
	part parts
	copy func(to, from *pass)
}{
	{partAir, func(to, from *pass) { to.air = from.air }},
	{partMass, func(to, from *pass) { to.mass = from.mass }},
	{partWing, func(to, from *pass) { to.wing = from.wing }},
	{partDrag, func(to, from *pass) { to.drag = from.drag }},
	{partRolling, func(to, from *pass) { to.rolling = from.rolling }},
	{partEngine, func(to, from *pass) { to.engine = from.engine }},
	{partStall, func(to, from *pass) { to.stall = from.stall }},
	{partLaunch, func(to, from *pass) { to.launch = from.launch }},
	{partPitch, func(to, from *pass) { to.pitch = from.pitch }},
	{partInertia, func(to, from *pass) { to.inertia = from.inertia }},
	{partYaw, func(to, from *pass) { to.yaw = from.yaw }},
	{partLanding, func(to, from *pass) { to.landing = from.landing }},
	{partGlide, func(to, from *pass) { to.glide = from.glide }},
	{partDay, func(to, from *pass) { to.day = from.day }},
	{partLoads, func(to, from *pass) { to.loads = from.loads }},
	{partFeed, func(to, from *pass) { to.feed = from.feed }},
	{partTop, func(to, from *pass) { to.top, to.topMissing = from.top, from.topMissing }},
	{partFalls, func(to, from *pass) { to.falls = from.falls }},
	{partHeights, func(to, from *pass) { to.drawn.heights = from.drawn.heights }},
	{partDescent, func(to, from *pass) { to.drawn.descent = from.drawn.descent }},
	{partDrags, func(to, from *pass) { to.drawn.drags = from.drawn.drags }},
}

// stage is one part of an assessment: what it computes, and which parts of the pass it looks at and changes. Those of its drawing need no copy: a pass
// begins with all of the base pass.
type stage struct {
	run             func(*pass)
	reads, computes parts
	// asks are the portions of the document that it reads.
	asks portions
}

// touches are all parts that a stage looks at or changes.
func (s *stage) touches() parts { return s.reads | s.computes }

// hand hands on parts from one pass to another.
func (c parts) hand(to, from *pass) {
	for i := range copies {
		if c&copies[i].part != 0 {
			copies[i].copy(to, from)
		}
	}
}

// Package reach answers where a model comes down when its engine stops: from every point of launch and circuit the landing areas it can still glide to in
// the wind, with the time a pilot takes to react, the height lost in turns and the height to line up; the least height for a turn back; the places from
// which nothing is reached; and the ground it may come down on. Places are on the field's plane, x east and y north, m; headings in radians clockwise
// from true north; heights in m over the ground of the landing areas, taken as level; speeds in m/s.
//
// New prepares a Map for one model, wind and field. Map.From answers for a point, Map.Survey for a path, Map.Zones for places and all headings,
// Map.TurnBack for heights along a launch, Map.Footprint for the ground. A Map is not changed by its methods and may be used by several at once.
//
// How a point is decided. The model flies on for the reaction time and rolls into the turn; turns at a bank with a margin over the stall; glides at the
// speed that goes farthest in the wind; turns onto the final line; and holds it wings level for the line-up time down to a place of the area that leaves
// the landing run. Of the four ways to join turn, straight and turn, all landing lines and up to four places on each, the one that needs least height is taken.
// The wind is the mean over the height flown through when the model just makes it, so what a point needs does not depend on its height. Height left over
// is taken to be lost by circling, slips and turns.
package reach

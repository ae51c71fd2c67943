// Package field holds the plane geometry of a flying site in metres from its datum, x east and y north: outlines, lines, obstacles across a flight path,
// and the change between WGS-84 positions and the local plane. Angles are in radians, headings clockwise from true north.
//
//	positions        NewDatum, Datum.Place, Datum.Outline, Middle, CheckPosition; Between and Position.Along for geodesics
//	an outline       Polygon.Normal, Check, SelfCrossing; SignedDistance, Within, PathClearance, AreaClearance, Separation, Overlaps
//	a path in space  Track: Standing.Pass (obstacles and wires), Polygon.Enter (keep-outs), Line.Approach (people, roads)
//	a straight path  Corridor.Cross
//	a wire           Span, Catenary
//	a landing run    Ground.LongestAlong, Ground.Longest
package field

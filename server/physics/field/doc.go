// Package field holds the plane geometry of a flying site in metres from its datum, x east and y north: outlines, lines, obstacles across a flight path,
// and the change between WGS-84 positions and the local plane. Angles are in radians, headings clockwise from true north.
package field

// Package survey reads and writes the places of a flying site: GeoJSON (RFC 7946), GPX 1.1 and tables of coordinates become parts of a field in metres from
// its datum, and back; a track walked round an area becomes its outline. Positions are WGS-84. Everything read is bounded in size, and every error names the
// feature, by its number from 1, and the member that is wrong.
package survey

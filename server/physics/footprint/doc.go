// Package footprint tells where a model comes down after its radio link is lost: the fail-safe's motion from one state in wind, the cloud of
// impacts over a circuit with spread, its outlines, energies and critical areas, and what of the field lies in it. Lengths are in m, speeds in
// m/s, angles in rad, energies in J; headings count clockwise from north; heights are over the level ground on which the model comes down.
//
// The order of use: fill a Loss (model, air, wind, declared action), call Loss.From for one state or Plan.Sample for a circuit, then ask the
// Cloud. Ballistic falls, critical areas, buffers and the powered fly-away stand apart as closed forms.
package footprint

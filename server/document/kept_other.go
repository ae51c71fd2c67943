//go:build !js

package document

// keptGeometries is how many solved geometries are kept: those of the models that are being worked on.
const keptGeometries = 32

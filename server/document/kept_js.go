package document

// keptGeometries is how many solved geometries a page keeps: the model in hand and what it was a moment ago.
const keptGeometries = 4

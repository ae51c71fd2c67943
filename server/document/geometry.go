package document

import (
	"container/list"
	"sync"

	"pitgate/server/document/digest"
	"pitgate/server/document/jsonform"
	"pitgate/server/physics/assess"
)

var geometries = newGeometryCache(keptGeometries)

// geometryDigest names the geometry of a document: equal digests come from equal bytes of all that assess.Prepare reads. False when
// the document holds a number that JSON cannot write.
func geometryDigest(in assess.Input) ([digest.Size]byte, bool) {
	if in.Model == nil {
		return [digest.Size]byte{}, true
	}
	text, err := jsonform.Marshal(assess.GeometryOf(in))
	if err != nil {
		return [digest.Size]byte{}, false
	}
	return sum256(text), true
}

// geometryCache keeps the geometries used last. It may be used by many at once.
type geometryCache struct {
	mutex  sync.Mutex
	room   int
	places map[[digest.Size]byte]*list.Element
	recent *list.List // of keptGeometry, used last in front
}

type keptGeometry struct {
	digest   [digest.Size]byte
	geometry *assess.Geometry
}

func newGeometryCache(room int) *geometryCache {
	return &geometryCache{room: room, places: map[[digest.Size]byte]*list.Element{}, recent: list.New()}
}

// of returns the geometry of a document, from the cache where an equal one was prepared before. Its error is that of assess.Prepare;
// no geometry is kept then.
func (c *geometryCache) of(in assess.Input) (*assess.Geometry, error) {
	digest, ok := geometryDigest(in)
	if !ok {
		return assess.Prepare(in)
	}
	if kept := c.find(digest); kept != nil {
		return kept, nil
	}
	prepared, err := assess.Prepare(in)
	if err != nil {
		return nil, err
	}
	c.keep(digest, prepared)
	return prepared, nil
}

func (c *geometryCache) find(digest [digest.Size]byte) *assess.Geometry {
	c.mutex.Lock()
	defer c.mutex.Unlock()
	place, ok := c.places[digest]
	if !ok {
		return nil
	}
	c.recent.MoveToFront(place)
	kept, _ := place.Value.(keptGeometry)
	return kept.geometry
}

// keep adds a geometry and drops the one not used for longest when there is no room left.
func (c *geometryCache) keep(digest [digest.Size]byte, g *assess.Geometry) {
	c.mutex.Lock()
	defer c.mutex.Unlock()
	if _, ok := c.places[digest]; ok {
		return
	}
	c.places[digest] = c.recent.PushFront(keptGeometry{digest, g})
	if c.recent.Len() > c.room {
		last := c.recent.Back()
		dropped, _ := c.recent.Remove(last).(keptGeometry)
		delete(c.places, dropped.digest)
	}
}

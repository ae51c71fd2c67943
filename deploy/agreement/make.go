package main

import (
	"math/rand/v2"

	"pitgate/server/rulepack"
)

// maker makes documents from those of testdata.
type maker struct {
	from  []map[string]any
	known knownValues
	aims  map[change][]*aim
	packs []rulepack.Pack
}

func newMaker(documents []map[string]any, packs []rulepack.Pack) *maker {
	return &maker{from: documents, known: valuesOf(documents), aims: aimsOf(documents), packs: packs}
}

// recipes are how documents are made, in turn: some ways more often than others.
var recipes = []struct {
	name string
	make func(m *maker, turn int, v variation) map[string]any
	// asIs leaves faults in, so that refusals are held as well.
	asIs bool
}{
	{"moved", (*maker).moved, false},
	{"without", aimed(leavesOut), false},
	{"saying", aimed(says), false},
	{"exchanged", (*maker).exchanged, false},
	{"filled", aimed(fills), false},
	{"ruled", (*maker).ruled, false},
	{"counted", aimed(counts), false},
	{"limited", (*maker).limited, false},
	{"without", aimed(leavesOut), false},
	{"bounded", aimed(bounds), false},
	{"overstepped", aimed(oversteps), true},
	{"exchanged", (*maker).exchanged, false},
	{"filled", aimed(fills), false},
	{"many", (*maker).many, false},
	{"broken", (*maker).moved, true},
	{"counted", aimed(counts), true},
}

// document makes one; the same seed and number always make the same.
func (m *maker) document(i int, seed uint64) (root map[string]any, recipe string) {
	by := rand.New(rand.NewPCG(seed, uint64(i)))
	r := recipes[i%len(recipes)]
	v := newVariation(by, m.known)
	root = r.make(m, i/len(recipes), v)
	if !r.asIs {
		repair(root)
	}
	return root, r.name
}

// one is a copy of one of the documents of testdata, each number of it moved a little.
func (m *maker) one(v variation, at int) map[string]any {
	still := v
	still.rate, still.width = 0, min(v.width, widths[1])
	root, _ := still.value("", copied(m.from[at%len(m.from)])).(map[string]any)
	v.judge(root)
	return root
}

// moved is a document all of whose numbers move, and in which now and then a part is left out or broken.
func (m *maker) moved(turn int, v variation) map[string]any {
	root, ok := v.value("", copied(m.from[turn%len(m.from)])).(map[string]any)
	if !ok {
		return map[string]any{}
	}
	return root
}

// aimsEach is how many aims of its kind a document carries, as far as they can be reached in it.
const aimsEach = 3

// aimed makes the documents that carry the aims of one kind, in turn.
func aimed(what change) func(*maker, int, variation) map[string]any {
	return func(m *maker, turn int, v variation) map[string]any {
		root := m.one(v, pick(m.aims[what], aimsEach*turn).base(v.by))
		for i := range aimsEach {
			v.apply(pick(m.aims[what], aimsEach*turn+i), root)
		}
		return root
	}
}

// many carries several changes of all kinds at once.
func (m *maker) many(turn int, v variation) map[string]any {
	root := m.one(v, turn)
	for _, what := range []change{leavesOut, says, counts, fills, fills, leavesOut} {
		aims := m.aims[what]
		v.apply(aims[v.by.IntN(len(aims))], root)
	}
	return root
}

func (m *maker) exchanged(turn int, v variation) map[string]any {
	root := m.one(v, turn)
	v.exchange(root, m.one(v, v.by.IntN(len(m.from))))
	return root
}

func (m *maker) ruled(turn int, v variation) map[string]any {
	root := m.one(v, turn)
	v.rule(root, m.packs)
	return root
}

func (m *maker) limited(turn int, v variation) map[string]any {
	root := m.one(v, turn)
	v.limit(root)
	return root
}

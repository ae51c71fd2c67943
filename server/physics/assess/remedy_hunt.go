package assess

import (
	"cmp"

	"pitgate/server/physics/order"
)

// hunt is the search for the remedies of one finding.
type hunt struct {
	target *target
	rest   []course // not followed yet, the least effort first
	turn   []course // followed now
	ended  []ending // of those
	counts [2]perEffort
	found  []mended
	paired bool
	all    int // ways begun with
}

// perEffort counts by the places of efforts.
type perEffort [8]int

// ending is where a way leads.
type ending struct {
	mended mended
	ok     bool
}

// begin lists the ways of single changes.
func (h *hunt) begin(r *remedySearch, t *target) {
	h.target = t
	for i := range r.spots {
		if r.named(&r.spots[i], t.at) {
			h.rest = append(h.rest, r.waysOf(t, i)...)
		}
	}
	sortWays(h.rest)
	h.all = len(h.rest) + pairedKnobs*(pairedKnobs-1)/2
}

// sortWays puts ways into the order of their effort.
func sortWays(ways []course) {
	order.Stable(ways, func(a, b course) int {
		one, other := a.changes(a.good), b.changes(b.good)
		return cmp.Or(cmp.Compare(effortOf(one), effortOf(other)), cmp.Compare(sizeOf(one), sizeOf(other)))
	})
}

// choose takes the ways that have to be followed whatever comes of the others: of each effort as many as remedies are still wanted. It is false when none
// are left. Where no single change helped, pairs are tried.
func (h *hunt) choose(r *remedySearch) bool {
	taken, rest := perEffort{}, h.rest[:0]
	h.turn = h.turn[:0]
	for _, w := range h.rest {
		effort := effortOf(w.changes(w.good))
		switch left := toldRemedies - h.counts[0][effort]; {
		case left <= 0:
		case taken[effort] < left:
			taken[effort]++
			h.turn = append(h.turn, w)
		default:
			rest = append(rest, w)
		}
	}
	h.rest, h.ended = rest, make([]ending, len(h.turn))
	if len(h.turn) > 0 || h.paired || len(h.found) > 0 {
		return len(h.turn) > 0
	}
	h.paired, h.rest = true, r.pairs(h.target)
	sortWays(h.rest)
	return h.choose(r)
}

// take keeps what came of the ways followed, in their order.
func (h *hunt) take() {
	for i := range h.ended {
		m := &h.ended[i].mended
		kind := &h.counts[min(len(m.breaks), 1)]
		if h.ended[i].ok && kind[m.effort] < toldRemedies {
			kind[m.effort]++
			h.found = append(h.found, *m)
		}
	}
}

// left is how many ways may still be followed.
func (h *hunt) left() int {
	left := len(h.rest)
	if !h.paired && len(h.found) == 0 {
		left += pairedKnobs * (pairedKnobs - 1) / 2
	}
	return left
}

// follow finds where the ways of all findings come to hold and what the changes do to all other findings, until each has its remedies.
func (r *remedySearch) follow(hunts []hunt) bool {
	all := 0
	for i := range hunts {
		all += hunts[i].all
	}
	for {
		type task struct{ hunt, way int }
		var tasks []task
		left := 0
		for i := range hunts {
			if hunts[i].choose(r) {
				for k := range hunts[i].turn {
					tasks = append(tasks, task{i, k})
				}
			}
			left += hunts[i].left()
		}
		if len(tasks) == 0 {
			return true
		}
		tell := r.progress(progressWays, progressTold, all)
		goesOn := func(done int) bool { return tell(max(0, all-left-len(tasks)+done)) }
		if !each(len(tasks), r.options.Workers, goesOn, func(i int) {
			h, k := &hunts[tasks[i].hunt], tasks[i].way
			h.ended[k].mended, h.ended[k].ok = r.settle(h.target, &h.turn[k])
		}) {
			return false
		}
		for i := range hunts {
			hunts[i].take()
		}
	}
}

// tellAll puts all remedies into words, and confirms them by samples where those are asked for.
func (r *remedySearch) tellAll(hunts []hunt) ([]Remedy, error) {
	var list []Remedy
	var of []*mended
	for i := range hunts {
		h := &hunts[i]
		order.Stable(h.found, func(a, b mended) int {
			return cmp.Or(cmp.Compare(min(len(a.breaks), 1), min(len(b.breaks), 1)), cmp.Compare(a.effort, b.effort), cmp.Compare(a.size, b.size))
		})
		for k := range h.found {
			list, of = append(list, r.told(h.target, &h.found[k])), append(of, &h.found[k])
		}
		if len(h.found) == 0 {
			list, of = append(list, r.without(h.target)), append(of, nil)
		}
	}
	if r.options.Samples > 0 && !each(len(list), r.options.Workers, r.progress(progressTold, progressWhole, len(list)), func(i int) {
		if of[i] != nil {
			r.confirm(&list[i], of[i])
		}
	}) {
		return nil, ErrStopped
	}
	return list, nil
}

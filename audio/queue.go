package audio

import (
	"math"
	"slices"
	"sort"
)

// A queue holds the hits still to come, in order. Only add allocates.
type queue struct {
	hits []Hit
	head int // hits before it have been played
}

// add puts hits into the queue.
func (q *queue) add(hits []Hit) {
	q.hits = append(slices.Delete(q.hits, 0, q.head), hits...)
	q.head = 0
	slices.SortFunc(q.hits, compareHits)
}

// drop forgets the hits at or after a frame.
func (q *queue) drop(from int64) {
	rest := q.hits[q.head:]
	n := sort.Search(len(rest), func(i int) bool { return rest[i].Frame >= from })
	q.hits = q.hits[:q.head+n]
}

// next returns the frame of the first hit, or the greatest int64 if there is
// none.
func (q *queue) next() int64 {
	if q.head == len(q.hits) {
		return math.MaxInt64
	}
	return q.hits[q.head].Frame
}

// take removes and returns the first hit.
func (q *queue) take() Hit {
	h := q.hits[q.head]
	q.head++
	return h
}

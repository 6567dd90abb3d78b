package scoring

import "time"

// deque is a queue with two open ends. Its zero value is empty and ready.
// Taking from an empty one is a programmer's mistake and panics.
type deque struct {
	ring []time.Duration // its length is 0 or a power of two
	head int             // of the first, counted round the ring
	n    int
}

func (d *deque) len() int { return d.n }

func (d *deque) slot(i int) *time.Duration { return &d.ring[(d.head+i)&(len(d.ring)-1)] }

func (d *deque) last() time.Duration { return *d.slot(d.n - 1) }

func (d *deque) pushFirst(v time.Duration) {
	d.room()
	d.head--
	d.n++
	*d.slot(0) = v
}

func (d *deque) pushLast(v time.Duration) {
	d.room()
	d.n++
	*d.slot(d.n - 1) = v
}

func (d *deque) popFirst() time.Duration {
	d.mustHold()
	v := *d.slot(0)
	d.head++
	d.n--
	return v
}

func (d *deque) popLast() time.Duration {
	d.mustHold()
	d.n--
	return *d.slot(d.n)
}

func (d *deque) mustHold() {
	if d.n == 0 {
		panic("scoring: empty queue")
	}
}

// room doubles the ring when it is full.
func (d *deque) room() {
	if d.n < len(d.ring) {
		return
	}
	ring := make([]time.Duration, max(16, 2*len(d.ring)))
	for i := range d.n {
		ring[i] = *d.slot(i)
	}
	d.ring, d.head = ring, 0
}

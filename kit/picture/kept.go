package picture

import (
	"crypto/sha256"
	"sync"
)

// Kept keeps pictures that are ready, so that each is prepared once however many
// booklets it goes into. The zero value is ready to use, by several at a time; a nil one
// keeps nothing.
type Kept struct {
	mu    sync.Mutex
	ready map[order]*result
}

// An order is what makes one ready picture differ from another.
type order struct {
	sum   [sha256.Size]byte
	place Place
	grey  bool
}

type result struct {
	once    sync.Once
	picture Picture
	err     error
}

// Prepare is the function of the same name, done once for the same picture and place.
func (k *Kept) Prepare(data []byte, place Place, grey bool) (Picture, error) {
	if k == nil {
		return Prepare(data, place, grey)
	}
	r := k.result(order{sha256.Sum256(data), place, grey})
	r.once.Do(func() { r.picture, r.err = Prepare(data, place, grey) })
	return r.picture, r.err
}

func (k *Kept) result(o order) *result {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.ready == nil {
		k.ready = map[order]*result{}
	}
	if k.ready[o] == nil {
		k.ready[o] = &result{}
	}
	return k.ready[o]
}

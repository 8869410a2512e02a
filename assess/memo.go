package assess

import (
	"crypto/sha256"
	"sync"

	"oakum/dossier"
	"oakum/quantity"
)

// Memo keeps what the slow steps of a brief gave, each under a hash over all that went into it: a formula and its inputs; a hull, a loading and the
// spaces that stand open. Who makes one brief after another of a ship gives them all the same memo, and what an edit did not touch is not worked
// again. A step is found only by the very inputs that it would be worked from, so that a brief is the same with a memo and without. The zero Memo
// is empty and ready; it may serve several briefs at once.
type Memo struct {
	mu   sync.Mutex
	turn int
	kept map[imprint]*kept
}

// imprint is a hash over the inputs of a step.
type imprint [sha256.Size]byte

// kept is what a step gave, and the last brief that asked for it.
type kept struct {
	gave any
	turn int
}

// turnsKept is for how many briefs a step is kept that none of them asks for.
const turnsKept = 8

// Assess makes the brief, with what the memo has of it.
func (m *Memo) Assess(d *dossier.Dossier, p Plan, day quantity.Date) *Brief {
	m.begin()
	c := newCase(d, p, day)
	if key, ok := c.printOfHull(); ok {
		c.hullPrint, c.memo, c.book.memo = key, m, m
	}
	b := c.brief()
	c.memo, c.book.memo = nil, nil // what is tried on the pages later is not kept: one slider would fill it
	return b
}

// begin counts a brief and lets go of what the last few had no use for.
func (m *Memo) begin() {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.turn++
	for key, k := range m.kept {
		if m.turn-k.turn > turnsKept {
			delete(m.kept, key)
		}
	}
}

func (m *Memo) find(key imprint) (any, bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	k, ok := m.kept[key]
	if !ok {
		return nil, false
	}
	k.turn = m.turn
	return k.gave, true
}

func (m *Memo) keep(key imprint, gave any) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.kept == nil {
		m.kept = map[imprint]*kept{}
	}
	m.kept[key] = &kept{gave, m.turn}
}

// recall gives what a step gave for the same inputs before, or takes the step. What it gives is shared and must not be changed. A refusal is not
// kept; nor is a step with an input that has no print. A nil memo keeps nothing.
func recall[T any](m *Memo, step string, take func() (T, error), inputs ...any) (T, error) {
	if m == nil {
		return take()
	}
	key, ok := printOf(step, inputs)
	if !ok {
		return take()
	}
	if gave, ok := m.find(key); ok {
		return gave.(T), nil
	}
	gave, err := take()
	if err == nil {
		m.keep(key, gave)
	}
	return gave, err
}

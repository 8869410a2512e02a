package dossier

import (
	"crypto/rand"
	"encoding/hex"
	"fmt"
	"sync"
	"time"
)

// longestID bounds an ID, in bytes.
const longestID = 64

// CheckID tells whether an ID can be used: 1 to 64 of a-z, 0-9, ".", "_" and "-", a letter or figure first.
func CheckID(id string) error {
	if id == "" {
		return fmt.Errorf("a record needs an id")
	}
	if len(id) > longestID {
		return fmt.Errorf("the id %q is longer than %d letters", id[:longestID]+"…", longestID)
	}
	for i := range len(id) {
		c := id[i]
		plain := c >= 'a' && c <= 'z' || c >= '0' && c <= '9'
		if !plain && (i == 0 || c != '.' && c != '_' && c != '-') {
			return fmt.Errorf("the id %q may only have small letters, figures, and . _ - after the first", id)
		}
	}
	return nil
}

var lastID struct {
	sync.Mutex
	stamp uint64 // milliseconds and counter of the last ID, so that IDs made in one millisecond keep their order
}

// NewID makes a UUID of version 7 (RFC 9562): time first, so that IDs sort by when they were made. The twelve bits after the time count up
// within a millisecond.
func NewID() string {
	var b [16]byte
	_, _ = rand.Read(b[:]) // never fails: the runtime stops the program first
	lastID.Lock()
	stamp := uint64(time.Now().UnixMilli()) << 12 //nolint:forbidigo // an ID says when it was made; no brief depends on it
	if stamp <= lastID.stamp {
		stamp = lastID.stamp + 1
	}
	lastID.stamp = stamp
	lastID.Unlock()
	ms := stamp >> 12
	for i := range 6 {
		b[i] = byte(ms >> (40 - 8*i))
	}
	b[6] = 0x70 | byte(stamp>>8)&0x0f
	b[7] = byte(stamp)
	b[8] = 0x80 | b[8]&0x3f
	x := [36]byte{8: '-', 13: '-', 18: '-', 23: '-'}
	hex.Encode(x[:8], b[:4])
	hex.Encode(x[9:13], b[4:6])
	hex.Encode(x[14:18], b[6:8])
	hex.Encode(x[19:23], b[8:10])
	hex.Encode(x[24:], b[10:])
	return string(x[:])
}

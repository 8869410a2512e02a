package quantity

import (
	"fmt"
	"strings"
)

// UnknownUnit is the error for a spelling that names no unit, or several.
type UnknownUnit struct {
	Spelling string
	Meanings []string // keys, where the word has several meanings
}

func (e *UnknownUnit) Error() string {
	if len(e.Meanings) > 0 {
		return fmt.Sprintf("unit %q has more than one meaning: write %s", e.Spelling, strings.Join(e.Meanings, " or "))
	}
	return fmt.Sprintf("unit %q is not known", e.Spelling)
}

func named(spelling string) (Unit, error) {
	if u, ok := Lookup(spelling); ok {
		return u, nil
	}
	e := &UnknownUnit{Spelling: spelling}
	for _, u := range meanings(cleanUnit(spelling)) {
		e.Meanings = append(e.Meanings, u.Key)
	}
	return Unit{}, e
}

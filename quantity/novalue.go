package quantity

import (
	"fmt"
	"strings"
)

// Meaning of a cell that holds a word instead of a number.
type Meaning string

const (
	Blank         Meaning = "blank"          // nothing written
	NotTaken      Meaning = "not taken"      // "X", "-": no reading here
	NotApplicable Meaning = "not applicable" // "N/A"
	NoEcho        Meaning = "no echo"        // "N/E": the gauge showed nothing
	NotKnown      Meaning = "not known"      // "?", "unknown"
	SameAsAbove   Meaning = "same as above"  // a ditto mark
	Dry           Meaning = "dry"            // a sounding that found no water
	Wet           Meaning = "wet"            // water seen, not measured
	Nil           Meaning = "nil"            // nothing found
	NoAccess      Meaning = "no access"      // could not be reached
)

// NoValue is the error for a cell that says something other than a number.
// None of its meanings is zero by itself: whether "dry" is a sounding of zero
// is for the caller, who knows what was measured and whether it was opened.
type NoValue struct {
	Word    string
	Meaning Meaning
}

func (n *NoValue) Error() string {
	if n.Meaning == Blank {
		return "no value: the cell is blank"
	}
	return fmt.Sprintf("no value: %q means %s", n.Word, n.Meaning)
}

var words = map[string]Meaning{
	"": Blank, ".": NotTaken, "-": NotTaken, "--": NotTaken, "---": NotTaken, "----": NotTaken, "x": NotTaken, "xx": NotTaken,
	"xxx": NotTaken, "not taken": NotTaken, "nt": NotTaken, "n/t": NotTaken, "nr": NotTaken, "n/r": NotTaken, "no reading": NotTaken,
	"missed": NotTaken,
	"n/a":    NotApplicable, "na": NotApplicable, "n.a.": NotApplicable, "not applicable": NotApplicable, "#n/a": NotApplicable,
	"n/e": NoEcho, "ne": NoEcho, "no echo": NoEcho, "noecho": NoEcho,
	"?": NotKnown, "??": NotKnown, "unknown": NotKnown, "unk": NotKnown, "not known": NotKnown, "tbd": NotKnown, "tbc": NotKnown,
	`"`: SameAsAbove, "do": SameAsAbove, "do.": SameAsAbove, "ditto": SameAsAbove, `-"-`: SameAsAbove, `- " -`: SameAsAbove,
	"dry": Dry, "wet": Wet, "damp": Wet, "nil": Nil, "none": Nil,
	"no access": NoAccess, "n/acc": NoAccess, "inaccessible": NoAccess, "not opened": NoAccess,
}

// noValue finds the word in a plain text.
func noValue(s string) (*NoValue, bool) {
	m, ok := words[strings.ToLower(s)]
	if !ok {
		return nil, false
	}
	return &NoValue{Word: s, Meaning: m}, true
}

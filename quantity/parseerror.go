package quantity

import "fmt"

// ParseError is the error for a text that is no quantity, or no date.
type ParseError struct {
	Text string // as typed, cut short where very long
	Want string // what was expected
	Why  string
}

func (e *ParseError) Error() string {
	return fmt.Sprintf("cannot read %q: %s; expected %s", e.Text, e.Why, e.Want)
}

// maxText bounds a text to be read, in bytes.
const maxText = 200

var tooLong = fmt.Sprintf("it is longer than %d characters", maxText)

func clip(text string) string {
	runes := []rune(text)
	if len(runes) > 40 {
		return string(runes[:40]) + "..."
	}
	return text
}

package intake

import (
	"regexp"
	"strings"

	"oakum/quantity"
	"oakum/survey"
)

// remarks are words of a remark that mean one of the list.
var remarks = []struct {
	pattern *regexp.Regexp
	word    string
}{
	{regexp.MustCompile(`(?i)\bpit(s|ted|ting)?\b|lochfra`), "pit"},
	{regexp.MustCompile(`(?i)\b(dbl|dblr|doublers?|doubled|doubling|doppel\pL*|doublante?)\b`), "doubler"},
	{regexp.MustCompile(`(?i)\b(wet|nass)\b`), "wet behind"},
	{regexp.MustCompile(`(?i)\b(scale|scaly|rust|rost|zunder)\b`), "scale"},
	{regexp.MustCompile(`(?i)\b(seam|landing|lap|naht)\b`), "seam"},
	{regexp.MustCompile(`(?i)\bwelds?\b`), "weld"},
}

var (
	pitDepth = regexp.MustCompile(`(?i)(?:\bpit[a-z]*|lochfra\pL*)\s*(?:depth\s*)?(?:of\s*)?[:=]?\s*(\d*[.,]?\d+(?:/\d+)?)\s*(mm|in|"|mils?)?`)
	noAccess = regexp.MustCompile(`(?i)\b(no access|not accessible|inaccessible|not reached|could not reach|covered|obstructed)\b`)
	noEcho   = regexp.MustCompile(`(?i)\bno echo\b|\bn/e\b`)
	overCoat = regexp.MustCompile(`(?i)\b(over|through) (paint|coating)\b`)
	doubted  = regexp.MustCompile(`(?i)\b(doubtful|recheck|re-check|suspect|zweifelhaft)\b`)
)

// remark reads a remark: its words are kept, and those that mean something are understood.
func (r *reader) remark(d *draft, s slot, cell string) error {
	if isWord, meaning := wordOf(cell); isWord {
		if meaning == quantity.SameAsAbove {
			return errNothingAbove
		}
		if cell == "-" || cell == "." {
			return nil
		}
	}
	body := d.body.Addr().Interface().(*survey.Thickness)
	for _, m := range remarks {
		if body.Remark == "" && m.pattern.MatchString(cell) {
			body.Remark = m.word
		}
	}
	if m := pitDepth.FindStringSubmatch(cell); m != nil && body.PitDepth == nil {
		if reading, err := r.habit.Parse(strings.TrimSpace(m[1]+" "+m[2]), r.t.guess.Unit); err == nil && !reading.Ambiguous() && reading.Value < 0.5 {
			body.PitDepth = &reading.Value
		}
	}
	if body.Result == "read" && doubted.MatchString(cell) {
		body.Result = "doubtful"
	}
	if overCoat.MatchString(cell) && body.Paint == "" {
		body.Paint = "yes"
	}
	return r.join(d, "notes", cell)
}

// painted reads whether there is a coating under the gauge.
func (r *reader) painted(d *draft, s slot, cell string) error {
	if w, ok := enumWord(s.f, cell); ok {
		return r.text(d, "paint", w)
	}
	if isWord, meaning := wordOf(cell); isWord {
		if meaning == quantity.SameAsAbove {
			return errNothingAbove
		}
		return nil
	}
	d.notes = append(d.notes, "coating: "+cell)
	return nil
}

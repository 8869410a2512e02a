package assess

import (
	"fmt"
	"math"
	"strings"

	"oakum/field"
	"oakum/futures"
	"oakum/quantity"
)

// Story is one future of a plan, told in words.
type Story struct {
	Plan   string      `json:"plan"`
	Future int         `json:"future"`
	Lines  []StoryLine `json:"lines"`
	End    string      `json:"end"`
}

// StoryLine is one thing that happens.
type StoryLine struct {
	When  string `json:"when"` // year and month
	What  string `json:"what"`
	Kind  string `json:"kind,omitempty"`
	ID    string `json:"id,omitempty"`
	Place string `json:"place,omitempty"`
}

// Story tells one future of one of the plans compared, counted from 0. Plans are named as for Futures.
func (b *Brief) Story(which, future int, plans ...string) (Story, error) {
	return b.story(which, future, plans)
}

// storyLines is how many things a story tells; a person reads no more.
const storyLines = 60

func (c *inquiry) story(parts []lifePart, which, future int, keys []string) (Story, error) {
	plans, err := c.compared(parts, keys)
	if err != nil {
		return Story{}, err
	}
	if which < 0 || which >= len(plans) {
		return Story{}, field.Refuse("which", "there are %d plans, counted from 0; %d is none of them", len(plans), which)
	}
	m := plans[which].model
	events, o, err := futures.Story(m, &plans[which].plan, seed, future)
	if err != nil {
		return Story{}, field.Refuse("plan", "%v", err)
	}
	s := Story{Plan: plans[which].plan.Name, Future: future, Lines: []StoryLine{}}
	day := c.day.DecimalYear()
	for _, e := range events {
		if len(s.Lines) == storyLines {
			break
		}
		line := StoryLine{When: dateText(day + e.Year), What: e.Words}
		if e.Part >= 0 {
			p := m.Parts[e.Part]
			line.What, line.Kind, line.ID, line.Place = capital(p.Name)+happened(e.Words), p.Kind, p.ID, p.Place
		} else {
			line.What = capital(e.Words)
		}
		s.Lines = append(s.Lines, line)
	}
	s.End = c.ending(o)
	return s, nil
}

func (c *inquiry) ending(o futures.Outcome) string {
	money := fmt.Sprintf("In all it costs %s in today's value, and %s of income is lost.", quantity.Format(o.Cost, c.currency(), 0), quantity.Format(o.Income, c.currency(), 0))
	if !math.IsInf(o.Loss, 1) {
		return fmt.Sprintf("She is lost in %s. %s", yearText(c.day.DecimalYear()+o.Loss), money)
	}
	return "After forty years she is still afloat. " + money
}

func capital(s string) string {
	if s == "" {
		return s
	}
	if s[0] >= 'a' && s[0] <= 'z' {
		return string(s[0]-'a'+'A') + s[1:]
	}
	return s
}

// happened puts what happened after the name of a part: what the ship does for it stands after a colon.
func happened(words string) string {
	if strings.HasPrefix(words, "she ") {
		return ": " + words
	}
	return " " + words
}

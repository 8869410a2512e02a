package intake

import (
	"fmt"
	"math"
	"strconv"

	"oakum/dossier"
	"oakum/survey"
)

// leastMatched is the share of the file's frames that must fall on frames gauged before for that to say how they are counted.
const leastMatched = 0.8

// framesBefore finds the count under which the file's frames fall on frames that were gauged before: surveys go back to the same places.
func (t *Table) framesBefore(first, last float64) (answer, why string) {
	known := map[float64]bool{}
	for _, e := range dossier.All[survey.Thickness](t.ship) {
		if n, ok := numberOf(e.Body.Frame); ok {
			known[n] = true
		}
	}
	theirs := map[float64]bool{}
	for _, n := range t.ev.frames {
		theirs[n] = true
	}
	if len(known) < 5 || len(theirs) < 5 {
		return "", ""
	}
	share := func(turn func(float64) float64) float64 {
		hit := 0
		for n := range theirs {
			if known[turn(n)] {
				hit++
			}
		}
		return float64(hit) / float64(len(theirs))
	}
	best, second := share(func(n float64) float64 { return n }), 0.0
	answer = "same"
	for d := -3.0; d <= 3; d++ {
		sum := math.Round(first+last) + d
		switch s := share(func(n float64) float64 { return sum - n }); {
		case s > best:
			best, second, answer = s, best, "reverse:"+strconv.FormatFloat(sum, 'f', -1, 64)
		case s > second:
			second = s
		}
	}
	if best < leastMatched || second > best-0.25 {
		return "", ""
	}
	words := "as the ship's own"
	if answer != "same" {
		words = "so that the file's frame and the ship's add up to " + answer[len("reverse:"):]
	}
	return answer, fmt.Sprintf("counted %s, %.0f of 100 of its frames were gauged before; counted any other way, %.0f at most", words, best*100, second*100)
}

package choice

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// PollIn is the courses of a matter and what people say of them.
type PollIn struct {
	Courses []string `key:"courses" most:"50" label:"courses"`
	Ballots []Ballot `key:"ballots" most:"1000" label:"what is said of them"`
}

// Ballot is what a person, or several who say the same, say of the courses.
type Ballot struct {
	Who     string   `key:"who" optional:"yes" label:"voice"`
	Count   int      `key:"count" default:"1" min:"1" max:"1000000" label:"how many say so"`
	Prefers []string `key:"prefers" optional:"yes" label:"prefers"`
	Accepts []string `key:"accepts" optional:"yes" label:"could live with"`
	Refuses []string `key:"refuses" optional:"yes" label:"refuses"`
}

// PollOut is five ways to count.
type PollOut struct {
	Table  []Polled  `key:"table" symbol:"ta" label:"course by course"`
	Heard  int       `key:"heard" symbol:"nb" label:"ballots"`
	Ways   []Leading `key:"ways" label:"who leads by each way of counting"`
	Agreed []string  `key:"agreed" label:"courses that every way puts first, alone or with another"`

	Warnings calc.Warnings `key:"-"`
}

// Polled is a course as counted.
type Polled struct {
	Course string  `key:"course" label:"course"`
	First  int     `key:"first" label:"whose first it is"`
	LiveBy int     `key:"live_by" label:"who prefer it or could live with it"`
	Refuse int     `key:"refuse" label:"who refuse it"`
	Points float64 `key:"points" label:"points by rank" help:"one for each course below it on a ballot, half for each beside it"`
	Beats  int     `key:"beats" label:"other courses that it beats, one against one"`
	Beaten int     `key:"beaten" label:"other courses that beat it"`
}

// Leading is the courses that a way of counting puts first; none where each is beaten by another.
type Leading struct {
	By   string   `key:"by" label:"way of counting"`
	Lead []string `key:"lead" label:"first"`
}

// Poll counts voices in five ways.
//
// On a ballot what is preferred stands above what is accepted, that above what nothing is said of, and that above what is refused. By rank (Borda) a course
// has, from each ballot, a point for every course below it and half a point for every one beside it, so that the points of a ballot sum to n(n-1)/2. One
// against one (Condorcet) a course beats another where more ballots put it above than below. It holds for any number of ballots; which way decides must be
// agreed before counting, as they may differ. Exact.
var Poll = calc.Formula[PollIn, PollOut]{
	ID:       "choice.poll",
	Title:    "Voices counted in five ways",
	About:    "How the courses of a matter stand by first choices, by what people could live with, by refusals, by rank and one against one, and whether these agree.",
	Holds:    "Voices heard on the courses themselves. Agree on the way of counting before it is done: no way is right for all questions.",
	Accuracy: "Exact. First choices can split among courses that are alike; assent and rank favour what few mind; one against one can go round.",
	Sources:  []source.Ref{{Key: "borda"}, {Key: "condorcet"}, {Key: "practice", At: "half a point for courses put equal; counting assent and refusals"}},
	Fn:       poll,
	Steps:    pollSteps,
}

func poll(in PollIn) (out PollOut, err error) {
	levels, err := in.levels()
	if err != nil {
		return out, err
	}
	n := len(in.Courses)
	out.Table = make([]Polled, n)
	above := make([][]int, n) // ballots that put the course of the row above that of the column
	for i, name := range in.Courses {
		out.Table[i].Course, above[i] = name, make([]int, n)
	}
	for b, level := range levels {
		k := in.Ballots[b].Count
		out.Heard += k
		for i := range out.Table {
			out.Table[i].count(level, i, k)
			for j := range level {
				if level[i] > level[j] {
					above[i][j] += k
				}
			}
		}
	}
	for i := range above {
		for j := range above {
			if above[i][j] > above[j][i] {
				out.Table[i].Beats++
				out.Table[j].Beaten++
			}
		}
	}
	out.lead()
	return out, nil
}

// How high a course stands on a ballot.
const (
	refused = iota
	unsaid
	accepted
	preferred
)

// levels reads the ballots: how high each course stands on each.
func (in PollIn) levels() ([][]int, error) {
	place := map[string]int{}
	for i, name := range in.Courses {
		if _, twice := place[name]; twice || name == "" {
			return nil, field.Refuse(fmt.Sprintf("courses[%d]", i), "course %q stands twice, or has no name", name)
		}
		place[name] = i
	}
	var list [][]int
	for b, ballot := range in.Ballots {
		level := slices.Repeat([]int{unsaid}, len(in.Courses))
		for _, said := range []struct {
			key   string
			names []string
			level int
		}{{"accepts", ballot.Accepts, accepted}, {"prefers", ballot.Prefers, preferred}, {"refuses", ballot.Refuses, refused}} {
			for k, name := range said.names {
				at := fmt.Sprintf("ballots[%d].%s[%d]", b, said.key, k)
				i, known := place[name]
				switch {
				case !known:
					return nil, field.Refuse(at, "%q is no course here", name)
				case said.level == refused && level[i] != unsaid:
					return nil, field.Refuse(at, "%q is refused and wanted on one ballot", name)
				}
				level[i] = said.level
			}
		}
		list = append(list, level)
	}
	return list, nil
}

// count adds what so many ballots say of course i.
func (p *Polled) count(level []int, i, ballots int) {
	switch level[i] {
	case preferred:
		p.First += ballots
		p.LiveBy += ballots
	case accepted:
		p.LiveBy += ballots
	case refused:
		p.Refuse += ballots
	}
	for j, other := range level {
		switch {
		case j == i:
		case other < level[i]:
			p.Points += float64(ballots)
		case other == level[i]:
			p.Points += float64(ballots) / 2
		}
	}
}

// lead lists who is first by each way, and whom all of them put first.
func (out *PollOut) lead() {
	for _, way := range []struct {
		by    string
		score func(Polled) float64
	}{
		{"by first choices", func(p Polled) float64 { return float64(p.First) }},
		{"by what most could live with", func(p Polled) float64 { return float64(p.LiveBy) }},
		{"refused least", func(p Polled) float64 { return -float64(p.Refuse) }},
		{"by rank", func(p Polled) float64 { return p.Points }},
	} {
		best := way.score(slices.MaxFunc(out.Table, func(a, b Polled) int { return cmp.Compare(way.score(a), way.score(b)) }))
		out.Ways = append(out.Ways, Leading{way.by, out.named(func(p Polled) bool { return way.score(p) == best })})
	}
	out.Ways = append(out.Ways, Leading{"one against one", out.named(func(p Polled) bool { return p.Beaten == 0 })})
	out.Agreed = out.named(func(p Polled) bool {
		return !slices.ContainsFunc(out.Ways, func(w Leading) bool { return !slices.Contains(w.Lead, p.Course) })
	})
	if len(out.Agreed) == 0 {
		out.Warnings = append(out.Warnings, "the ways of counting differ: agree on the way before counting")
	}
}

func (out *PollOut) named(is func(Polled) bool) []string {
	names := []string{}
	for _, p := range out.Table {
		if is(p) {
			names = append(names, p.Course)
		}
	}
	return names
}

func pollSteps(in PollIn, out PollOut) (steps []calc.Step) {
	for _, p := range out.Table {
		steps = append(steps, calc.Step{Symbol: "P", Value: p.Points, Unit: "-", Text: fmt.Sprintf("%s: points by rank from %d ballots; beats %d other courses, beaten by %d", p.Course, out.Heard, p.Beats, p.Beaten)})
	}
	return steps
}

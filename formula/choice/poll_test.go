package choice

import (
	"errors"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
)

// order is a ballot on the courses A, B and C by three letters from best to worst: the first is preferred, the second accepted, of the third nothing is said.
func order(count int, courses string) Ballot {
	return Ballot{Count: count, Prefers: []string{courses[:1]}, Accepts: []string{courses[1:2]}}
}

func polled(t *testing.T, ballots ...Ballot) (points []float64, beats, beaten []int, out PollOut) {
	t.Helper()
	out, err := Poll.Fn(PollIn{Courses: []string{"A", "B", "C"}, Ballots: ballots})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range out.Table {
		points, beats, beaten = append(points, p.Points), append(beats, p.Beats), append(beaten, p.Beaten)
	}
	return points, beats, beaten, out
}

// Published: A. Small, "Borda different than Condorcet?", election-methods list, 24 February 2003: 66 say A B C, 34 say B C A; A beats each other, B has 134
// points, A 132, C 34.
func TestPollPublishedBordaDiffers(t *testing.T) {
	points, beats, _, out := polled(t, order(66, "ABC"), order(34, "BCA"))
	if !slices.Equal(points, []float64{132, 134, 34}) || beats[0] != 2 || !slices.Equal(out.Ways[3].Lead, []string{"B"}) || !slices.Equal(out.Ways[4].Lead, []string{"A"}) || len(out.Agreed) != 0 || len(out.Warnings) != 1 {
		t.Errorf("%+v", out)
	}
}

// Condorcet's own case of 81 voters (Essai, 1785), from memory, counted again by hand: A beats B by 41 to 40 and C by 60 to 21; the points are 101, 109, 33.
func TestPollOfEightyOne(t *testing.T) {
	points, beats, _, out := polled(t, order(30, "ABC"), order(1, "ACB"), order(10, "CAB"), order(29, "BAC"), order(10, "BCA"), order(1, "CBA"))
	if !slices.Equal(points, []float64{101, 109, 33}) || !slices.Equal(beats, []int{2, 1, 0}) || out.Heard != 81 || out.Table[0].First != 31 || out.Table[1].LiveBy != 70 {
		t.Errorf("%+v", out)
	}
}

// Three who go round: each course beats one, none is unbeaten.
func TestPollRound(t *testing.T) {
	points, beats, beaten, out := polled(t, order(1, "ABC"), order(1, "BCA"), order(1, "CAB"))
	if !slices.Equal(points, []float64{3, 3, 3}) || !slices.Equal(beats, []int{1, 1, 1}) || !slices.Equal(beaten, beats) || len(out.Ways[4].Lead) != 0 {
		t.Errorf("%+v", out)
	}
}

// Identities: the points of all ballots sum to ballots times n(n-1)/2, as often as one beats another is beaten, and what is refused is lived with by nobody else.
func TestPollSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := PollIn{Courses: []string{"A", "B", "C", "D", "E"}[:rapid.IntRange(1, 5).Draw(t, "courses")]}
		for range rapid.IntRange(1, 6).Draw(t, "ballots") {
			b := Ballot{Count: rapid.IntRange(1, 9).Draw(t, "say so")}
			for _, c := range in.Courses {
				list := []*[]string{nil, &b.Prefers, &b.Accepts, &b.Refuses}[rapid.IntRange(0, 3).Draw(t, "says")]
				if list != nil {
					*list = append(*list, c)
				}
			}
			in.Ballots = append(in.Ballots, b)
		}
		out, err := Poll.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		points, beats, beaten := 0.0, 0, 0
		for _, p := range out.Table {
			points, beats, beaten = points+p.Points, beats+p.Beats, beaten+p.Beaten
			if p.First > p.LiveBy || p.LiveBy+p.Refuse > out.Heard {
				t.Errorf("%+v of %d", p, out.Heard)
			}
		}
		n := len(in.Courses)
		if points != float64(out.Heard*n*(n-1))/2 || beats != beaten {
			t.Errorf("points %v of %d ballots on %d courses; %d beat, %d are beaten", points, out.Heard, n, beats, beaten)
		}
	})
}

func TestPollRefuses(t *testing.T) {
	for at, in := range map[string]PollIn{
		"courses[1]":            {Courses: []string{"A", "A"}},
		"ballots[0].prefers[0]": {Courses: []string{"A"}, Ballots: []Ballot{{Count: 1, Prefers: []string{"Z"}}}},
		"ballots[0].refuses[0]": {Courses: []string{"A"}, Ballots: []Ballot{{Count: 1, Accepts: []string{"A"}, Refuses: []string{"A"}}}},
	} {
		var wrong *field.Error
		if _, err := Poll.Fn(in); !errors.As(err, &wrong) || wrong.Field != at {
			t.Errorf("%s: %v", at, err)
		}
	}
}

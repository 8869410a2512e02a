package choice

import "cmp"

// Ballot is the order in which somebody puts the courses: Level says how high each course of the list stands with them, a higher number being better liked.
// Courses of one level are put equal.
type Ballot struct {
	Level []int
	Count int // how many people say the same
}

// Tally counts ballots in two ways that look at whole orders.
type Tally struct {
	// Borda gives a course, from each ballot, one point for every course below it and half a point for every one beside it. Source: Borda, Mémoire sur les
	// élections au scrutin, 1781 (published 1784); halves for courses put equal are common practice.
	Borda []float64
	// Over is how many put the course of the row above the course of the column.
	Over [][]int
	// Beats is how many other courses each beats, more people putting it above than below. Source: Condorcet, Essai sur l'application de l'analyse, 1785.
	Beats []int
	// Winner is the course that beats every other; -1 where none does.
	Winner int
}

// Count tallies ballots over n courses. A ballot that does not speak of all courses, or of nobody, is left out.
//
// The points of one ballot sum to n(n-1)/2, and those above and below of a pair to the ballots that don't put them equal. The two ways may differ: a course
// that most would rather have than any other one by one can have fewer points than one that hardly anybody puts last.
func Count(n int, ballots []Ballot) Tally {
	t := Tally{Borda: make([]float64, n), Over: make([][]int, n), Beats: make([]int, n), Winner: -1}
	for i := range t.Over {
		t.Over[i] = make([]int, n)
	}
	for _, b := range ballots {
		if len(b.Level) == n && b.Count > 0 {
			t.add(b)
		}
	}
	for i := range n {
		for j := range n {
			if t.Over[i][j] > t.Over[j][i] {
				t.Beats[i]++
			}
		}
		if t.Beats[i] == n-1 && n > 1 {
			t.Winner = i
		}
	}
	return t
}

func (t *Tally) add(b Ballot) {
	for i, x := range b.Level {
		for j, y := range b.Level {
			switch c := cmp.Compare(x, y); {
			case i == j:
			case c > 0:
				t.Over[i][j] += b.Count
				t.Borda[i] += float64(b.Count)
			case c == 0:
				t.Borda[i] += float64(b.Count) / 2
			}
		}
	}
}

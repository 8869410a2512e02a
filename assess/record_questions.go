package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"oakum/dossier"
	"oakum/plan"
)

// QuestionRow is one that people ask, with the other ways in which it was asked. It is answered once.
type QuestionRow struct {
	ID       string    `json:"id"`
	Question string    `json:"question"`
	Answer   string    `json:"answer"`
	Audience string    `json:"audience"`
	Asked    string    `json:"asked"` // the first time
	Answered string    `json:"answered"`
	Times    int       `json:"times"` // how often it was written down, in whatever words
	Ways     []Asked   `json:"ways"`
	About    []Pointer `json:"about"`
	Perhaps  []Asked   `json:"perhaps"` // questions that seem to ask the same: somebody decides
}

// Asked is one question as it was put.
type Asked struct {
	ID       string `json:"id"`
	Question string `json:"question"`
	Asked    string `json:"asked"`
}

// Pointer names another record.
type Pointer struct {
	Kind  string `json:"kind"`
	ID    string `json:"id"`
	Label string `json:"label"`
}

// questionRows lists the questions, each group once, those without an answer first and among them the most often asked.
func (c *inquiry) questionRows() []QuestionRow {
	at := map[string]int{}
	rows := []QuestionRow{}
	all := dossier.All[plan.Question](c.d)
	for _, e := range all {
		if leading(c.d, e) == e.ID {
			b := e.Body
			at[e.ID] = len(rows)
			rows = append(rows, QuestionRow{ID: e.ID, Question: b.Question, Answer: wordsOr(b.Answer, notYet), Audience: cmp.Or(b.Audience, "public"), Asked: b.Asked.String(), Answered: b.Answered.String(), Times: 1,
				Ways: []Asked{}, About: c.pointers(b.About), Perhaps: []Asked{}})
		}
	}
	for _, e := range all {
		lead := leading(c.d, e)
		if lead == e.ID {
			continue
		}
		r := &rows[at[lead]]
		r.Times++
		r.Ways = append(r.Ways, Asked{e.ID, e.Body.Question, e.Body.Asked.String()})
		r.Asked = earlierOr(r.Asked, e.Body.Asked.String())
		if r.Answer == notYet && e.Body.Answer != "" {
			r.Answer, r.Answered = e.Body.Answer, e.Body.Answered.String()
		}
	}
	perhaps(rows)
	slices.SortStableFunc(rows, func(a, b QuestionRow) int {
		return cmp.Or(cmp.Compare(answered(a), answered(b)), b.Times-a.Times, cmp.Compare(a.Asked, b.Asked))
	})
	return rows
}

func earlierOr(a, b string) string {
	if a == "" || b != "" && b < a {
		return b
	}
	return a
}

// leading is the question that is answered for a question: it follows the links as far as they go, and stays where they go round.
func leading(d *dossier.Dossier, e dossier.Entry[plan.Question]) string {
	seen := []string{e.ID}
	for {
		next, ok := dossier.Find[plan.Question](d, e.Body.Same)
		if !ok {
			return e.ID
		}
		if slices.Contains(seen, next.ID) {
			return slices.Min(seen) // asked in a circle: any of them may lead, so long as all agree
		}
		seen = append(seen, next.ID)
		e = next
	}
}

func answered(q QuestionRow) int {
	if q.Answer == notYet {
		return 0
	}
	return 1
}

func (c *inquiry) pointers(ids []string) []Pointer {
	list := []Pointer{}
	for _, id := range ids {
		if r, ok := c.d.Get(id); ok {
			list = append(list, Pointer{r.Kind, id, c.nameOf(id)})
		}
	}
	return list
}

// perhaps names for each question those of other groups that seem to ask the same.
func perhaps(rows []QuestionRow) {
	words := make([]map[string]bool, len(rows))
	for i, r := range rows {
		words[i] = telling(r.Question)
	}
	for i := range rows {
		for k := range rows {
			if i != k && rows[i].Audience == rows[k].Audience && alike(words[i], words[k]) > sameEnough {
				rows[i].Perhaps = append(rows[i].Perhaps, Asked{rows[k].ID, rows[k].Question, rows[k].Asked})
			}
		}
	}
}

// sameEnough is the share of telling words in common above which two questions are shown side by side. A guess: it only asks, and groups nothing itself.
const sameEnough = 0.5

// alike is the coefficient of Dice over the telling words: twice those in common, over those of both.
func alike(a, b map[string]bool) float64 {
	if len(a)+len(b) == 0 {
		return 0
	}
	both := 0
	for w := range a {
		if b[w] {
			both++
		}
	}
	return 2 * float64(both) / float64(len(a)+len(b))
}

// untelling words say nothing of what a question is about.
var untelling = " a an and any are as at be been but by can could did do does ever for from going had has have her hers how i if in is it its my no not of off on one or our she ship should so some that the their them then there they this to under up us was we what when where which who why will with would you your "

// telling are the words of a question that say what it is about, without their endings.
func telling(question string) map[string]bool {
	words := map[string]bool{}
	for _, w := range strings.FieldsFunc(strings.ToLower(question), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		if strings.Contains(untelling, " "+w+" ") {
			continue
		}
		for _, end := range []string{"ing", "ed", "es", "s"} {
			if short, cut := strings.CutSuffix(w, end); cut && len(short) >= 3 {
				w = short
				break
			}
		}
		words[w] = true
	}
	return words
}

// askedWords says how often a question came up, for those who read the list.
func askedWords(n int) string {
	if n < 2 {
		return ""
	}
	return fmt.Sprintf(" (asked %d times)", n)
}

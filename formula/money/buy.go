package money

import (
	"fmt"
	"strings"

	"oakum/field"
	"oakum/formula/choice"
)

// buy finds what can be signed for today, the ladder, and what the next gifts would add.
func (out *SignOut) buy(in SignIn) error {
	now := []string{}
	if len(in.Works) > 0 {
		all := 0.0
		for _, w := range in.Works {
			if w.Cost == nil {
				return field.Refuse("works", "work %q has no cost", w.ID)
			}
			all += *w.Cost
		}
		full, err := in.scope(all, 10)
		if err != nil {
			return err
		}
		out.Ladder = full.Ladder
		out.Warnings = append(out.Warnings, full.Warnings...)
		if chosen, err := in.scope(out.Free, 0); err == nil {
			now = chosen.Chosen
		} else {
			out.Warnings = append(out.Warnings, fmt.Sprintf("today's money does not pay for what must be done: %v", err))
		}
		out.Chosen = now
	}
	gifts := in.Gifts
	if gifts == nil {
		gifts = []float64{1e3, 10e3, 100e3}
	}
	for _, g := range gifts {
		n := NextGift{Sum: g, Buys: in.free(out.Own+g) - out.Free, Adds: []string{}, Drops: []string{}}
		if len(in.Works) > 0 {
			if then, err := in.scope(out.Free+n.Buys, 0); err == nil {
				n.Adds, n.Drops = without(then.Chosen, now), without(now, then.Chosen)
			}
		}
		n.Text = out.words(in, n)
		out.Next = append(out.Next, n)
	}
	return nil
}

func (in SignIn) scope(budget float64, rungs int) (choice.ScopeOut, error) {
	s := choice.Scope.New()
	s.Works, s.Budget, s.Rungs = in.Works, &budget, rungs
	return choice.Scope.Fn(s)
}

func without(list, gone []string) []string {
	out := []string{}
	for _, x := range list {
		found := false
		for _, y := range gone {
			found = found || x == y
		}
		if !found {
			out = append(out, x)
		}
	}
	return out
}

// words says in plain words what a gift does.
func (out *SignOut) words(in SignIn, n NextGift) string {
	if n.Buys <= 0 && out.Own < 0 {
		return digits(n.Sum) + " more goes to what is already owed"
	}
	var does []string
	switch {
	case n.Buys > n.Sum*1.001:
		does = append(does, "becomes "+digits(n.Buys)+" with the grants")
	case n.Buys < n.Sum*0.999:
		does = append(does, "lets "+digits(n.Buys)+" more be signed for today while the rest waits for cash")
	}
	switch {
	case len(n.Adds) > 0 && len(n.Drops) > 0:
		does = append(does, "pays for "+strings.Join(n.Adds, ", ")+" in place of "+strings.Join(n.Drops, ", "))
	case len(n.Adds) > 0:
		does = append(does, "pays for "+strings.Join(n.Adds, ", "))
	}
	if out.Needed != nil && *out.Needed > out.Free {
		does = append(does, fmt.Sprintf("is %.1f %% of what %s still lacks", 100*min(n.Buys/(*out.Needed-out.Free), 1), in.Scopes[0].Name))
		if out.Giving != nil {
			if before, after := out.Giving.plainly(in.needs(out.Own, *out.Needed)), out.Giving.plainly(in.needs(out.Own+n.Sum, *out.Needed)); after >= 0 && before > after {
				does = append(does, fmt.Sprintf("brings its signing %s forward", monthsOf(before-after)))
			}
		}
	}
	if does == nil {
		does = []string{"adds no work yet"}
	}
	return digits(n.Sum) + " more " + strings.Join(does, " and ")
}

func monthsOf(n int) string {
	if n == 1 {
		return "a month"
	}
	return fmt.Sprintf("%d months", n)
}

package money

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/choice"
	"oakum/formula/estimate"
	"oakum/quantity"
	"oakum/source"
)

// SignIn is the money, what it is wanted for, and how it has come in.
type SignIn struct {
	InHand    float64      `key:"in_hand" unit:"money" symbol:"H" min:"0" max:"1e15" label:"in hand"`
	Pledges   float64      `key:"pledges_counted" unit:"money" symbol:"P" default:"0" min:"0" max:"1e15" label:"pledges, as counted" help:"at what they are worth, never at their face: money.ledger"`
	Late      float64      `key:"pledges_late" unit:"money" symbol:"Pl" default:"0" min:"0" label:"of them, what comes only after the bills"`
	Committed float64      `key:"committed" unit:"money" symbol:"C" default:"0" min:"0" max:"1e15" label:"signed for and not yet paid"`
	Reserve   float64      `key:"reserve" unit:"money" symbol:"R" min:"0" max:"1e15" label:"reserve to undock, tow home and moor again" help:"never spent on anything else"`
	Grants    []OpenGrant  `key:"grants" symbol:"gr" optional:"yes" most:"100" label:"grants against own money"`
	Bridge    float64      `key:"bridge" unit:"money" symbol:"Br" default:"0" min:"0" max:"1e15" label:"loan that bridges until grants are paid"`
	Scopes    []ScopePrice `key:"scopes" optional:"yes" most:"50" label:"scopes that might be signed for, the wanted one first"`

	Works []choice.Work `key:"works" optional:"yes" most:"500" label:"works, for the ladder and the next gift"`
	Gifts []float64     `key:"gifts" unit:"money" optional:"yes" over:"0" most:"20" label:"sums to ask what they buy" help:"1 000, 10 000 and 100 000 where left out"`

	AsOf       quantity.Date `key:"as_of" optional:"yes" label:"day of the account"`
	Receipts   []Gift        `key:"receipts" optional:"yes" most:"100000" label:"what was given, by day" help:"two years or more, for the season"`
	LumpOver   *float64      `key:"lump_over" unit:"money" over:"0" label:"a gift above this is a lump" help:"left out: three times the middle month"`
	Sure       float64       `key:"sure" symbol:"su" default:"0.8" over:"0" under:"1" label:"chance with which the scope must be paid for" help:"the estimate's quantile that is signed for"`
	Escalation float64       `key:"escalation" symbol:"e" default:"0.03" min:"-0.1" max:"0.5" label:"rise of prices a year" help:"from memory"`
	Days       []AskedDay    `key:"days" optional:"yes" most:"200" label:"days to ask what can be signed for then"`
	Horizon    float64       `key:"horizon" unit:"y" symbol:"hz" default:"15" over:"0" max:"60" label:"years to look ahead"`
}

// OpenGrant is a grant that may still be earned.
type OpenGrant struct {
	Name    string  `key:"name" label:"grant"`
	Cap     float64 `key:"cap" unit:"money" min:"0" max:"1e15" label:"still to be earned, at most"`
	Match   float64 `key:"match" default:"1" min:"0" max:"20" label:"own money wanted for each unit given"`
	Arrears bool    `key:"arrears" default:"yes" label:"paid only after the bills"`
	Claims  int     `key:"claims" default:"1" min:"1" max:"100" label:"equal claims while the work runs" help:"1: one claim at the end"`
}

// ScopePrice is a scope and what it costs.
type ScopePrice struct {
	Name   string  `key:"name" label:"scope"`
	Low    float64 `key:"low" unit:"money" min:"0" max:"1e15" label:"lowest"`
	Likely float64 `key:"likely" unit:"money" min:"0" max:"1e15" label:"likeliest"`
	High   float64 `key:"high" unit:"money" min:"0" max:"1e15" label:"highest"`
	Kind   string  `key:"kind" enum:"triangular|pert|fixed" default:"pert" label:"shape"`
}

// Gift is money given on a day, or in a month.
type Gift struct {
	Date   quantity.Date `key:"date" label:"day or month"`
	Amount float64       `key:"amount" unit:"money" min:"0" max:"1e15" label:"amount"`
}

// SignOut is what can be signed for, and when more can.
type SignOut struct {
	Own     float64 `key:"own" unit:"money" symbol:"O" label:"own money free for it" expr:"H+P-C-R"`
	Matched float64 `key:"matched" unit:"money" symbol:"G" label:"grants that it earns"`
	Promise float64 `key:"promise_limit" unit:"money" symbol:"Lp" label:"limit by all that will be there" expr:"O+G"`
	Cash    float64 `key:"cash_limit" unit:"money" symbol:"Lc" label:"limit by the cash while the bills come" help:"grants in arrears must be bridged"`
	Free    float64 `key:"free_to_sign" unit:"money" symbol:"F" label:"free to sign for today" expr:"max(min(Lp, Lc), 0)"`

	Enough []Enough `key:"chance_enough" label:"scope by scope"`
	Needed *float64 `key:"needed" unit:"money" symbol:"N" label:"sum that the wanted scope must be signed with"`

	Giving  *Giving    `key:"giving" label:"how money has come in"`
	Signing *SigningAt `key:"signing_date" label:"when the wanted scope can be signed for"`
	OnDay   []OnDay    `key:"on_day" label:"what can be signed for on the days asked"`

	Chosen []string      `key:"chosen" label:"works that can be signed for today"`
	Ladder []choice.Rung `key:"ladder" label:"works as the money grows"`
	Next   []NextGift    `key:"next_gift" label:"what the next gift buys"`

	Warnings calc.Warnings `key:"-"`
}

// Enough is the chance that what is free pays for a scope.
type Enough struct {
	Scope   string  `key:"scope" label:"scope"`
	Chance  float64 `key:"chance" label:"chance that it is enough"`
	Needed  float64 `key:"needed" unit:"money" label:"sum to sign it with"`
	Lacking float64 `key:"lacking" unit:"money" label:"still lacking"`
}

// NextGift is what a sum on top would do.
type NextGift struct {
	Sum   float64  `key:"sum" unit:"money" label:"gift"`
	Buys  float64  `key:"buys" unit:"money" label:"more that can be signed for" help:"a grant may match it"`
	Adds  []string `key:"adds" label:"works it adds"`
	Drops []string `key:"drops" label:"works it replaces"`
	Text  string   `key:"text" label:"in plain words"`
}

// Sign is what can be signed for today.
//
// Own money is in hand + pledges as counted - committed - reserve. It stands against the grants, the one that asks least for a unit first, each unit
// for one grant only. Signed for may be at most own + grants earned, and by cash at most own - late pledges + bridge + the part of the grants that
// claims bring back before the last bill, (k-1)/k of k equal claims. The date comes from a model of giving, sampled: a level with a damped trend and
// a season, and lumps by chance. It holds while the reserve is kept. Source: common practice of charity accounts. A forecast of giving is worth its
// past: two years at least.
var Sign = calc.Formula[SignIn, SignOut]{
	ID:       "money.sign",
	Title:    "What can be signed for today",
	About:    "How much can be signed for with what is in hand, promised and matched; how likely that is enough; when the wanted scope can be signed; and what the next gift buys.",
	Holds:    "The reserve to undock, tow home and moor again is never counted. Each unit of own money stands against one grant only. Grants in arrears need cash until they are paid.",
	Accuracy: "Exact today. The date is a forecast of giving from its own past: a band, and no promise.",
	Sources:  []source.Ref{{Key: "practice", At: "reserve kept apart; match and arrears of grants"}, {Key: "model", At: "giving: level, damped trend, season, lumps"}, {Key: "memory", At: "escalation 3 %, damping 0.8 a year"}},
	Fn:       sign,
	Steps:    signSteps,
	Samples:  20,
}

func sign(in SignIn) (out SignOut, err error) {
	if in.Late > in.Pledges {
		return out, field.Refuse("pledges_late", "late pledges (%v) must not be more than the pledges counted (%v)", field.Q("pledges_late", in.Late, "money"), field.Q("pledges_counted", in.Pledges, "money"))
	}
	out.Own = in.InHand + in.Pledges - in.Committed - in.Reserve
	out.Matched, out.Cash = in.earn(out.Own)
	out.Promise = out.Own + out.Matched
	out.Free = max(min(out.Promise, out.Cash), 0)
	out.Enough, out.Ladder, out.Chosen, out.Next = []Enough{}, []choice.Rung{}, []string{}, []NextGift{}
	for i, s := range in.Scopes {
		spread, err := s.spread(i)
		if err != nil {
			return out, err
		}
		needed := spread.At(in.Sure)
		out.Enough = append(out.Enough, Enough{s.Name, spread.Below(out.Free), needed, max(needed-out.Free, 0)})
	}
	if len(out.Enough) > 0 {
		out.Needed = new(out.Enough[0].Needed)
	}
	if err := out.forecast(in); err != nil {
		return out, err
	}
	if err := out.onDays(in); err != nil {
		return out, err
	}
	if err := out.buy(in); err != nil {
		return out, err
	}
	out.warn(in)
	return out, nil
}

// earn is what grants give against so much own money, and what cash then allows.
func (in SignIn) earn(own float64) (matched, cash float64) {
	grants := slices.Clone(in.Grants)
	slices.SortStableFunc(grants, func(a, b OpenGrant) int { return cmp.Compare(a.Match, b.Match) })
	left := max(own, 0)
	cash = own - in.Late + in.Bridge
	for _, g := range grants {
		give := Matched(left, g.Match, g.Cap)
		left -= give * g.Match
		matched += give
		switch {
		case !g.Arrears:
			cash += give
		case g.Claims > 1:
			cash += give * float64(g.Claims-1) / float64(g.Claims)
		}
	}
	return matched, cash
}

// free is what can be signed for with so much own money.
func (in SignIn) free(own float64) float64 {
	matched, cash := in.earn(own)
	return max(min(own+matched, cash), 0)
}

func (s ScopePrice) spread(i int) (estimate.Spread, error) {
	if !(s.Low <= s.Likely && s.Likely <= s.High) {
		at := fmt.Sprintf("scopes[%d].likely", i)
		return estimate.Spread{}, field.Refuse(at, "scope %q needs low <= likely <= high, not %v, %v, %v", s.Name, field.Q(at, s.Low, "money"), field.Q(at, s.Likely, "money"), field.Q(at, s.High, "money"))
	}
	return estimate.Spread{Low: s.Low, Likely: s.Likely, High: s.High, Kind: estimate.Kind(s.Kind)}, nil
}

func (out *SignOut) warn(in SignIn) {
	say := func(format string, a ...any) { out.Warnings = append(out.Warnings, fmt.Sprintf(format, a...)) }
	if out.Own < 0 {
		say("what is signed for and the reserve are %.2f more than what is there: nothing can be signed, and that much is missing", -out.Own)
	}
	if in.Reserve == 0 {
		say("no reserve is kept: a ship in dock must be able to pay for undocking, the tow home and mooring again")
	}
	if out.Cash < out.Promise && out.Own > 0 {
		say("%s", out.late(in))
	}
	if out.Signing != nil && out.Signing.P80.IsZero() {
		say("in %.0f of 100 futures the wanted scope can't be signed for within %.3g years", 100*(1-out.Signing.Within), in.Horizon)
	}
}

// late says what comes only after the bills, and whose lateness it is.
func (out *SignOut) late(in SignIn) string {
	late := out.Promise - max(out.Cash, 0)
	grants := max(out.Matched-(out.Cash-(out.Own-in.Late+in.Bridge)), 0)
	what := ""
	switch {
	case in.Late > 0 && grants > 0:
		what = fmt.Sprintf("%s, of grants paid in arrears and of pledges that fall due later, comes only after the bills", digits(late))
	case in.Late > 0:
		what = fmt.Sprintf("%s of the pledges falls due only after the bills", digits(late))
	default:
		what = fmt.Sprintf("%s of the grants comes only after the bills", digits(late))
	}
	return what + ": without a loan to bridge it the cash allows less than the promises"
}

// digits is a sum without its currency, which a formula does not know.
func digits(x float64) string { return quantity.FormatShort(x, "money", 0) }

func signSteps(in SignIn, out SignOut) []calc.Step {
	steps := []calc.Step{
		{Symbol: "G", Value: out.Matched, Unit: "money", Text: "grants earned by own money, the one that asks least for a unit first, each to its cap"},
		{Symbol: "Lc", Value: out.Cash, Unit: "money", Text: "own money less late pledges, the bridge, grants paid at once, and (k-1)/k of those paid by k claims"},
	}
	if out.Needed != nil {
		steps = append(steps, calc.Step{Symbol: "N", Value: *out.Needed, Unit: "money", Text: fmt.Sprintf("cost of %q that is enough with the chance %g", in.Scopes[0].Name, in.Sure)})
	}
	if out.Signing != nil {
		steps = append(steps, calc.Step{Symbol: "within", Value: out.Signing.Within, Unit: "-", Text: fmt.Sprintf("signing date: %d futures of giving, month by month, until what is free meets what is needed", futures)})
	}
	return steps
}

package money

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/quantity"
	"oakum/source"
)

// LedgerIn is every movement and promise.
type LedgerIn struct {
	AsOf        quantity.Date `key:"as_of" label:"day of the account"`
	Pots        []Pot         `key:"pots" symbol:"pots" most:"1000" label:"pots"`
	Receipts    []Movement    `key:"receipts" symbol:"rec" optional:"yes" most:"100000" label:"money that came in"`
	Payments    []Movement    `key:"payments" symbol:"pay" optional:"yes" most:"100000" label:"money that went out"`
	Commitments []Commitment  `key:"commitments" symbol:"com" optional:"yes" most:"10000" label:"money signed for"`
	Pledges     []Pledge      `key:"pledges" optional:"yes" most:"10000" label:"money promised"`
	Grants      []Grant       `key:"grants" optional:"yes" most:"1000" label:"grants"`
	Reserve     *float64      `key:"reserve_needed" unit:"money" symbol:"R0" min:"0" max:"1e15" label:"reserve to undock, tow home and moor again" help:"left out: what the reserve pots hold"`
	Discount    float64       `key:"discount" symbol:"i" default:"0.04" min:"0" max:"1" label:"discount a year on pledges"`
	Allowance   float64       `key:"allowance" symbol:"al" default:"0.1" min:"0" max:"1" label:"share of pledges not expected to come" help:"5 to 15 % is common practice"`
}

// LedgerOut is the account of the day.
type LedgerOut struct {
	InHand    float64 `key:"in_hand" unit:"money" symbol:"H" label:"in hand"`
	Committed float64 `key:"committed" unit:"money" symbol:"C" label:"signed for and not yet paid" expr:"sum(bp, #.committed)"`
	Retained  float64 `key:"retained" unit:"money" symbol:"Kr" label:"of that, kept back from bills"`
	Reserve   float64 `key:"reserve" unit:"money" symbol:"R" label:"reserve, never spent on anything else"`
	Free      float64 `key:"free" unit:"money" symbol:"F" label:"free" expr:"H-C-R"`
	Anywhere  float64 `key:"free_for_anything" unit:"money" symbol:"Fa" label:"of that, free for anything" help:"what the unrestricted pots hold, less what they owe, less the reserve that no pot keeps"`

	PledgesOpen    float64 `key:"pledges_open" unit:"money" symbol:"Po" label:"pledges not yet received, at their face"`
	PledgesPresent float64 `key:"pledges_present" unit:"money" symbol:"Pp" label:"pledges that hang on nothing, worth today" expr:"sum(pl, #.present)"`
	PledgesCounted float64 `key:"pledges_counted" unit:"money" symbol:"Pc" label:"the same less the allowance" expr:"sum(pl, #.counted)"`
	PledgesWaiting float64 `key:"pledges_waiting" unit:"money" symbol:"Pw" label:"pledges whose condition is not met: counted as nothing"`
	GrantsMatched  float64 `key:"grants_matched" unit:"money" symbol:"G" label:"grants earned by own money" expr:"sum(gr, #.matched)"`
	GrantsToCome   float64 `key:"grants_to_come" unit:"money" symbol:"Gt" label:"of that, not yet paid" expr:"sum(gr, #.to_come)"`
	Project        float64 `key:"project" unit:"money" symbol:"Pj" label:"own money held against grants, and the grants" expr:"sum(gr, #.project)"`

	Lowest  float64       `key:"lowest_cash" unit:"money" symbol:"Lo" label:"least cash to come"`
	Gap     float64       `key:"deepest_gap" unit:"money" symbol:"Gp" label:"deepest gap below the reserve" expr:"max(R-Lo, 0)"`
	GapDate quantity.Date `key:"deepest_gap_date" label:"day of the least cash"`

	ByPot   []PotState    `key:"by_pot" symbol:"bp" label:"pot by pot"`
	Pledges []PledgeState `key:"pledges" symbol:"pl" label:"pledge by pledge"`
	Grants  []GrantState  `key:"grants" symbol:"gr" label:"grant by grant"`
	Flow    []Flow        `key:"flow" label:"cash to come"`

	Warnings calc.Warnings `key:"-"`
}

// Ledger is the account of what is in hand, promised, signed for and spent.
//
// Free is in hand less committed less reserve. A pledge is worth its open amount discounted from its due date, less an allowance for what will
// not come; one that hangs on a condition is nothing until it is met. A grant gives a unit for each match units of own money, to its cap. Cash to
// come takes bills at once where no date is given, and receipts only with a date. It holds for one currency. Source: common practice of charity
// accounts; present value as in any text on interest. It is as complete as its entries.
var Ledger = calc.Formula[LedgerIn, LedgerOut]{
	ID:       "money.ledger",
	Title:    "What is in hand, promised, signed for and spent",
	About:    "The account of the day, pot by pot: in hand, committed, free, reserve; pledges and grants at what they are worth; the deepest gap in the cash to come.",
	Holds:    "One currency. Every movement names its pot, date and paper. Conditional pledges count as nothing until met; grants only as far as own money stands against them.",
	Accuracy: "Exact for what is entered. The allowance on pledges is common practice (5 to 15 %), not a law.",
	Sources:  []source.Ref{{Key: "practice", At: "allowance on pledges"}, {Key: "interest-tables", At: "present worth of a series"}},
	Fn:       ledger,
	Steps:    ledgerSteps,
}

func ledger(in LedgerIn) (out LedgerOut, err error) {
	if in.AsOf.IsZero() {
		return out, field.Refuse("as_of", "as_of is missing: give the day of the account")
	}
	pots, err := potIndex(in.Pots)
	if err != nil {
		return out, err
	}
	b := book{in: in, out: &out, pots: pots, paid: map[string]float64{}}
	for _, step := range []func() error{b.movements, b.commitments, b.pledges, b.grants} {
		if err := step(); err != nil {
			return out, err
		}
	}
	b.reserve()
	out.Flow = run(out.Flow, out.InHand, in.AsOf)
	out.Gap, out.Lowest, out.GapDate = deepest(out.Flow, out.InHand, out.Reserve, in.AsOf)
	b.warn()
	return out, nil
}

func ledgerSteps(in LedgerIn, out LedgerOut) []calc.Step {
	return []calc.Step{
		{Symbol: "H", Formula: "sum(bp, #.in_hand)", Value: out.InHand, Unit: "money", Text: "every pot: its opening, what came in, less what went out, up to the day"},
		{Symbol: "R", Value: out.Reserve, Unit: "money", Text: "reserve as needed, or what the reserve pots hold"},
		{Symbol: "Lo", Value: out.Lowest, Unit: "money", Text: fmt.Sprintf("least balance of the cash to come, %d movements in order of date", len(out.Flow))},
	}
}

package money

import (
	"cmp"
	"slices"

	"oakum/quantity"
)

// Flow is one expected movement of cash.
type Flow struct {
	Date    quantity.Date `key:"date" label:"date"`
	What    string        `key:"what" label:"what"`
	Pot     string        `key:"pot" label:"pot"`
	Amount  float64       `key:"amount" unit:"money" label:"amount, out is negative"`
	Balance float64       `key:"balance" unit:"money" label:"cash after it"`
}

// run puts the movements in order, bills before receipts of the same day, and fills the balances. What was due before the day comes on the day.
func run(flow []Flow, cash float64, day quantity.Date) []Flow {
	for i := range flow {
		if flow[i].Date.Compare(day) < 0 {
			flow[i].Date = day
		}
	}
	slices.SortStableFunc(flow, func(a, b Flow) int {
		return cmp.Or(a.Date.Compare(b.Date), cmp.Compare(a.Amount, b.Amount))
	})
	for i := range flow {
		cash += flow[i].Amount
		flow[i].Balance = cash
	}
	return flow
}

// deepest finds where the cash stands furthest below the reserve, the earliest such day.
func deepest(flow []Flow, cash, reserve float64, day quantity.Date) (gap, lowest float64, on quantity.Date) {
	lowest, on = cash, day
	for _, f := range flow {
		if f.Balance < lowest {
			lowest, on = f.Balance, f.Date
		}
	}
	return max(reserve-lowest, 0), lowest, on
}

package network

import (
	"fmt"
	"slices"

	"oakum/field"
	"oakum/formula/estimate"
	"oakum/quantity"
)

// Activity is one bar of the calendar.
type Activity struct {
	ID        string        `key:"id" label:"activity"`
	Duration  *float64      `key:"duration" unit:"d" min:"0" max:"5000" label:"days it takes"`
	Low       *float64      `key:"low" unit:"d" min:"0" max:"5000" label:"least days"`
	Likely    *float64      `key:"likely" unit:"d" min:"0" max:"5000" label:"likeliest days"`
	High      *float64      `key:"high" unit:"d" min:"0" max:"5000" label:"most days"`
	After     []string      `key:"after" optional:"yes" most:"500" label:"activities it comes after"`
	From      string        `key:"from" optional:"yes" label:"event it starts from" help:"in arrow notation, instead of after"`
	To        string        `key:"to" optional:"yes" label:"event it leads to"`
	Resources []Amount      `key:"resources" optional:"yes" most:"50" label:"what it takes while it runs"`
	NotBefore quantity.Date `key:"not_before" optional:"yes" label:"not before"`
	Deadline  quantity.Date `key:"deadline" optional:"yes" label:"to be done by"`
}

// Amount is so much of a resource.
type Amount struct {
	Name   string  `key:"name" label:"resource" help:"crane, welders, staging"`
	Amount float64 `key:"amount" min:"0" label:"how much"`
}

// task is an activity as the computations need it, in days.
type task struct {
	id     string
	spread estimate.Spread
	days   float64 // mean of the spread
	sd     float64 // classic: a sixth of the range
	before []int   // tasks it comes after
	takes  []float64
	least  float64 // day before which it can't start
}

// tasks reads the activities: names become numbers, resources a row each, days days.
func (in TimetableIn) tasks() (list []task, capacity []float64, err error) {
	var resources []string
	for i, c := range in.Capacities {
		if slices.Contains(resources, c.Name) {
			return nil, nil, field.Refuse(fmt.Sprintf("capacities[%d].name", i), "the capacity of %q stands twice", c.Name)
		}
		resources, capacity = append(resources, c.Name), append(capacity, c.Amount)
	}
	at := map[string]int{}
	for i, a := range in.Activities {
		if _, twice := at[a.ID]; twice || a.ID == "" {
			return nil, nil, field.Refuse(fmt.Sprintf("activities[%d].id", i), "activity %q stands twice, or has no id", a.ID)
		}
		at[a.ID] = i
	}
	for i, a := range in.Activities {
		t, err := a.task(i, resources, capacity)
		if err != nil {
			return nil, nil, err
		}
		for k, name := range a.After {
			before, known := at[name]
			if !known {
				return nil, nil, field.Refuse(fmt.Sprintf("activities[%d].after[%d]", i, k), "%q comes after %q, which is no activity here", a.ID, name)
			}
			if !slices.Contains(t.before, before) {
				t.before = append(t.before, before)
			}
		}
		list = append(list, t)
	}
	return list, capacity, in.arrows(list)
}

// arrows turns events into what comes before: an arrow comes after all arrows that lead to the event it starts from.
func (in TimetableIn) arrows(list []task) error {
	some := slices.ContainsFunc(in.Activities, func(a Activity) bool { return a.From != "" || a.To != "" })
	if !some {
		return nil
	}
	for i, a := range in.Activities {
		switch {
		case a.From == "" || a.To == "":
			return field.Refuse(fmt.Sprintf("activities[%d].from", i), "%q: in arrow notation every activity needs the event it starts from and the event it leads to", a.ID)
		case len(a.After) > 0:
			return field.Refuse(fmt.Sprintf("activities[%d].after", i), "%q: give events or after, not both", a.ID)
		}
		for k, b := range in.Activities {
			if b.To == a.From {
				list[i].before = append(list[i].before, k)
			}
		}
	}
	return nil
}

func (a Activity) task(i int, resources []string, capacity []float64) (t task, err error) {
	at := func(key string) string { return fmt.Sprintf("activities[%d].%s", i, key) }
	t = task{id: a.ID, takes: make([]float64, len(resources))}
	for _, d := range []struct {
		key  string
		days *float64
	}{{"duration", a.Duration}, {"low", a.Low}, {"likely", a.Likely}, {"high", a.High}} {
		if d.days != nil && !(*d.days >= 0) {
			return t, field.Refuse(at(d.key), "%q can't take %v: days must not be less than 0", a.ID, field.Q(at(d.key), *d.days, "d"))
		}
	}
	switch {
	case a.Duration != nil && (a.Low != nil || a.High != nil || a.Likely != nil):
		return t, field.Refuse(at("duration"), "%q: give a duration, or low, likely and high, not both", a.ID)
	case a.Duration != nil:
		t.days = *a.Duration / day
		t.spread = estimate.Spread{Low: t.days, Likely: t.days, High: t.days, Kind: estimate.Fixed}
	case a.Low == nil || a.Likely == nil || a.High == nil:
		return t, field.Refuse(at("duration"), "%q has no duration: give its days, or low, likely and high", a.ID)
	case !(*a.Low <= *a.Likely && *a.Likely <= *a.High):
		return t, field.Refuse(at("likely"), "%q needs low <= likely <= high, not %v, %v, %v", a.ID,
			field.Q(at("low"), *a.Low, "d"), field.Q(at("likely"), *a.Likely, "d"), field.Q(at("high"), *a.High, "d"))
	default:
		t.spread = estimate.Spread{Low: *a.Low / day, Likely: *a.Likely / day, High: *a.High / day, Kind: estimate.PERT}
		t.days, t.sd = t.spread.Mean(), (t.spread.High-t.spread.Low)/6
	}
	for k, r := range a.Resources {
		m := slices.Index(resources, r.Name)
		if m < 0 {
			return t, field.Refuse(at(fmt.Sprintf("resources[%d].name", k)), "%q takes %q, of which no capacity is given", a.ID, r.Name)
		}
		t.takes[m] += r.Amount
		if t.takes[m] > capacity[m] {
			return t, field.Refuse(at(fmt.Sprintf("resources[%d].amount", k)), "%q takes %g of %q, and there are %g", a.ID, t.takes[m], r.Name, capacity[m])
		}
	}
	if t.spread.High == 0 {
		clear(t.takes) // a milestone holds nothing
	}
	return t, nil
}

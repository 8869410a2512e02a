package futures

import (
	"slices"
)

// variables says in which group each draw of a model stands. Groups are what the sensitivity figures name.
type variables struct {
	names  []string
	part   []group
	zone   []group
	watch  group
	chance group
	price  group
	giving group
	plates group // of the plates that wear through, for those that are only read
}

// Names of the groups that every model has.
const (
	ChanceOfEvents = "what happens to happen"
	WhoIsWatching  = "when a dead protection is noticed"
	YardPrices     = "what the yard will charge"
	Giving         = "how giving goes"
)

func variablesOf(m *Model) variables {
	v := variables{names: []string{ChanceOfEvents, WhoIsWatching, YardPrices, Giving}, chance: 0, watch: 1, price: 2, giving: 3}
	at := map[string]group{}
	of := func(name string) group {
		g, ok := at[name]
		if !ok {
			g = group(len(v.names))
			at[name] = g
			v.names = append(v.names, name)
		}
		return g
	}
	for _, z := range m.Zones {
		v.zone = append(v.zone, of("how fast "+z.Name+" wastes"))
	}
	for _, p := range m.Parts {
		v.part = append(v.part, of(p.Group))
		if p.Wastage != nil {
			v.plates = v.part[len(v.part)-1]
		}
	}
	return v
}

// group finds a group by name.
func (v variables) group(name string) (group, bool) {
	i := slices.Index(v.names, name)
	return group(max(i, 0)), i >= 0
}

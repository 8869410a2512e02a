package protection

// Alloy is an anode alloy: charge in a kilogram (A.h/kg) and potential at work against silver chloride in sea water (V). From memory, to be
// confirmed against the maker's data or the edition of DNV-RP-B401 that one holds.
type Alloy struct{ Capacity, Potential float64 }

// Alloys by word.
var Alloys = map[string]Alloy{
	"zinc":      {780, -1.00},
	"aluminium": {2000, -1.05},
	"magnesium": {1200, -1.50},
}

// alloyDoubts says in words what an alloy does in a water it is not made for.
func alloyDoubts(alloy, water string) string {
	switch {
	case alloy == "zinc" && water == "fresh":
		return "zinc coats itself and stops working in fresh water (common practice): magnesium is used there"
	case alloy == "aluminium" && water == "fresh":
		return "aluminium alloy stops working where there is very little chloride (common practice)"
	case alloy == "aluminium" && water == "brackish":
		return "ask the maker whether this aluminium alloy works in water this brackish"
	case alloy == "magnesium" && water != "fresh":
		return "magnesium over-protects in salt water and wastes away (common practice): paint lifts round it"
	}
	return ""
}

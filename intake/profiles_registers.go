package intake

// Registers and money: openings, anodes, receipts, payments, bids, weights.
func init() {
	profiles = append(profiles,
		profile{
			kind: "opening", needs: []string{"name"}, names: []string{"openings", "opening", "sea valves", "valves", "register", "hull fittings", "blanks"},
			words: []word{
				{"name", []string{"id", "opening", "tag", "opening no", "valve tag", "sea chest no", "hole no", "nr", "opening id"}},
				{"other_names", []string{"drawing name", "other names", "also called", "drawing no"}},
				{"function", []string{"function", "purpose", "use", "service", "system"}},
				{"diameter", []string{"size", "dia", "diameter", "bore", "nb"}},
				{"state", []string{"state", "condition", "status"}},
				{"last_seen", []string{"last seen", "last inspected", "seen"}},
			},
		},
		profile{
			kind: "anode", needs: []string{"mass_new"}, names: []string{"anodes", "anode", "anoden"},
			words: []word{
				{"name", []string{"id", "anode", "anode no", "no", "tag"}},
				{"alloy", []string{"alloy", "type", "type/alloy", "material", "metal"}},
				{"mass_new", []string{"mass", "weight", "mass new", "weight new", "kg new", "kg", "new weight", "net weight", "masse"}},
				{"count", []string{"qty", "count", "number", "how many", "pcs", "quantity"}},
				{"fitted", []string{"date", "fitted", "date fitted", "installed", "date installed"}},
				{"removed", []string{"replaced", "removed", "taken off"}},
			},
		},
		profile{
			kind: "anode_seen", main: "share_left", subject: "anode", needs: []string{"share_left", "mass_left", "counted"}, names: []string{"anode survey", "anodes seen", "anode dive", "anode condition"},
			words: []word{
				{"share_left", []string{"% left", "left", "remaining", "% remaining", "share left", "remaining %", "left %", "condition %", "rest"}},
				{"anode", []string{"id", "anode", "anode no", "no", "tag"}},
				{"mass_left", []string{"kg left", "mass left", "weight left"}},
				{"counted", []string{"counted", "seen", "number seen"}},
				{"missing", []string{"missing", "gone"}},
			},
		},
		profile{
			kind: "receipt", needs: []string{"amount"}, names: []string{"receipts", "donations", "income", "gifts", "giving", "received", "spenden"},
			words: []word{
				{"amount", []string{"amount", "received", "sum", "gift", "donation", "betrag", "credit", "paid in", "in", "amount received", "value"}},
				{"giver", []string{"from", "donor", "giver", "name", "received from", "payer", "spender"}},
				{"pot", []string{"pot", "fund", "account", "for", "restricted to", "appeal"}},
				{"type", []string{"type", "kind", "category", "source", "method"}},
				{"paper", []string{"paper", "receipt no", "ref", "reference", "document"}},
			},
		},
		profile{
			kind: "payment", needs: []string{"amount"}, names: []string{"payments", "expenses", "spent", "outgoings", "invoices", "ausgaben"},
			words: []word{
				{"amount", []string{"amount", "paid", "debit", "paid out", "out", "cost", "betrag", "invoice amount"}},
				{"pot", []string{"pot", "fund", "account"}},
			},
		},
		profile{
			kind: "bid_line", main: "extension", subject: "bid", lower: map[string]string{"unit": "unit_rate", "each": "unit_rate", "total": "extension"}, needs: []string{"extension", "unit_rate"}, names: []string{"bid", "offer", "quotation", "schedule", "tender", "quote", "price"},
			words: []word{
				{"item", []string{"item", "item no", "pos", "no", "line", "ref", "item number"}},
				{"description", []string{"description", "work", "works", "text", "scope", "leistung", "item description", "service"}},
				{"quantity", []string{"qty", "quantity", "quant", "menge"}},
				{"per", []string{"unit", "per", "uom", "einheit"}},
				{"unit_rate", []string{"rate", "unit rate", "unit price", "rate eur", "unit cost", "price per unit", "einheitspreis", "rate gbp", "rate usd", "eur/unit", "eur / unit", "price/unit", "each"}},
				{"extension", []string{"amount", "total", "price", "sum", "amount eur", "price eur", "extension", "extended", "line total", "cost", "betrag", "eur", "total eur"}},
				{"estimate", []string{"engineer s estimate", "estimate", "own estimate", "ee"}},
				{"type", []string{"type", "kind"}},
			},
		},
		profile{
			kind: "weight", needs: []string{"mass"}, names: []string{"weights", "weight", "weight register", "weight changes"},
			words: []word{
				{"mass", []string{"mass", "weight", "tons", "tonnes", "kg", "lb", "gewicht"}},
			},
		},
	)
}

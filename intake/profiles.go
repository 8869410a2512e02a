package intake

// profiles are the kinds whose tables are kept in ways that the names of their fields don't show. Headings are common practice, in several languages.
var profiles = []profile{
	{
		kind: "thickness", main: "thickness", needs: []string{"thickness"},
		names: []string{"thickness", "gauging", "gaugings", "utm", "ut", "ultrasonic", "dickenmessung", "shell", "plating"},
		words: []word{
			{meansLossShare, []string{"%", "loss %", "dim %", "% loss", "percent", "diminution %", "wastage %", "% dim", "mean diminution %", "verlust %", "rel loss", "% wastage", "dimin %", "diminution % "}},
			{meansLoss, []string{"loss", "dim", "diminution", "wastage", "verlust", "abnahme", "diff", "difference", "dim mm", "mean diminution", "max allowable diminution", "max allowable dim", "allowable", "max allowable", "max allow", "max allw dim",
				"dimin", "max dim", "allowed"}},
			{"number", []string{"rdg", "rdg no", "reading no", "reading number", "no", "nr", "#", "point", "pt", "pt no", "point no", "spot", "spot no", "id", "messpunkt", "lfd nr", "item", "pos nr", "mp", "no of point"}},
			{"original", []string{"orig", "original", "original thickness", "orig thk", "org thk", "orig thickness", "nominal", "nominal thickness", "nom", "as built", "soll", "solldicke", "ep origine", "original thk", "nom thk", "t0", "built", "org", "orig t"}},
			{"thickness", []string{"gauged", "gauge", "gauged thickness", "thickness", "thk", "measured", "measured thickness", "actual", "ist", "istdicke", "dicke", "epaisseur", "mesure", "platedykkelse", "tykkelse", "dikte",
				"gemessen", "gem", "gem dicke", "meas", "reading", "thickness measured", "ut", "t", "rdg 1", "rdg 2", "rdg 3", "reading 1", "reading 2", "reading 3", "readings", "thickness reading", "gauging", "found", "rest", "restdicke", "present thickness", "gauged thk"}},
			{"plate", []string{"plate", "plate no", "plate number", "plate position", "platte", "plate id", "tole", "plate mark", "plate ref", "platte nr", "panel"}},
			{"paint", []string{"coating", "coating y/n", "paint", "over paint", "coated", "paint y/n", "coat", "coating y n"}},
			{"pit_depth", []string{"pit", "pit depth", "pitting", "depth of pit"}},
			{"instrument", []string{"gauge make", "gauge serial", "instrument", "meter"}},
			{"firm", []string{"firm", "company"}},
			{"survey", []string{"survey", "campaign", "report"}},
		},
	},
}

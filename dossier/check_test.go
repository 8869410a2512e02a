package dossier

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"oakum/quantity"
	"oakum/ship"
)

func day(t *testing.T, s string) quantity.Date {
	t.Helper()
	d, err := quantity.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// soundShip is a small invented ship with which nothing is the matter on 1 June 2026.
var soundShip = map[string]string{
	"particulars/s":    `{"name":"Invented","built":"1931","lbp":50,"beam":9,"depth":5,"design_draft":3,"kg":3.5}`,
	"frame_system/f":   `{"spacing":[0.5],"last":100,"half_frames":true,"lettered":["A","B"]}`,
	"hull_form/h":      `{"stations":[0,50],"waterlines":[0,5],"half_breadths":[[1,4],[1,4]]}`,
	"strake/k":         `{"name":"K","x":[0,50],"lower":[0,0],"upper":[0.6,0.6]}`,
	"strake/a":         `{"name":"A","x":[0,50],"lower":[0.6,0.6],"upper":[1.8,1.8]}`,
	"plate/a1":         `{"name":"A1","frame":"0","frame_to":"100","strake":"A","thickness":12}`,
	"compartment/hold": `{"name":"Hold","x0":10,"x1":30,"critical_level":3,"permeability":0.9}`,
	"compartment/peak": `{"name":"Peak","x0":30,"x1":50,"critical_level":3,"permeability":0.9}`,
	"tank/t":           `{"name":"Fresh water","capacity":20,"reference_height":2,"table_sounding":[0,2],"table_volume":[0,20]}`,
	"pump/p":           `{"name":"Main","rated":60,"power":"shore","last_run":"2026-05-20"}`,
	"opening/o":        `{"name":"Inlet","diameter":100,"height":1.5,"space":"Hold","frame":"40"}`,
	"barrier/b":        `{"opening":"o","type":"valve","grade":2,"last_tested":"2026-05-01"}`,
	"shaft_line/l":     `{"name":"Centre"}`,
	"segment/g":        `{"line":"l","x0":0,"x1":9,"outer_diameter":200}`,
	"bearing/e":        `{"line":"l","name":"Aft","x":2}`,
	"propeller/r":      `{"name":"Screw","line":"l","mass":1200,"bonded":"strap"}`,
	"gland/n":          `{"name":"Stern gland","line":"l","bore":300,"shaft":260,"packed":"2015","asbestos":"no"}`,
	"draft_mark/m":     `{"position":"aft","x":1}`,
	"draft/d":          `{"date":"2026-05-20","fwd_port":2.9,"fwd_starboard":2.92,"mid_port":3,"mid_starboard":3.01,"aft_port":3.1,"aft_starboard":3.1,"density":1012}`,
	"thickness/x":      `{"date":"2024-05-05","frame":"40½","strake":"A","side":"port","thickness":11.2}`,
	"sounding/y":       `{"date":"2026-05-20","tank":"t","sounding":1.1}`,
	"coating_zone/z":   `{"name":"Bottom","area":300,"condition":"fair"}`,
	"anode/q":          `{"alloy":"zinc","mass_new":11,"fitted":"2020"}`,
	"potential/v":      `{"date":"2026-05-20","reading":-850,"electrode":"agcl-sea"}`,
}

func build(t *testing.T, changes map[string]string) *Dossier {
	t.Helper()
	d := New()
	put := func(name, raw string) {
		kind, id, _ := strings.Cut(name, "/")
		body, typed, err := DecodeBody(kind, []byte(raw))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if err := d.Put(Record{Head{ID: id, Kind: kind, Typed: typed}, body}); err != nil {
			t.Fatal(err)
		}
	}
	for name, raw := range soundShip {
		if changed, ok := changes[name]; !ok || changed != "" {
			put(name, raw)
		}
	}
	for name, raw := range changes {
		if raw != "" {
			put(name, raw)
		}
	}
	return d
}

func TestNothingIsTheMatterWithASoundShip(t *testing.T) {
	for _, f := range Check(build(t, nil), day(t, "2026-06-01")) {
		t.Errorf("%s %s: %s %s", f.Rule, f.Severity, f.What, f.Do)
	}
}

func TestCheckFindsPlantedFaults(t *testing.T) {
	tried := map[string]bool{}
	for _, c := range []struct {
		rule     string
		severity Severity
		words    string
		changes  map[string]string
	}{
		{"ship", Missing, "ship herself", map[string]string{"particulars/s": ""}},
		{"ship", Missing, "hull form", map[string]string{"hull_form/h": ""}},
		{"ship", Wrong, "draft is not less", map[string]string{"particulars/s": `{"name":"I","lbp":50,"beam":9,"depth":5,"design_draft":9,"kg":3}`}},
		{"reference", Wrong, "no such record", map[string]string{"barrier/b2": `{"opening":"nowhere","type":"plug","grade":1,"last_moved":"2026"}`}},
		{"reference", Wrong, "which is a pump", map[string]string{"barrier/b2": `{"opening":"p","type":"plug","grade":1,"last_moved":"2026"}`}},
		{"place", Wrong, "beyond the last", map[string]string{"thickness/x2": `{"date":"2024","frame":"140","strake":"A","thickness":11}`}},
		{"place", Wrong, "only K, A", map[string]string{"thickness/x2": `{"date":"2024","frame":"14","strake":"G","thickness":11}`}},
		{"place", Wrong, "not one of the lettered", map[string]string{"thickness/x2": `{"date":"2024","frame":"E","strake":"A","thickness":11}`}},
		{"place", Wrong, "outside the ship", map[string]string{"thickness/x2": `{"date":"2024","frame":"90","offset":20,"strake":"A","thickness":11}`}},
		{"place", Doubt, "no compartment", map[string]string{"leak/k2": `{"space":"Engine room"}`}},
		{"future", Wrong, "not come yet", map[string]string{"draft/d2": `{"date":"2027-01-01","density":1000}`}},
		{"future", Wrong, "before the ship was built", map[string]string{"draft/d2": `{"date":"1897-01-01","density":1000}`}},
		{"currency", Wrong, "money is EUR", map[string]string{"dive/v2": `{"date":"2026-05-01","price":"900 USD"}`}},
		{"lists", Wrong, "entries", map[string]string{"tank/t2": `{"name":"T2","table_sounding":[0,1],"table_volume":[0,1,2]}`}},
		{"lists", Wrong, "half breadths for", map[string]string{"hull_form/h": `{"stations":[0],"waterlines":[0,1],"half_breadths":[[1]]}`}},
		{"range", Wrong, "less than its", map[string]string{"work/w": `{"name":"W","low":5,"likely":3,"high":9}`}},
		{"plating", Wrong, "thicker than any plate", map[string]string{"thickness/x2": `{"date":"2024","frame":"14","strake":"A","thickness":47}`}},
		{"plating", Missing, "no date", map[string]string{"thickness/x2": `{"frame":"14","strake":"A","thickness":11}`}},
		{"plating", Missing, "no figure", map[string]string{"thickness/x2": `{"date":"2024","frame":"14","strake":"A"}`}},
		{"twice", Doubt, "same as others", map[string]string{"thickness/x2": `{"date":"2024-05-05","frame":"40 1/2","strake":"A","side":"P","thickness":11.2}`}},
		{"temporary", Missing, "no end", map[string]string{"repair/c": `{"name":"Box","fitted":"2020"}`}},
		{"temporary", Overdue, "good until 2025", map[string]string{"doubler/c": `{"fitted":"2015","expires":"2025","behind":"pitted"}`}},
		{"gland", Missing, "when the Stern gland was packed", map[string]string{"gland/n": `{"name":"Stern gland","line":"l","bore":300,"shaft":260}`}},
		{"gland", Overdue, "30 years old", map[string]string{"gland/n": `{"name":"Stern gland","line":"l","bore":300,"shaft":260,"packed":"1996-06"}`}},
		{"shaft", Missing, "mass of the", map[string]string{"propeller/r": `{"name":"Screw","bonded":"no"}`}},
		{"opening", Missing, "keeps the water out", map[string]string{"barrier/b": ""}},
		{"opening", Missing, "no grade", map[string]string{"barrier/b": `{"opening":"o","type":"valve","last_tested":"2026-05-01"}`}},
		{"opening", Overdue, "last moved in 2020", map[string]string{"barrier/b": `{"opening":"o","type":"valve","grade":2,"last_moved":"2020-05-01"}`}},
		{"spaces", Wrong, "lie in one another", map[string]string{"compartment/peak": `{"name":"Peak","x0":20,"x1":50,"critical_level":3,"permeability":0.9}`}},
		{"soundings", Wrong, "more than its tube", map[string]string{"sounding/y": `{"date":"2026-05-20","tank":"t","sounding":2.5}`}},
		{"soundings", Wrong, "make up", map[string]string{"sounding/y": `{"date":"2026-05-20","tank":"t","sounding":0.5,"ullage":1}`}},
		{"drafts", Wrong, "deep", map[string]string{"draft/d": `{"date":"2026-05-20","fwd_port":9.8,"density":1012}`}},
		{"drafts", Wrong, "bent by", map[string]string{"draft/d": `{"date":"2026-05-20","fwd_port":3,"mid_port":3.5,"aft_port":3,"density":1012}`}},
		{"water-aboard", Doubt, "tanks and weights account for 0", map[string]string{
			"draft/d0": `{"date":"2025-05-20","fwd_port":2.7,"aft_port":2.8,"density":1012}`, "sounding/y0": `{"date":"2025-05-21","tank":"t","sounding":1.1}`}},
		{"protection", Missing, "electrode", map[string]string{"potential/v": `{"date":"2026-05-20","reading":-850}`}},
		{"protection", Wrong, "never so positive", map[string]string{"potential/v": `{"date":"2026-05-20","reading":850,"electrode":"agcl-sea"}`}},
		{"weights", Wrong, "before it came", map[string]string{"weight/w": `{"name":"Gun","mass":3,"lcg":9,"vcg":6,"added":"2010","removed":"2001"}`}},
		{"reference", Wrong, "as its pot", map[string]string{"commitment/c": `{"date":"2026-01-01","amount":5,"pot":"gone"}`}},
		{"money", Wrong, "than came in", map[string]string{"pot/m1": `{"name":"Free","opening":10}`, "payment/m2": `{"date":"2026-01-01","amount":25,"pot":"m1"}`, "reserve/m3": `{"name":"Home"}`}},
		{"money", Wrong, "may not pay for", map[string]string{"pot/m1": `{"name":"Shafts","opening":10,"restricted":true,"groups":["shafts"]}`,
			"work/w": `{"name":"Paint","group":"coating","likely":5}`, "payment/m2": `{"date":"2026-01-01","amount":5,"pot":"m1","work":"w"}`}},
		{"money", Overdue, "was due", map[string]string{"pledge/m1": `{"giver":"A friend","amount":5,"due":"2025"}`}},
		{"bids", Wrong, "are 210000.00", map[string]string{"bid/i": `{"yard":"One","day_rate":5}`, "bid_line/j": `{"bid":"i","quantity":1000,"unit_rate":210,"extension":2100}`}},
		{"choices", Missing, "nothing to choose", map[string]string{"matter/m1": `{"name":"Propellers"}`}},
		{"choices", Wrong, "two courses on one matter", map[string]string{"matter/m1": `{"name":"M"}`, "course/c1": `{"matter":"m1","name":"Stay","cost_likely":1}`,
			"course/c2": `{"matter":"m1","name":"Go","cost_likely":1}`, "scheme/p1": `{"name":"P","courses":["c1","c2"]}`}},
		{"docking", Missing, "width of entrance", map[string]string{"dock/k1": `{"name":"Old dock"}`}},
		{"calendar", Wrong, "in a ring", map[string]string{"activity/v1": `{"name":"One","likely":1,"after":["v2"]}`, "activity/v2": `{"name":"Two","likely":1,"after":["v1"]}`}},
		{"parts", Missing, "who holds", map[string]string{"part/p1": `{"name":"Propeller"}`}},
		{"parts", Overdue, "was to be looked at", map[string]string{"part/p1": `{"name":"Propeller"}`, "custody/p2": `{"part":"p1","place":"A park","holder":"A town","next_check":"2020"}`}},
		{"overdue", Overdue, "valid until", map[string]string{"document/d1": `{"title":"Policy","expires":"2025-12-31"}`}},
		{"overdue", Overdue, "last looked at", map[string]string{"sounding/y": `{"date":"2025-05-20","tank":"t","sounding":1.1}`}},
	} {
		tried[c.rule] = true
		found := Check(build(t, c.changes), day(t, "2026-06-01"))
		if !slices.ContainsFunc(found, func(f Finding) bool {
			return f.Rule == c.rule && f.Severity == c.severity && strings.Contains(f.What, c.words)
		}) {
			t.Errorf("%s %s %q is not found for %v; found %s", c.rule, c.severity, c.words, c.changes, told(found))
		}
	}
	for _, r := range rules {
		if !tried[r.name] {
			t.Errorf("no fault is planted for the rule %s", r.name)
		}
	}
}

func told(found []Finding) string {
	var b strings.Builder
	for _, f := range found {
		fmt.Fprintf(&b, "\n   %s %s: %s", f.Rule, f.Severity, f.What)
	}
	return b.String()
}

func TestASurveyImportedTwice(t *testing.T) {
	changes := map[string]string{}
	for i := range 20 {
		for _, survey := range []string{"2023", "2023 again"} {
			changes[fmt.Sprintf("thickness/r%d.%s", i, strings.ReplaceAll(survey, " ", "-"))] = fmt.Sprintf(`{"date":"2023-05-01","survey":%q,"frame":"%d","strake":"A","side":"port","thickness":%g}`, survey, 10+i, 10+0.1*float64(i))
		}
	}
	found := Check(build(t, changes), day(t, "2026-06-01"))
	if !slices.ContainsFunc(found, func(f Finding) bool {
		return strings.Contains(f.What, "20 readings of the survey") && f.Severity == Wrong
	}) {
		t.Errorf("found %s", told(found))
	}
}

func TestManyFindingsAreCounted(t *testing.T) {
	changes := map[string]string{}
	for i := range 40 {
		changes[fmt.Sprintf("thickness/r%d", i)] = fmt.Sprintf(`{"date":"2023","frame":"%d","strake":"Q","thickness":9}`, i)
	}
	found := Check(build(t, changes), day(t, "2026-06-01"))
	if !slices.ContainsFunc(found, func(f Finding) bool { return strings.HasPrefix(f.What, "15 more findings") }) {
		t.Errorf("found %s", told(found))
	}
}

func TestEveryFindingSaysWhatToDo(t *testing.T) {
	d := New()
	if err := d.Put(Record{Head{ID: "s", Kind: "particulars"}, &ship.Particulars{Name: "Invented"}}); err != nil {
		t.Fatal(err)
	}
	found := Check(d, day(t, "2026-06-01"))
	if len(found) == 0 {
		t.Fatal("nothing is missing of an empty ship")
	}
	for _, f := range found {
		for _, s := range []string{f.What, f.Do} {
			if !strings.HasSuffix(s, ".") || strings.Contains(s, "%!") {
				t.Errorf("%q is no sentence", s)
			}
		}
	}
}

package intake

import (
	"reflect"
	"strings"
	"testing"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
)

// Logs and registers as they are kept, made up. want holds, for the first record, fields as cells in the declared unit.
func TestOtherKinds(t *testing.T) {
	for name, c := range map[string]struct {
		file, text string
		kind       string
		answers    map[string]string
		records    int
		refused    int
		want       map[string]string
	}{
		"drafts, two-level heads, feet and inches": {
			"drafts 2019.csv", "Date,Time,FORWARD,,AFT,,Density,Remarks\n,,P,S,P,S,kg/m3,\n2019-03-02,09:30,15'-2\",15'-3\",16 ft 1 in,16'-1\",1012,calm\n", "draft", nil, 1, 0,
			map[string]string{"date": "2019-03-02", "time": "09:30", "fwd_port": "4.6228", "fwd_starboard": "4.6482", "aft_port": "4.9022", "density": "1012", "notes": "calm"},
		},
		"soundings, one row a tank": {
			"soundings.csv", "Date;Tank;Sounding (cm);Product;Remarks\n2.5.2021;No 3 DB (S);41,5;SW;\n2.5.2021;No 3 DB (P);DRY;;opened\n2.5.2021;Fore peak;6'-4;FW;\n2.5.2021;Void 12;no access;;\n2.5.2021;Void 13;;;\n", "sounding", nil, 4, 1,
			map[string]string{"date": "2021-05-02", "tank": "tank-3s", "sounding": "0.415", "product": "sea water"},
		},
		"soundings, one column a tank": {
			"soundings log.csv", "Date,No 3 DB (S) [cm],No 3 DB (P) [cm]\n2021-05-02,41.5,dry\n2021-06-02,42,-\n", "sounding", nil, 3, 0,
			map[string]string{"tank": "tank-3s", "sounding": "0.415"},
		},
		"potentials, sign left out, volts among millivolts": {
			"cp readings.csv", "Date,Station,Reading mV,Electrode\n2022-07-01,1,850,Ag/AgCl\n2022-07-01,2,-.80,Ag/AgCl\n2022-07-01,3,ok,\n", "potential", nil, 2, 1,
			map[string]string{"station": "1", "reading": "-850", "electrode": "agcl-sea", "sign_given": "no"},
		},
		"potentials, a column a level": {
			"potentials.csv", "Date,Frame,Side,Surface,Mid,Keel\n2022-07-01,40,P,-870,-880,-890\n", "potential", nil, 3, 0,
			map[string]string{"frame": "40", "side": "port", "level": "surface", "reading": "-870"},
		},
		"rectifier": {
			"rectifier log.csv", "Date;DC V;DC A;Hours;Setpoint mV;State\n01.02.2020;5,2;12,5;18422;-850;on\n08.02.2020;0;0;18422;-850;tripped\n", "rectifier", nil, 2, 0,
			map[string]string{"date": "2020-02-01", "voltage": "5.2", "current": "12.5", "hours": "18422", "set_point": "-850", "state": "on"},
		},
		"pump counts": {
			"pumps.csv", "Date,Pump,Starts,Hours\n2020-02-01,,41,6.5\n", "pump_count", nil, 1, 0, map[string]string{"starts": "41", "hours": "6.5"},
		},
		"openings": {
			"openings register.csv", "ID,Function,Frame,Side,Size in,State,Last seen\nSC-4,main injection,38,S,6,blanked,1996-10\n", "opening", nil, 1, 0,
			map[string]string{"name": "SC-4", "function": "main injection", "frame": "38", "side": "starboard", "diameter": "152.4", "state": "blanked", "last_seen": "1996-10"},
		},
		"anodes": {
			"anodes.csv", "Anode,Type,Weight new lb,Frame,Side,Date fitted\nA1,Zn,48.5,20,P,Oct 1996\n", "anode", nil, 1, 0,
			map[string]string{"name": "A1", "alloy": "zinc", "mass_new": "21.9992", "fitted": "1996-10"},
		},
		"anodes seen": {
			"anode dive.csv", "Date,Frame,Side,% left\n2018-06-02,20,P,1/2\n2018-06-02,24,P,60\n", "anode_seen", nil, 2, 0, map[string]string{"share_left": "0.5"},
		},
		"receipts": {
			"donations.csv", "Datum;Betrag EUR;Spender;Fund\n04.05.2023;1.250,00;a friend;Hull fund\n05.05.2023;-;nobody;\n06.05.2023;20,00;x;Unknown fund\n", "receipt", nil, 1, 2,
			map[string]string{"date": "2023-05-04", "amount": "1250", "giver": "a friend", "pot": "pot-hull"},
		},
		"bids": {
			"offer of a yard.csv", "Offer of a yard, 4 September 2026\n\nItem;Description;Qty;Unit;Rate EUR;Amount EUR\n1;DOCKING;;;;\n1.1;Docking;1;piece;49.485,69;49.485,69\n1.2;Power;;day;;included\n1.3;Cleaning;;m2;;\n;TOTAL;;;;49.485,69\n", "bid_line",
			map[string]string{"bid": "new:a yard"}, 4, 0, map[string]string{"yard": "a yard", "total": "49485.69", "date": "2026-09-04"},
		},
		"a tabulation of three bids": {
			"bid tabulation.csv", "Item,Description,Qty,Unit,Bidder A,,Bidder B,,Bidder C,\n,,,,unit,total,unit,total,unit,total\n1,Docking,1,piece,900,900,950,950,NB,NB\n2,Cleaning,100,m2,20,2000,21,2100,included,included\nTOTAL,,,,,2900,,3050,,\n", "bid_line", nil, 9, 0,
			map[string]string{"yard": "Bidder A", "total": "2900"},
		},
		"an original in inches or in pounds": {
			"list.csv", "Frames from A.P.\nFr,Strake,Side,Orig in,Orig lb/ft2,Gauged in\n37,C,P,,20.4,.47\n38,C,P,.5,,.48\n", "thickness", nil, 2, 0, map[string]string{"original": "12.7", "thickness": "11.938"},
		},
		"leaks": {
			"leak log.csv", "No,Found,Compartment,Frame,Side,Rate (gal/h),Cause,State\n7,2019-04-01,shaft alley,22,P,12 US gal/h,rivet,weeping\n", "leak", nil, 1, 0, map[string]string{"number": "7", "date": "2019-04-01", "space": "shaft alley", "cause": "rivet", "state": "weeping"},
		},
		"dry film in mils": {
			"dft.csv", "Date,Location,DFT (mils),Specified (mils)\n2019-04-01,P side,10/12/11,10\n", "film", nil, 1, 0, map[string]string{"readings": "254; 304.8; 279.4", "nominal": "254", "where": "P side"},
		},
		"a paint log": {
			"paint log.csv", "Date,Area,Coat No.,Product,Batch A/B,Surface prep grade,Steel temp (F),RH,Dew point (F),DFT\n2019-04-01,P side fr 20-40,1,epoxy,A12,Sa 2 1/2,50,71,41,\n", "coat", nil, 1, 0, map[string]string{"number": "1", "product": "epoxy", "steel": "10", "humidity": "71", "dew_point": "5", "grade": "Sa 2 1/2"},
		},
		"weather": {
			"weather.csv", "datetime,temp (°F),RH %,wind speed (kn),rain mm\n2024-03-01 06:00,50,81,12,0.4\n", "climate", nil, 1, 0,
			map[string]string{"date": "2024-03-01", "time": "06:00", "air": "10", "humidity": "81", "wind": "12", "rain": "yes"},
		},
		"tides": {
			"tide table.csv", "Date,Time,Height m,HW/LW\n2024-03-01,06:12,4.3,HW\n2024-03-01,12:20,0.6,LW\n", "level", nil, 2, 0, map[string]string{"height": "4.3", "type": "high water", "time": "06:12"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			tb := answered(t, opened(t, c.file, c.text), c.answers)
			if g := tb.Guess(); g.Kind != c.kind {
				t.Fatalf("taken for %s, not %s: %v", g.Kind, c.kind, g.Why)
			}
			h := harvested(t, tb)
			if len(h.Records) != c.records || len(h.Refused) != c.refused {
				t.Fatalf("%d records, %d refused; want %d and %d: %+v", len(h.Records), len(h.Refused), c.records, c.refused, h.Refused)
			}
			holds(t, h.Records[0], c.want)
		})
	}
}

// holds checks fields of a record as cells in the declared unit.
func holds(t *testing.T, r dossier.Record, want map[string]string) {
	t.Helper()
	v := reflect.ValueOf(r.Body).Elem()
	c := field.CodecOf(v.Type())
	for key, text := range want {
		i := c.Index(key)
		if i < 0 {
			t.Errorf("a %s has no %s", r.Kind, key)
			continue
		}
		got, _ := c.Text(v, i)
		if f := c.Field(i); f.Type == field.Number && strings.HasPrefix(got, text[:min(4, len(text))]) {
			got = got[:min(len(text), len(got))]
		}
		if got != text {
			t.Errorf("%s is %q, want %q", key, got, text)
		}
	}
}

// Every template is known again as what it is, its example row lands nowhere, and a row filled like the example lands.
func TestTemplates(t *testing.T) {
	for _, k := range dossier.Kinds() {
		if k.Single {
			continue
		}
		for _, form := range []string{"csv", "xlsx"} {
			data, err := Reader{}.Template(k.Name, form)
			if err != nil {
				t.Fatal(err)
			}
			tb, err := Open(k.Name+"."+form, data, vessel(t))
			if err != nil {
				t.Fatal(err)
			}
			if g := tb.Guess(); g.Kind != k.Name {
				t.Errorf("the template %s.%s is taken for %s", k.Name, form, g.Kind)
				continue
			}
			templateHeads(t, k, tb.Guess())
			h := harvested(t, answered(t, tb, map[string]string{"bid": "new:x"}))
			if n := len(h.Records); n > 0 && !(k.Name == "bid_line" && n == 1) || len(h.Refused) > 0 {
				t.Errorf("%s.%s: the empty template gave %d records and refused %+v", k.Name, form, n, h.Refused)
			}
		}
	}
	if _, err := (Reader{}).Template("no such kind", "csv"); err == nil {
		t.Error("a template for no kind was made")
	}
}

// templateHeads checks that each head of a template is read as its own field.
func templateHeads(t *testing.T, k dossier.Kind, g app.Guess) {
	t.Helper()
	for i, f := range templateFields(k) {
		if c := g.Columns[i+1]; c.Meaning != f.Key {
			t.Errorf("%s: the head %q is read as %q, not %q", k.Name, c.Heading, c.Meaning, f.Key)
		}
	}
}

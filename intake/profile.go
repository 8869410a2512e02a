package intake

import (
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
)

// profile is what is known of how people keep one kind of record in a table.
type profile struct {
	kind  string
	main  string   // the field of the reading: a column headed only "P" means it
	needs []string // meanings of which a table of this kind has one
	words []word   // how columns are headed, besides the names of the kind's own fields
	names []string // words in the name of a file or sheet that speak for the kind

	own bool // only the names of the kind's own fields are known heads

	subject string            // the field that says what was read, where a column's heading may name it
	lower   map[string]string // lower headings under such a name, where they mean another field than alone
	levels  map[string]string // headings that name a level instead, by field "level"
	ended   map[string]string // fields that are a reading on an end and a side, by "forward_port"
}

// word is a meaning with the headings people give it, in plain form.
type word struct {
	meaning string
	heads   []string
}

// Meanings that are no field of a record.
const (
	meansLoss         = "loss"          // worked out again, not kept
	meansLossShare    = "loss_percent"  // likewise
	meansPlaceInText  = "place"         // a whole place in one cell
	meansStrakeNumber = "strake_number" // a strake counted from the keel, beside its letter
)

// derived are meanings that are known but not kept: they follow from what is.
var derived = map[string]string{meansLoss: "worked out from the readings, not kept", meansLossShare: "worked out from the readings, not kept"}

var placeWords = []word{
	{"frame", []string{"fr", "frame", "frames", "frame no", "fr no", "frame number", "spant", "spant nr", "spt", "couple", "cuaderna", "frame / spant", "at frame", "frame station", "frs", "spantnr"}},
	{"frame_to", []string{"to frame", "frame to", "to fr", "fr to"}},
	{"strake", []string{"strake", "strk", "strake no", "strake letter", "gang", "plattengang", "virure", "plategang", "huidgang", "strake no / letter", "strake no or letter", "str", "strakes", "letter", "strake letter or no"}},
	{meansStrakeNumber, []string{"strake number", "strake nr"}},
	{"side", []string{"side", "p/s", "ps/sb", "p / s", "ps / sb", "seite", "bord", "bb/stb", "port/stbd", "port / stbd", "kant", "sb/bb", "s/p"}},
	{"height", []string{"height", "ht", "height above base", "height above baseline", "hohe", "hauteur"}},
	{"where", []string{"ref", "reference", "height or ref", "location", "position", "area", "where", "ort", "lage", "area / drawing", "drawing", "position on ship"}},
	{"space", []string{"compartment", "space", "tank", "raum", "tank / void", "compt"}},
	{meansPlaceInText, []string{"place", "frame strake side", "frame / strake / side", "fr/str/side", "location frame strake side"}},
}

var seenWords = []word{
	{"date", []string{"date", "datum", "dato", "fecha", "day", "date read", "date of reading", "tag", "date/time", "date time", "datetime", "gemessen am"}},
	{"time", []string{"time", "zeit", "hour", "uhrzeit", "heure", "time of day", "klokke"}},
	{"who", []string{"by", "read by", "who", "operator", "surveyor", "taken by", "initials", "inspector", "name", "von", "par"}},
}

var noteWords = []word{
	{"notes", []string{"rem", "remark", "remarks", "comment", "comments", "note", "notes", "bemerkung", "bemerkungen", "observations", "opmerking", "merknad", "anmerkung", "remarks / notes"}},
	{"photo", []string{"photo", "photo no", "photos", "picture", "foto", "bild"}},
}

// profileOf finds the profile of a kind; a kind without one is read by the names of its fields alone.
func profileOf(kind string) profile {
	for _, p := range profiles {
		if p.kind == kind {
			return p
		}
	}
	return profile{kind: kind}
}

// vocabulary lists every heading a kind's columns may have, best first.
func (p profile) vocabulary() []word {
	k, ok := dossier.KindNamed(p.kind)
	if !ok {
		return nil
	}
	var list []word
	take := func(words []word) {
		for _, w := range words {
			if _, isField := k.Field(w.meaning); isField || derived[w.meaning] != "" || w.meaning == meansPlaceInText && placed(k) || w.meaning == meansStrakeNumber && placed(k) {
				list = append(list, w)
			}
		}
	}
	if !p.own {
		take(p.words)
		take(placeWords)
		take(seenWords)
		take(noteWords)
	}
	for _, f := range k.Fields {
		if f.Type == field.Grid || f.Type == field.Table || f.Type == field.Group {
			continue
		}
		list = append(list, word{f.Key, []string{plainHead(strings.ReplaceAll(f.Key, "_", " ")), plainHead(f.Label)}})
	}
	return list
}

func placed(k dossier.Kind) bool {
	_, frame := k.Field("frame")
	_, where := k.Field("where")
	return frame && where
}

// meaningOf finds what a plain heading, without unit, side and end, means. Strength 3 is word for word, less is a heading that only contains the words.
func meaningOf(plain string, words []word) (meaning string, strength float64) {
	if plain == "" {
		return "", 0
	}
	for _, w := range words {
		if slices.Contains(w.heads, plain) {
			return w.meaning, 3
		}
	}
	within := " " + plain + " "
	for _, w := range words {
		for _, h := range w.heads {
			if len(h) < 3 || !strings.Contains(within, " "+h+" ") {
				continue
			}
			if s := 1 + float64(len(h))/float64(len(plain)); s > strength {
				meaning, strength = w.meaning, s
			}
		}
	}
	return meaning, strength
}

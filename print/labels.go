package print

import (
	"strings"

	"oakum/assess"
	"oakum/print/page"
)

var labels = Paper{
	Name: "labels", Title: "Labels for parts taken off", For: "whoever takes a part off or stores it: tags to tie on, with a code that any telephone reads as words",
	Needs: func(b *assess.Brief) string {
		if len(b.Record.Parts) == 0 {
			return "no part is entered as taken off"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		d.Note("Cut along the broken lines, punch at the ring, laminate, and tie on with wire in two places. The code holds the same words as the label and needs no network; a label may come off, so the mark is also punched or painted on the part.")
		var list []page.Label
		for _, p := range b.Record.Parts {
			list = append(list, labelOf(b, p))
		}
		d.Labels(list)
	},
}

func labelOf(b *assess.Brief, p assess.PartRow) page.Label {
	said := map[string]string{}
	for _, h := range p.Described {
		said[h.Heading] = h.Text
	}
	lines := []string{}
	for _, l := range [][2]string{{"from", p.Place}, {"taken off", p.TakenOff}, {"mass", known(p.Mass)}, {"hazards", said["hazards"]}, {"title", said["title"]}, {"back", p.Refit}, {"fixings", p.Fixings}} {
		if l[1] != "" {
			lines = append(lines, l[0]+": "+l[1])
		}
	}
	mark, _, _ := strings.Cut(p.Mark, " ")
	mark = strings.TrimSuffix(mark, ",")
	if mark == "" {
		mark = "no mark yet"
	}
	code := words("\n", b.Name, words(" ", mark, p.Name), strings.Join(lines[:min(len(lines), 4)], "\n"), "record "+p.ID)
	return page.Label{Title: b.Name + ": " + p.Name, Mark: mark, Lines: append(lines, "record "+p.ID), Code: code}
}

// known is a figure's text, nothing where nobody knows it.
func known(f assess.Figure) string {
	if f.Value == nil {
		return ""
	}
	return f.Text
}

package text

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"oakum/assess"
)

// columns is the width of a line.
const columns = 80

// printer keeps the first error, so that the pages need not look at each line.
type printer struct {
	w   io.Writer
	err error
}

func (p *printer) line(text string) {
	if p.err == nil {
		_, p.err = fmt.Fprintln(p.w, strings.TrimRight(text, " "))
	}
}

// wrap breaks a text behind a lead; the lines that follow stand under the first.
func (p *printer) wrap(lead, text string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(lead))
	line, empty := lead, true
	for _, word := range strings.Split(text, " ") {
		if word == "" {
			continue
		}
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > columns {
			p.line(line)
			line, empty = indent, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	p.line(line)
}

func (p *printer) item(text string) { p.wrap("  - ", text) }

func (p *printer) list(texts []string) {
	for _, t := range texts {
		p.item(t)
	}
}

// page begins a page with its answer.
func (p *printer) page(title string, heading []string) {
	p.line("")
	p.line(strings.ToUpper(title))
	for _, h := range heading {
		p.wrap("", h)
	}
}

func (p *printer) title(text string) {
	p.line("")
	if text != "" {
		p.wrap("", text+":")
	}
}

// figures lists figures, a range first where there is one, with how bad and how known.
func (p *printer) figures(title string, list []assess.Figure) {
	if len(list) == 0 {
		return
	}
	p.title(title)
	for i, f := range list {
		if i == few {
			p.item(fmt.Sprintf("and %d more", len(list)-few))
			return
		}
		known := f.Sheet
		if known == "" {
			known = string(f.Basis)
		}
		p.item(worry(f.Worry) + words(", ", f.Label, f.Place) + ": " + f.Text + words("", " (", words("; ", f.Note, known), ")"))
	}
}

// notices lists what is to be done.
func (p *printer) notices(title string, list []assess.Notice) {
	if len(list) == 0 {
		return
	}
	p.title(title)
	for i, n := range list {
		if i == few {
			p.item(fmt.Sprintf("and %d more", len(list)-few))
			return
		}
		p.item(words(" ", stop(words(", ", n.What, n.Place)), stop(capital(n.Do)), stop(by(n))))
	}
}

func by(n assess.Notice) string {
	switch {
	case n.Due != "" && n.Who != "":
		return "By " + n.Due + ", " + n.Who
	case n.Due != "":
		return "By " + n.Due
	}
	return capital(n.Who)
}

func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// stop ends a sentence that has no end.
func stop(s string) string {
	if s == "" || strings.ContainsAny(s[len(s)-1:], ".?!:") {
		return s
	}
	return s + "."
}

func worry(level int) string {
	switch level {
	case 2:
		return "ACT "
	case 3:
		return "NOW "
	}
	return ""
}

// words joins what is not empty.
func words(between string, parts ...string) string {
	kept := parts[:0:0]
	for _, s := range parts {
		if s != "" {
			kept = append(kept, s)
		}
	}
	return strings.Join(kept, between)
}

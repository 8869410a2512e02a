package tell

import (
	"bytes"
	"html/template"
	"regexp"
	"strings"

	"github.com/microcosm-cc/bluemonday"
	"github.com/yuin/goldmark"
)

// harmless lets through what plain writing needs. Scripts, styles, frames, forms and pictures from elsewhere are left out.
var harmless = func() *bluemonday.Policy {
	p := bluemonday.NewPolicy()
	p.AllowElements("p", "br", "em", "strong", "ul", "ol", "li", "blockquote", "code", "pre", "h3", "h4", "hr")
	p.AllowStandardURLs()
	p.AllowAttrs("href").OnElements("a")
	p.RequireNoFollowOnLinks(true)
	return p
}()

// html makes Markdown safe to show. HTML typed into it is shown to nobody: its words stay, its tags go.
func html(text string) template.HTML {
	var b bytes.Buffer
	if err := goldmark.Convert([]byte(escaped(text)), &b); err != nil {
		return template.HTML(template.HTMLEscapeString(text))
	}
	return template.HTML(harmless.SanitizeBytes(b.Bytes()))
}

// escaped keeps "<" and "&" as they were typed, so that "plates < 8 mm" stays and a tag is read as words.
func escaped(text string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;").Replace(text)
}

// marks are those of Markdown that mean nothing where a text is pasted.
var marks = regexp.MustCompile(`(?m)^#{1,6} +|\*\*`)

// plain is a text to paste where nothing but letters goes.
func plain(text string) string {
	return strings.TrimSpace(marks.ReplaceAllString(strings.ReplaceAll(text, "\r\n", "\n"), "")) + "\n"
}

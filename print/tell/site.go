package tell

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"image"
	_ "image/jpeg" // photographs come as JPEG and PNG
	_ "image/png"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/google/uuid"
	"github.com/gorilla/feeds"

	"oakum/assess"
	"oakum/dossier"
	"oakum/field"
)

// Site is what is to be told, and to whom.
type Site struct {
	For      Audience
	Brief    *assess.Brief
	Address  string                                     // where the folder will stand, for the links of the feed; may be empty
	Versions func(id string) []dossier.Record           // earlier versions, oldest first; nil shows no corrections
	Open     func(sha256 string) (io.ReadCloser, error) // a kept file; nil shows no photographs
}

// Made counts what was written.
type Made struct{ Updates, Questions, Pictures int }

//go:embed page.html
var pageHTML string

var page = template.Must(template.New("page").Parse(pageHTML))

type view struct {
	Title, Ship, Day, Snapshot, Up string
	Stories                        []story
	Questions                      []asked
	One                            bool
}

type asked struct {
	Question, Answered string
	Ways               []string
	Answer             template.HTML
}

// Publish writes the folder. It writes over what it wrote before and touches nothing else in it.
func (s *Site) Publish(dir string) (Made, error) {
	stories := s.stories()
	v := view{Title: s.For.Title + " " + s.Brief.Name, Ship: s.Brief.Name, Day: s.Brief.Day.Words(), Snapshot: s.Brief.Snapshot}
	for _, q := range s.For.questions(s.Brief.Dossier()) {
		v.Questions = append(v.Questions, asked{q.Body.Question, q.Body.Answered.Words(), q.ways, html(q.Body.Answer)})
	}
	m := Made{Updates: len(stories), Questions: len(v.Questions)}
	for i := range stories {
		n, err := s.pictures(dir, &stories[i])
		if err != nil {
			return m, err
		}
		m.Pictures += n
	}
	v.Stories = stories
	if err := s.page(filepath.Join(dir, "index.html"), v); err != nil {
		return m, err
	}
	for _, t := range stories {
		one := view{Title: t.Title, Ship: v.Ship, Day: v.Day, Snapshot: v.Snapshot, Up: "../", Stories: []story{t}, One: true}
		if err := s.page(filepath.Join(dir, "updates", t.ID+".html"), one); err != nil {
			return m, err
		}
		if err := write(filepath.Join(dir, "paste", t.ID+".txt"), []byte(s.paste(t))); err != nil {
			return m, err
		}
	}
	feed, err := s.feed(stories)
	if err != nil {
		return m, err
	}
	return m, write(filepath.Join(dir, "feed.xml"), []byte(feed))
}

func (s *Site) page(path string, v view) error {
	var b bytes.Buffer
	if err := page.Execute(&b, v); err != nil {
		return err
	}
	return write(path, b.Bytes())
}

// paste is a story as words, with the snapshot its figures come from.
func (s *Site) paste(t story) string {
	if t.Withdrawn {
		return t.Title + "\n" + t.Date + "\n\nThis was taken back.\n"
	}
	text := t.Title + "\n" + t.Date + "\n\n"
	if len(t.Corrections) > 0 {
		text += "Corrected" + because(t.Why) + "\n\n"
	}
	text += t.Text
	if t.Snapshot != "" {
		text += "\nFigures from the records " + t.Snapshot + "\n"
	}
	return text
}

// because says why something was corrected, where somebody wrote it down.
func because(why string) string {
	if why == "" {
		return "."
	}
	return ": " + strings.TrimSuffix(why, ".") + "."
}

func (s *Site) feed(stories []story) (string, error) {
	f := &feeds.Feed{Title: s.For.Title + " " + s.Brief.Name, Link: &feeds.Link{Href: s.Address}, Id: name(s.Brief.Name, s.For.Name)}
	for _, t := range stories {
		item := &feeds.Item{Id: name(s.Brief.Name, t.ID), Title: t.Title, Link: &feeds.Link{Href: s.Address + "updates/" + t.ID + ".html"}, Created: t.when, Updated: t.when, Content: string(t.HTML)}
		if t.Withdrawn {
			item.Content = "<p>This was taken back.</p>"
		}
		if t.Author != "" {
			item.Author = &feeds.Author{Name: t.Author}
		}
		if t.when.After(f.Updated) {
			f.Updated = t.when
		}
		f.Items = append(f.Items, item)
	}
	if f.Updated.IsZero() {
		f.Updated, _ = time.Parse(time.DateOnly, s.Brief.Day.String())
	}
	atom := (&feeds.Atom{Feed: f}).AtomFeed()
	atom.Id = f.Id
	if s.Address == "" {
		atom.Link = nil // an empty address is none
	}
	return feeds.ToXML(atom)
}

// name is an address of a thing in a feed that stays the same wherever the feed stands (RFC 9562, version 5).
func name(parts ...string) string {
	return "urn:uuid:" + uuid.NewSHA1(uuid.NameSpaceOID, fmt.Append(nil, "oakum", parts)).String()
}

// mostPixels is the largest photograph that is put on a page: a larger one is likely a mistake, and no browser opens it.
const mostPixels = 100_000_000

// pictures copies the photographs of a story; one whose file is not kept, or is no picture, is left out.
func (s *Site) pictures(dir string, t *story) (n int, err error) {
	var shown []picture
	for _, p := range t.Pictures {
		if s.Open == nil {
			continue
		}
		data, err := s.kept(p.sha256)
		if err != nil {
			continue
		}
		c, format, err := image.DecodeConfig(bytes.NewReader(data))
		if err != nil || c.Width*c.Height > mostPixels {
			continue
		}
		p.File += "." + format
		if err := write(filepath.Join(dir, filepath.FromSlash(p.File)), data); err != nil {
			return n, err
		}
		shown = append(shown, p)
		n++
	}
	t.Pictures = shown
	return n, nil
}

func (s *Site) kept(sum string) ([]byte, error) {
	f, err := s.Open(sum)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(f)
}

func write(path string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	if old, err := os.Lstat(path); err == nil && !old.Mode().IsRegular() {
		return field.Refuse("folder", "%s is a link or a folder: choose another folder", path)
	}
	return os.WriteFile(path, data, 0o644)
}

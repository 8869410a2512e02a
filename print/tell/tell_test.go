package tell

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"oakum/assess"
	"oakum/demo"
	"oakum/dossier"
	"oakum/plan"
	printing "oakum/print"
	"oakum/print/pdftext"
	"oakum/quantity"
	"oakum/survey"
)

func published(t *testing.T, d *dossier.Dossier, to string, day string, more func(*Site)) string {
	t.Helper()
	on, err := quantity.ParseDate(day)
	if err != nil {
		t.Fatal(err)
	}
	who, err := AudienceNamed(to)
	if err != nil {
		t.Fatal(err)
	}
	s := Site{For: who, Brief: assess.Assess(d, assess.PlanInForce(d), on)}
	if more != nil {
		more(&s)
	}
	return written(t, s)
}

// written is all that a site gives its readers, in one.
func written(t *testing.T, s Site) string {
	t.Helper()
	dir := t.TempDir()
	if _, err := s.Publish(dir); err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	err := filepath.WalkDir(dir, func(p string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := os.ReadFile(p)
		all.WriteString(p + "\n")
		all.Write(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all.String()
}

// TestNothingLeaks: over the whole demonstration ship, afloat and in dock, no text of a record that an audience may not see stands in anything it is given:
// the pages, the feed and the texts to paste, the drafts that are to become them, and for the board its printed paper.
func TestNothingLeaks(t *testing.T) {
	dock, err := demo.InDock()
	if err != nil {
		t.Fatal(err)
	}
	afloat, err := demo.Ship("corran-vey")
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		d   *dossier.Dossier
		day string
	}{"in dock": {dock, demo.TwelfthDay}, "afloat": {afloat, "2026-11-25"}} {
		on, _ := quantity.ParseDate(c.day)
		b := assess.Assess(c.d, assess.PlanInForce(c.d), on)
		for _, a := range Audiences {
			said := written(t, Site{For: a, Brief: b}) + draftsOf(b, a.Name)
			if a.Sees == dossier.Board {
				said += paperOf(t, b)
			}
			if !strings.Contains(said, "Why she must be docked") || !strings.Contains(said, "Why not patch her where she lies?") {
				t.Errorf("%s, %s: what is public is not told", name, a.Name)
			}
			noneOf(t, name+", "+a.Name, said, c.d, a.Sees)
		}
	}
}

func draftsOf(b *assess.Brief, audience string) string {
	var said strings.Builder
	for _, r := range b.Record.Drafts {
		if r.Audience == audience {
			fmt.Fprintf(&said, "%+v", r)
		}
	}
	return said.String()
}

// paperOf is the board paper as a reader of PDF sees it.
func paperOf(t *testing.T, b *assess.Brief) string {
	t.Helper()
	var pdf bytes.Buffer
	if err := printing.Print(&pdf, b, "board", "A4"); err != nil {
		t.Fatal(err)
	}
	pages, err := pdftext.Pages(pdf.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(strings.Join(pages, " ")), " ")
}

func noneOf(t *testing.T, who, said string, d *dossier.Dossier, sees dossier.Mark) {
	t.Helper()
	open, closed := texts(d, sees)
	tried := 0
	for text, id := range closed {
		if strings.Contains(open, text) {
			continue
		}
		if tried++; strings.Contains(said, text) {
			t.Errorf("%s: %q of %s, which is not for them, stands in what is told", who, text, id)
		}
	}
	if least := map[dossier.Mark]int{dossier.Public: 400, dossier.Board: 5}[sees]; tried < least {
		t.Errorf("%s: only %d texts were looked for", who, tried)
	}
}

// texts gives all text of the records that may be seen in one, and each longer text of the others with the record it stands in.
func texts(d *dossier.Dossier, sees dossier.Mark) (open string, closed map[string]string) {
	var b strings.Builder
	closed = map[string]string{}
	for r := range d.Records("") {
		k, _ := dossier.KindNamed(r.Kind)
		for _, f := range k.Fields {
			text, ok := f.Get(reflect.ValueOf(r.Body).Elem()).Interface().(string)
			if !ok || len(f.Enum) > 0 {
				continue
			}
			switch {
			case r.Shown(sees), r.Kind == "particulars":
				b.WriteString(text + "\n")
			case len(text) >= 12:
				closed[text] = r.Kind + " " + r.ID
			}
		}
	}
	return b.String(), closed
}

func put(t *testing.T, d *dossier.Dossier, h dossier.Head, body any) {
	t.Helper()
	if err := d.Put(dossier.Record{Head: h, Body: body}); err != nil {
		t.Fatal(err)
	}
}

func day(t *testing.T, s string) quantity.Date {
	t.Helper()
	d, err := quantity.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestMarkupIsHarmless(t *testing.T) {
	d := dossier.New()
	text := "Plates < 8 mm & *thin*.\n\n<script>alert(1)</script> <img src=x onerror=alert(1)> [here](javascript:alert(1)) [there](https://example.org/) ![p](https://example.org/spy.png)"
	put(t, d, dossier.Head{ID: "u", Kind: "update", Mark: dossier.Public}, &plan.Update{Title: "<b onclick=x>News</b>", Text: text, Audience: "public", State: "published", Date: day(t, "2026-05-01")})
	put(t, d, dossier.Head{ID: "q", Kind: "question", Mark: dossier.Public}, &plan.Question{Question: "<i>Why?</i>", Answer: "<iframe src=x></iframe> so", Audience: "public"})
	said := published(t, d, "public", "2026-05-02", nil)
	for _, bad := range []string{"<script", "<img", "<iframe", "javascript:", "<b onclick", "<i>", "spy.png\""} {
		if strings.Contains(strings.SplitN(said, "paste/", 2)[0], bad) {
			t.Errorf("%q is in a page", bad)
		}
	}
	for _, good := range []string{"Plates &lt; 8 mm &amp; <em>thin</em>", `href="https://example.org/"`, "&lt;i&gt;Why?", "It names no records"} {
		if !strings.Contains(said, good) {
			t.Errorf("%q is missing", good)
		}
	}
}

func TestMarksAndStates(t *testing.T) {
	d := dossier.New()
	for i, u := range []struct {
		mark            dossier.Mark
		audience, state string
	}{{dossier.Private, "public", "published"}, {dossier.Board, "public", "published"}, {"", "public", "published"}, {dossier.Public, "public", "draft"}, {dossier.Public, "board", "published"}, {dossier.Public, "donors", "published"}} {
		put(t, d, dossier.Head{ID: "u" + string(rune('a'+i)), Kind: "update", Mark: u.mark}, &plan.Update{Title: "T" + string(rune('a'+i)) + "T", Audience: u.audience, State: u.state})
	}
	for to, want := range map[string]string{"public": "", "donors": "TfT", "board": "TbT TcT TeT TfT"} {
		said := published(t, d, to, "2026-05-02", nil)
		for i := range 6 {
			title := "T" + string(rune('a'+i)) + "T"
			if strings.Contains(said, title) != strings.Contains(want, title) {
				t.Errorf("%s: %s told is %v", to, title, !strings.Contains(want, title))
			}
		}
	}
}

func TestACorrectionIsSeen(t *testing.T) {
	d := dossier.New()
	u := func(text, state string) *plan.Update {
		return &plan.Update{Title: "The fund", Text: text, Audience: "public", State: state, Date: day(t, "2026-05-01"), Snapshot: strings.Repeat("ab", 32)}
	}
	at := func(s string) time.Time { x, _ := time.Parse(time.DateOnly, s); return x }
	head := func(v int, mark dossier.Mark, when string) dossier.Head {
		return dossier.Head{ID: "u", Kind: "update", Mark: mark, Version: v, At: at(when)}
	}
	versions := []dossier.Record{
		{Head: head(1, dossier.Board, "2026-05-01"), Body: u("Not yet for anyone.", "draft")},
		{Head: head(2, dossier.Public, "2026-05-02"), Body: u("We have 640.", "published")},
		{Head: head(3, dossier.Public, "2026-05-03"), Body: func() *plan.Update {
			n := u("We have 460.", "published")
			n.Why = "two figures had changed places"
			return n
		}()},
	}
	put(t, d, versions[2].Head, versions[2].Body)
	said := published(t, d, "public", "2026-05-04", func(s *Site) { s.Versions = func(string) []dossier.Record { return versions } })
	for _, w := range []string{"Corrected.</strong> two figures had changed places", "Corrected: two figures had changed places.", "As it stood until 2026-05-03", "We have 640.", "We have 460.", strings.Repeat("ab", 32)} {
		if !strings.Contains(said, w) {
			t.Errorf("%q is missing", w)
		}
	}
	if strings.Contains(said, "Not yet for anyone") {
		t.Error("a draft is told as an earlier version")
	}
}

// A question asked in many ways is told once; a wording that is closed to the reader is not told with it.
func TestAGroupIsToldOnce(t *testing.T) {
	d := dossier.New()
	put(t, d, dossier.Head{ID: "q1", Kind: "question", Mark: dossier.Public}, &plan.Question{Question: "Will she steam again?", Answer: "Not soon.", Audience: "public"})
	put(t, d, dossier.Head{ID: "q2", Kind: "question", Mark: dossier.Public}, &plan.Question{Question: "Back in steam?", Same: "q1", Answer: "An older answer.", Audience: "public"})
	put(t, d, dossier.Head{ID: "q3", Kind: "question", Mark: dossier.Board}, &plan.Question{Question: "Asked by the member himself?", Same: "q1", Audience: "public"})
	put(t, d, dossier.Head{ID: "q4", Kind: "question", Mark: dossier.Board}, &plan.Question{Question: "Closed leader?", Answer: "Closed answer.", Audience: "public"})
	put(t, d, dossier.Head{ID: "q5", Kind: "question", Mark: dossier.Public}, &plan.Question{Question: "Open member?", Same: "q4", Audience: "public"})
	said := published(t, d, "public", "2026-05-02", nil)
	for _, w := range []string{"Will she steam again?", "Also asked: Back in steam?", "Not soon."} {
		if strings.Count(said, w) != 1 {
			t.Errorf("%q is told %d times", w, strings.Count(said, w))
		}
	}
	for _, w := range []string{"member himself", "Closed", "Open member", "older answer"} {
		if strings.Contains(said, w) {
			t.Errorf("%q is told", w)
		}
	}
}

func TestTextToPasteHoldsNoMarks(t *testing.T) {
	if got := plain("### Found\n\n**Holes** at frame 44; 3 # 4\r\n"); got != "Found\n\nHoles at frame 44; 3 # 4\n" {
		t.Errorf("%q", got)
	}
}

// TestFeedIsAtom holds the feed against the elements that RFC 4287 wants: a feed and each entry with an id, a title and the day it was updated.
func TestFeedIsAtom(t *testing.T) {
	d := dossier.New()
	put(t, d, dossier.Head{ID: "u", Kind: "update", Mark: dossier.Public}, &plan.Update{Title: "News & more", Text: "x", State: "published", Audience: "public", Date: day(t, "2026-05-01")})
	dir := t.TempDir()
	who, _ := AudienceNamed("public")
	s := Site{For: who, Brief: assess.Assess(d, assess.PlanInForce(d), day(t, "2026-05-02"))}
	if _, err := s.Publish(dir); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(filepath.Join(dir, "feed.xml"))
	if err != nil {
		t.Fatal(err)
	}
	var f struct {
		XMLName            xml.Name
		ID, Title, Updated string
		Entry              []struct{ ID, Title, Updated string }
	}
	low := strings.NewReplacer("<id>", "<ID>", "</id>", "</ID>", "<title>", "<Title>", "</title>", "</Title>", "<updated>", "<Updated>", "</updated>", "</Updated>", "<entry>", "<Entry>", "</entry>", "</Entry>").Replace(string(data))
	if err := xml.Unmarshal([]byte(low), &f); err != nil {
		t.Fatal(err)
	}
	if f.XMLName.Space != "http://www.w3.org/2005/Atom" || !strings.HasPrefix(f.ID, "urn:uuid:") || f.Updated == "" || len(f.Entry) != 1 {
		t.Fatalf("%+v", f)
	}
	if e := f.Entry[0]; e.Title != "News & more" || !strings.HasPrefix(e.ID, "urn:uuid:") || !strings.HasPrefix(e.Updated, "2026-05-01T") {
		t.Errorf("%+v", e)
	}
}

// TestPictures: a photograph is told where its record is public, its file is a picture of a size that can be shown, and nobody in it said no.
func TestPictures(t *testing.T) {
	small := "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x00\x01\x00\x00\x00\x01\x08\x02\x00\x00\x00\x90wS\xde"
	vast := "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x01\x86\xa0\x00\x00\x07\xd0\x08\x02\x00\x00\x00\xa1\xa4\xd9\x04"
	files := map[string]string{"aaaa": small, "bbbb": small, "cccc": small, "dddd": "MZ a program by another name", "eeee": vast}
	d := dossier.New()
	var ids []string
	for sum := range files {
		mark, consent := dossier.Public, ""
		if sum == "bbbb" {
			mark = dossier.Board
		}
		if sum == "cccc" {
			consent = "no"
		}
		put(t, d, dossier.Head{ID: sum, Kind: "photo", Mark: mark}, &survey.Photo{Title: "P" + sum, SHA256: sum, Consent: consent})
		ids = append(ids, sum)
	}
	put(t, d, dossier.Head{ID: "u", Kind: "update", Mark: dossier.Public}, &plan.Update{Title: "T", Text: "x", State: "published", Audience: "public", Photos: ids})
	said := published(t, d, "public", "2026-05-02", func(s *Site) {
		s.Open = func(sum string) (io.ReadCloser, error) { return io.NopCloser(strings.NewReader(files[sum])), nil }
	})
	for sum := range files {
		if strings.Contains(said, "P"+sum) != (sum == "aaaa") {
			t.Errorf("%s told is %v", sum, sum != "aaaa")
		}
	}
}

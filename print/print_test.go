package print_test

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io/fs"
	"strings"
	"sync"
	"testing"

	"oakum/assess"
	"oakum/demo"
	"oakum/dossier"
	"oakum/print"
	"oakum/print/pdftext"
	"oakum/quantity"
)

// steamer is the brief of the invented ship on a fixed day.
var steamer = sync.OnceValue(func() *assess.Brief {
	d, err := demo.Ship("corran-vey")
	if err != nil {
		panic(err)
	}
	return assess.Assess(d, assess.PlanInForce(d), on("2026-11-25"))
})

// docked is the same ship on the twelfth day of her docking.
var docked = sync.OnceValue(func() *assess.Brief {
	d, err := demo.InDock()
	if err != nil {
		panic(err)
	}
	return assess.Assess(d, assess.PlanInForce(d), on(demo.TwelfthDay))
})

func on(text string) (day quantity.Date) {
	if err := day.UnmarshalText([]byte(text)); err != nil {
		panic(err)
	}
	return day
}

func printed(t *testing.T, b *assess.Brief, name, size string) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := print.Print(&out, b, name, size); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return out.Bytes()
}

// read gives the text of each page without spaces, as line ends fall anywhere.
func read(t *testing.T, pdf []byte) []string {
	t.Helper()
	pages, err := pdftext.Pages(pdf)
	if err != nil {
		t.Fatal(err)
	}
	for i := range pages {
		pages[i] = squeeze(pages[i])
	}
	return pages
}

// squeeze leaves out spaces and takes a true minus for a plain one.
func squeeze(s string) string {
	s = strings.ReplaceAll(s, "\u2212", "-")
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '\u00a0' || r == '\u202f' || r == '\n' }), "")
}

func TestBoardPaperHoldsEveryFigureOfThePageWithItsSheet(t *testing.T) {
	b := steamer()
	pages := read(t, printed(t, b, "board", "A4"))
	annex := strings.Join(pages[1:], "")
	figures := append(append([]assess.Figure{}, b.Record.Board.Worst...), b.Record.Board.Money...)
	if len(figures) < 6 {
		t.Fatalf("only %d figures: the ship is too empty to test with", len(figures))
	}
	for _, f := range figures {
		if !strings.Contains(pages[0], squeeze(f.Label)) || !strings.Contains(pages[0], squeeze(f.Text)) {
			t.Errorf("the page lacks %q: %q", f.Label, f.Text)
		}
		if f.Sheet != "" && !strings.Contains(annex, squeeze(f.Sheet)) {
			t.Errorf("the annex lacks sheet %q", f.Sheet)
		}
	}
	for _, line := range append(append(append([]string{}, b.Record.Board.Where...), b.Record.Board.Changed...), b.Record.Board.IfNot...) {
		if !strings.Contains(pages[0], squeeze(line)) {
			t.Errorf("the page lacks %q", line)
		}
	}
	for _, n := range b.Record.Board.Decide {
		if !strings.Contains(pages[0], squeeze(n.What)) || !strings.Contains(pages[0], squeeze(n.Do)) {
			t.Errorf("the page lacks the decision %q", n.What)
		}
	}
}

// In dock more has happened than one page holds: it must still be one page, and the annex must hold the rest.
func TestBoardPaperInDockStaysOnePage(t *testing.T) {
	b := docked()
	pages := read(t, printed(t, b, "board", "A4"))
	if !strings.Contains(pages[0], "Whatifnot") || !strings.HasPrefix(pages[1], "Annex") {
		t.Error("the board page runs over")
	}
	for _, line := range b.Record.Board.Changed {
		if !strings.Contains(strings.Join(pages, ""), squeeze(line)) {
			t.Errorf("lacks %q", line)
		}
	}
}

func TestPapersOfTheDockHoldEveryFinding(t *testing.T) {
	b := docked()
	for _, name := range []string{"found", "changes", "log", "completion"} {
		if why := paper(t, name).Needs(b); why != "" {
			t.Errorf("%s: %s", name, why)
		}
	}
	all := strings.Join(read(t, printed(t, b, "found", "A4")), "")
	for _, f := range b.InDock.Found {
		if !strings.Contains(all, squeeze(f.Condition)) {
			t.Errorf("lacks the finding %q", f.Condition)
		}
	}
}

func paper(t *testing.T, name string) print.Paper {
	t.Helper()
	for _, p := range print.Papers() {
		if p.Name == name {
			return p
		}
	}
	t.Fatalf("there is no paper %q", name)
	return print.Paper{}
}

func TestEveryPageCarriesShipDaySnapshotAndNumber(t *testing.T) {
	for _, b := range []*assess.Brief{steamer(), docked()} {
		everyPageNamed(t, b)
	}
}

func everyPageNamed(t *testing.T, b *assess.Brief) {
	for _, p := range print.Has(b) {
		for _, size := range sizesOf(p.Name) {
			pages := read(t, printed(t, b, p.Name, size))
			for i, text := range pages {
				for _, want := range []string{b.Name, b.Day.String(), b.Snapshot[:12], fmt.Sprintf("%d of %d", i+1, len(pages))} {
					if !strings.Contains(text, squeeze(want)) {
						t.Errorf("%s %s page %d lacks %q", p.Name, size, i+1, want)
					}
				}
			}
		}
	}
}

// sizesOf tries every size on the papers whose layout depends on it most.
func sizesOf(name string) []string {
	if name == "board" || name == "thickness" {
		return []string{"A4", "Letter", "A3"}
	}
	return []string{"A4"}
}

func TestSameBriefSameBytes(t *testing.T) {
	b := steamer()
	for _, name := range []string{"board", "thickness", "sheet:" + b.SheetIDs()[0]} {
		if !bytes.Equal(printed(t, b, name, "A4"), printed(t, b, name, "A4")) {
			t.Errorf("%s differs from itself", name)
		}
	}
}

// A paper that touches a danger opens with its caution: before anything that could be acted on.
func TestCautionsStandFirst(t *testing.T) {
	b := steamer()
	for _, name := range []string{"docking", "dockmaster", "openings"} {
		first := read(t, printed(t, b, name, "A4"))[0]
		title := strings.Index(first, "CAUTION")
		for _, later := range []string{"Theship", "Howshefloats", "No.Opening"} {
			if at := strings.Index(first, later); at >= 0 && at < title || title < 0 {
				t.Errorf("%s: %q stands before the caution", name, later)
			}
		}
	}
}

func TestSheetShowsFormulaAndNumbers(t *testing.T) {
	b := steamer()
	id := ""
	for _, one := range b.SheetIDs() {
		if strings.HasPrefix(one, "docking.landing@") {
			id = one
		}
	}
	s, ok := b.Sheet(id)
	if !ok {
		t.Fatal("the brief works out no landing")
	}
	all := strings.Join(read(t, printed(t, b, "sheet:"+id, "A4")), "")
	for _, c := range s.Cautions {
		if !strings.Contains(all, squeeze(c)) {
			t.Errorf("lacks the caution %q", c)
		}
	}
	for _, l := range s.Results {
		if l.Text != "" && !strings.Contains(all, squeeze(l.Label)+squeeze(l.Symbol)+squeeze(l.Text)) {
			t.Errorf("lacks %s = %s", l.Label, l.Text)
		}
	}
	if !strings.Contains(all, "MCT·abs(t)/l") {
		t.Error("lacks the formula of the upthrust")
	}
}

func TestEverySheetCanBePrinted(t *testing.T) {
	b := steamer()
	told := map[string]bool{}
	for _, id := range b.SheetIDs() {
		method, _, _ := strings.Cut(id, "@")
		if told[method] {
			continue
		}
		told[method] = true
		if pages := read(t, printed(t, b, "sheet:"+id, "A4")); !strings.Contains(pages[0], squeeze(id[:min(len(id), 30)])) {
			t.Errorf("%s does not name itself", id)
		}
	}
}

func TestEmptyShipStillPrints(t *testing.T) {
	d := dossier.New()
	b := assess.Assess(d, assess.Plan{}, on("2026-11-25"))
	for _, p := range print.Has(b) {
		printed(t, b, p.Name, "A4")
	}
}

func TestRefusalsNameWhatIsThere(t *testing.T) {
	b := steamer()
	for name, want := range map[string]string{"nothing": "board", "sheet:none@here": "none@here"} {
		err := print.Print(&bytes.Buffer{}, b, name, "A4")
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := print.Print(&bytes.Buffer{}, b, "board", "A7"); err == nil || !strings.Contains(err.Error(), "A7") {
		t.Errorf("size A7: %v", err)
	}
}

// A found report shows its photographs as found beside as left; where the file is not kept, it says so.
func TestAFoundReportShowsItsPhotographs(t *testing.T) {
	kept := map[string][]byte{}
	for _, dir := range demo.Pictures("corran-vey", true) {
		list, err := fs.ReadDir(dir, ".")
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range list {
			data, err := fs.ReadFile(dir, e.Name())
			if err != nil {
				t.Fatal(err)
			}
			kept[fmt.Sprintf("%x", sha256.Sum256(data))] = data
		}
	}
	var out bytes.Buffer
	if err := print.Illustrated(&out, docked(), "found", "A4", func(sum string) []byte { return kept[sum] }); err != nil {
		t.Fatal(err)
	}
	if n := bytes.Count(out.Bytes(), []byte("/Subtype /Image")); n < 6 {
		t.Errorf("%d photographs are on the paper", n)
	}
	with, without := strings.Join(read(t, out.Bytes()), " "), strings.Join(read(t, printed(t, docked(), "found", "A4")), " ")
	const missing = "thephotographisnotkepthere"
	if strings.Contains(with, missing) || !strings.Contains(without, missing) || !strings.Contains(with, squeeze("As left, 2027-04-17, fr 40, strake G, port")) {
		t.Errorf("with: %.300s; without: %.300s", with, without)
	}
}

// A change order says how many, at what rate, against what was agreed, why and from which pot.
func TestAChangeOrderSaysHowItIsPriced(t *testing.T) {
	all := strings.Join(read(t, printed(t, docked(), "changes", "A4")), " ")
	for _, want := range []string{"37m2", "1950EUR", "1500to3400EUR", "72150EUR", "Dockingfund", "BecauseofF3:doubler", "abovethelikelyrateagreed"} {
		if !strings.Contains(all, want) {
			t.Errorf("%s is not on the paper", want)
		}
	}
}

// A group of figures on a sheet has labels and units, a count no decimals.
func TestSheetNamesUnitsOfAGroup(t *testing.T) {
	text := strings.Join(read(t, printed(t, steamer(), "sheet:docking.blocks@dock-skellby", "A4")), "")
	for _, want := range []string{"attheafterend42.957t/m", "attheforeend37.626t/m", "lengththatcarries83.4m", "keelblocksinplacen56largest"} {
		if !strings.Contains(text, want) {
			at := max(strings.Index(text, "tz"), 0)
			t.Errorf("no %q near %q", want, text[at:min(at+200, len(text))])
		}
	}
}

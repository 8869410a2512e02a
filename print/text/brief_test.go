package text_test

import (
	"bytes"
	"errors"
	"slices"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"oakum/assess"
	"oakum/demo"
	"oakum/dossier"
	"oakum/print/text"
	"oakum/quantity"
)

var steamer = sync.OnceValue(func() *assess.Brief {
	d, err := demo.Ship("corran-vey")
	if err != nil {
		panic(err)
	}
	return assess.Assess(d, assess.PlanInForce(d), on("2026-11-25"))
})

func on(iso string) (day quantity.Date) {
	if err := day.UnmarshalText([]byte(iso)); err != nil {
		panic(err)
	}
	return day
}

func written(t *testing.T, b *assess.Brief) string {
	t.Helper()
	var out bytes.Buffer
	if err := text.Brief(&out, b); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// joined leaves out line ends and indents, as a sentence breaks anywhere.
func joined(s string) string { return strings.Join(strings.Fields(s), " ") }

func TestNoLineIsWiderThanATerminal(t *testing.T) {
	for line := range strings.Lines(written(t, steamer())) {
		line = strings.TrimSuffix(line, "\n")
		if utf8.RuneCountInString(line) > 80 && strings.Contains(strings.TrimSpace(line), " ") {
			t.Errorf("%d letters: %q", utf8.RuneCountInString(line), line)
		}
	}
}

func TestEachPageBeginsWithItsAnswer(t *testing.T) {
	b := steamer()
	got := joined(written(t, b))
	answers := slices.Concat([]string{b.Front.Sentence}, b.Standing.Heading, b.Outlook.Heading, b.Choices.Heading, b.Money.Heading, b.Docking.Heading, b.InDock.Heading, b.Record.Heading)
	if len(answers) < 8 {
		t.Fatalf("only %d answers: the ship is too empty to test with", len(answers))
	}
	for _, a := range answers {
		if !strings.Contains(got, joined(a)) {
			t.Errorf("lacks %q", a)
		}
	}
	for _, f := range b.Front.Worst {
		if !strings.Contains(got, joined(f.Text)) || !strings.Contains(got, f.Sheet) {
			t.Errorf("lacks %s, %s", f.Text, f.Sheet)
		}
	}
}

func TestCautionsStandBeforeTheDocking(t *testing.T) {
	b := steamer()
	got := joined(written(t, b))
	for _, c := range b.Docking.Cautions {
		at, first := strings.Index(got, joined(c)), strings.Index(got, joined(b.Docking.Heading[0]))
		if at < 0 || at > first {
			t.Errorf("caution at %d, the answer at %d", at, first)
		}
	}
}

func TestSaysHowManyRowsAreLeftOut(t *testing.T) {
	if n := len(steamer().Standing.Worst); n <= 10 {
		t.Fatalf("only %d worst places: too few to test with", n)
	}
	if !strings.Contains(written(t, steamer()), "and 20 more") {
		t.Error("rows are left out without a word")
	}
}

func TestEmptyShip(t *testing.T) {
	got := written(t, assess.Assess(dossier.New(), assess.Plan{}, on("2026-11-25")))
	if !strings.Contains(joined(got), "Nothing is known of her yet") {
		t.Errorf("an empty ship says: %s", got)
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errFull }

var errFull = &full{}

type full struct{}

func (*full) Error() string { return "the disk is full" }

func TestFailedWriteIsReported(t *testing.T) {
	if err := text.Brief(broken{}, steamer()); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
}

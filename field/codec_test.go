package field

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/quantity"
)

type sample struct {
	Name    string        `key:"name"`
	Note    string        `key:"note" optional:"yes"`
	Side    string        `key:"side" enum:"port|starboard" optional:"yes"`
	Mode    string        `key:"mode" enum:"a|b" default:"a"`
	Thick   *float64      `key:"thick" unit:"mm" min:"0" max:"500"`
	Temp    *float64      `key:"temp" unit:"degC"`
	Price   *float64      `key:"price" unit:"money"`
	Plain   float64       `key:"plain" default:"2.5"`
	Count   *int          `key:"count" min:"0" max:"9"`
	Wet     *bool         `key:"wet"`
	On      quantity.Date `key:"on" optional:"yes"`
	Lengths []float64     `key:"lengths" unit:"m" optional:"yes"`
	Words   []string      `key:"words" optional:"yes"`
	Grid    [][]float64   `key:"grid" unit:"m" optional:"yes"`
}

func fastAndSlow(t interface{ Fatalf(string, ...any) }, raw []byte) (fast, slow sample, errFast, errSlow error) {
	c := CodecOf(reflect.TypeFor[sample]())
	_, errFast = c.ReadJSON(raw, reflect.ValueOf(&fast).Elem())
	values, err := Object(raw)
	if err != nil {
		return fast, slow, errFast, err
	}
	if _, errSlow = Fill(&slow, values); errSlow == nil {
		for i := range c.slots {
			c.slots[i].tidy(reflect.ValueOf(&slow).Elem().FieldByIndex(c.slots[i].index))
		}
	}
	return fast, slow, errFast, errSlow
}

var objects = []string{
	`{"name":"x"}`,
	`{"name":"x","note":" a\nb ","side":"port","thick":11.9,"count":3,"wet":true,"on":"1996-10","lengths":[1,2.5],"words":["a","b"]}`,
	`{"name":"x","thick":"0.465 in","price":"25 000 EUR","temp":"50 degF"}`,
	`{"name":"x","thick":{"value":0.465,"unit":"in"}}`,
	`{"name":"x","thick":-1}`,
	`{"name":"x","thick":900}`,
	`{"name":"x","side":"left"}`,
	`{"name":"x","count":2.5}`,
	`{"name":"x","what":1}`,
	`{"note":"no name"}`,
	`{"name":"x","grid":[[1,2],[3]]}`,
	`{"name":"x","on":"03/04/2021"}`,
	`{"name":"x","thick":null,"words":[]}`,
	`{"name":"x","plain":01}`,
	`{"name":"x"} {}`,
	`{"name":"x","thick":1,"thick":2}`,
}

func TestFastReadingAgreesWithTheLongWay(t *testing.T) {
	for _, raw := range objects {
		agree(t, []byte(raw))
	}
}

func agree(t *testing.T, raw []byte) {
	t.Helper()
	fast, slow, errFast, errSlow := fastAndSlow(t, raw)
	// A record takes no spread and no blank where a text is required; a formula's input takes both.
	stricter := errFast != nil && (strings.Contains(errFast.Error(), "spread") || strings.Contains(errFast.Error(), "is missing"))
	if (errFast == nil) != (errSlow == nil) && !stricter {
		t.Fatalf("%s: fast %v, slow %v", raw, errFast, errSlow)
	}
	if errFast != nil || errSlow != nil {
		return
	}
	if slow.Mode == "" {
		slow.Mode = "a" // a blank is absent in a record
	}
	if !reflect.DeepEqual(fast, slow) {
		t.Fatalf("%s:\nfast %+v\nslow %+v", raw, fast, slow)
	}
}

func FuzzReadJSON(f *testing.F) {
	for _, raw := range objects {
		f.Add([]byte(raw))
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		agree(t, raw)
	})
}

func TestTypedTextIsKept(t *testing.T) {
	var s sample
	if _, err := CodecOf(reflect.TypeFor[sample]()).ReadJSON([]byte(`{"name":"x","thick":" 20.4# ","price":"25 000 EUR","temp":5,"plain":{"value":3,"unit":"-"}}`), reflect.ValueOf(&s).Elem()); err == nil {
		t.Fatalf("20.4# has two meanings and was read as %v", *s.Thick)
	}
	typed, err := CodecOf(reflect.TypeFor[sample]()).ReadJSON([]byte(`{"name":"x","thick":" .465 in ","price":"25 000 EUR","temp":5}`), reflect.ValueOf(&s).Elem())
	if err != nil {
		t.Fatal(err)
	}
	if want := map[string]string{"thick": ".465 in", "price": "25 000 EUR"}; !reflect.DeepEqual(typed, want) {
		t.Errorf("typed is %v, want %v", typed, want)
	}
	if math.Abs(*s.Thick-0.465*0.0254) > 1e-15 || *s.Price != 25000 {
		t.Errorf("read %v and %v", *s.Thick, *s.Price)
	}
}

// A bound is no value: "<.100" must not become 0.100.
func TestABoundIsRefused(t *testing.T) {
	var s sample
	_, err := CodecOf(reflect.TypeFor[sample]()).ReadJSON([]byte(`{"name":"x","thick":"<12.5 mm"}`), reflect.ValueOf(&s).Elem())
	if err == nil || !strings.Contains(err.Error(), "less than") {
		t.Errorf("a bound gives %v", err)
	}
}

func TestWrittenIsReadBack(t *testing.T) {
	c := CodecOf(reflect.TypeFor[sample]())
	rapid.Check(t, func(t *rapid.T) {
		some := func(g *rapid.Generator[float64], label string) *float64 {
			if rapid.Bool().Draw(t, label+" said") {
				return new(g.Draw(t, label))
			}
			return nil
		}
		s := sample{
			Name: "n" + Tidy(rapid.String().Draw(t, "name")), Note: Tidy(rapid.String().Draw(t, "note")), Mode: "b",
			Thick: some(rapid.Float64Range(0, 0.5), "thick"), Temp: some(rapid.Float64Range(-100, 100), "temp"), Price: some(rapid.Float64(), "price"),
			Lengths: rapid.SliceOfN(rapid.Float64Range(-1e9, 1e9), 1, 4).Draw(t, "lengths"),
		}
		once := c.AppendJSON(nil, reflect.ValueOf(s))
		if !json.Valid(once) {
			t.Fatalf("%s is no JSON", once)
		}
		var back sample
		if _, err := c.ReadJSON(once, reflect.ValueOf(&back).Elem()); err != nil {
			t.Fatal(err)
		}
		if twice := c.AppendJSON(nil, reflect.ValueOf(back)); string(twice) != string(once) {
			t.Fatalf("%s becomes %s", once, twice)
		}
	})
}

func TestListsInCells(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var words []string
		for _, w := range rapid.SliceOf(rapid.String()).Draw(t, "words") {
			if w = Tidy(w); w != "" {
				words = append(words, w)
			}
		}
		if back := SplitList(JoinList(words)); !reflect.DeepEqual(back, words) {
			t.Fatalf("%q comes back as %q", words, back)
		}
	})
}

func BenchmarkReadJSON(b *testing.B) {
	raw := []byte(objects[1])
	raw = []byte(strings.Replace(string(raw), ` a\nb `, "doubler", 1))
	c := CodecOf(reflect.TypeFor[sample]())
	for b.Loop() {
		var s sample
		if _, err := c.ReadJSON(raw, reflect.ValueOf(&s).Elem()); err != nil {
			b.Fatal(err)
		}
	}
}

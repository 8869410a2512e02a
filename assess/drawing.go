package assess

import (
	"math"

	"gonum.org/v1/gonum/interp"

	"oakum/dossier"
	"oakum/formula/hullform"
	"oakum/ship"
)

// Drawing is the ship's lines and what stands where, in metres: x from the after perpendicular forward, y from the middle to port, z up from the
// baseline, girth round the shell from the keel.
type Drawing struct {
	Particulars DrawnSize      `json:"particulars"`
	Profile     DrawnProfile   `json:"profile"`
	Plan        DrawnPlan      `json:"plan"`
	Sections    []DrawnSection `json:"sections"`
	Frames      []DrawnFrame   `json:"frames"`
	Strakes     []DrawnStrake  `json:"strakes"`
	Shell       DrawnShell     `json:"shell"`
	Spaces      []DrawnSpace   `json:"spaces"`
	Gear        []DrawnGear    `json:"gear"`
	Water       *DrawnWater    `json:"water,omitempty"`
	Marks       []Mark         `json:"marks"`
}

// XY is a point of a drawing, m.
type XY [2]float64

// DrawnSize is the size of the sheet: lengths in m, absent where not known.
type DrawnSize struct {
	Length float64  `json:"length"`
	Beam   float64  `json:"beam"`
	Depth  float64  `json:"depth"`
	Draft  *float64 `json:"draft,omitempty"`
	Aft    float64  `json:"aft"`  // x of the aftermost point
	Fore   float64  `json:"fore"` // x of the foremost point
}

// DrawnProfile is the view from the side.
type DrawnProfile struct {
	Outline    []XY        `json:"outline"`
	Deck       []XY        `json:"deck"`
	Waterlines []DrawnLine `json:"waterlines"`
}

// DrawnPlan is the view from above; only the port half is drawn, the other mirrors it.
type DrawnPlan struct {
	Outline    []XY        `json:"outline"`
	Waterlines []DrawnLine `json:"waterlines"`
}

// DrawnLine is a line of one height.
type DrawnLine struct {
	Z      float64 `json:"z"`
	Label  string  `json:"label,omitempty"`
	Points []XY    `json:"points,omitempty"`
}

// DrawnSection is one side of a section: y, z.
type DrawnSection struct {
	X      float64 `json:"x"`
	Points []XY    `json:"points"`
}

// DrawnFrame is a frame that the drawing labels.
type DrawnFrame struct {
	Label string  `json:"label"`
	X     float64 `json:"x"`
}

// DrawnStrake is a row of plates on the rolled-out shell: x, girth of its edges.
type DrawnStrake struct {
	Name  string `json:"name"`
	Lower []XY   `json:"lower"`
	Upper []XY   `json:"upper"`
}

// DrawnShell is the rolled-out shell: its upper edge and lines of one height, x and girth.
type DrawnShell struct {
	Edge  []XY        `json:"edge"`
	Lines []DrawnLine `json:"lines"`
}

// DrawnSpace is a compartment as a box.
type DrawnSpace struct {
	ID   string     `json:"id"`
	Name string     `json:"name"`
	X    [2]float64 `json:"x"`
	Y    [2]float64 `json:"y"`
	Z    [2]float64 `json:"z"`
}

// Mark is a thing at its place. A coordinate that is not known is absent.
type Mark struct {
	Kind  string   `json:"kind"`
	ID    string   `json:"id"`
	Label string   `json:"label"`
	Place string   `json:"place"`
	X     float64  `json:"x"`
	X1    *float64 `json:"x1,omitempty"` // the other end, where the place is a range
	Y     *float64 `json:"y,omitempty"`
	Z     *float64 `json:"z,omitempty"`
	Girth *float64 `json:"girth,omitempty"`
	Side  string   `json:"side"`
	Worry int      `json:"worry"`
	Text  string   `json:"text,omitempty"` // the figure that says why
}

// Drawing draws the ship with every record that has a place. It refuses where no hull form is entered.
func (b *Brief) Drawing() (*Drawing, error) { return b.draw() }

func (c *inquiry) drawing(b *Brief) (*Drawing, error) {
	h, err := c.hull()
	if err != nil {
		return nil, err
	}
	d := &Drawing{Frames: []DrawnFrame{}, Strakes: []DrawnStrake{}, Spaces: []DrawnSpace{}, Gear: []DrawnGear{}}
	d.size(c, h)
	if err := d.lines(h, c.sheer()); err != nil {
		return nil, err
	}
	l := c.locator()
	d.frames(l, h)
	d.strakes(l, h)
	d.spaces(c.d)
	d.gear(c.d)
	d.water(c)
	d.Marks = c.marks(l, worries(b))
	return d, nil
}

func (d *Drawing) size(c *inquiry, h *hullform.Hull) {
	box := h.Bounds()
	d.Particulars = DrawnSize{Length: h.Length(), Beam: box.Size().Y, Depth: box.Size().Z, Aft: box.Low.X, Fore: box.High.X}
	p := c.particulars
	if p.Depth != nil {
		d.Particulars.Depth = *p.Depth
	}
	d.Particulars.Draft = p.DesignDraft
}

// sheer is the height of the deck at the side as the hull form tells it, straight between its stations. The hull that is reckoned with runs to the
// highest waterline of its offsets; the drawing shows where her deck is.
func (c *inquiry) sheer() func(x float64) float64 {
	for _, e := range dossier.All[ship.HullForm](c.d) {
		if b := e.Body; len(b.Stations) > 1 && len(b.DeckHeights) == len(b.Stations) {
			var line interp.PiecewiseLinear
			if line.Fit(b.Stations, b.DeckHeights) == nil {
				return line.Predict
			}
		}
	}
	return func(float64) float64 { return math.NaN() }
}

// stationsOf spreads n places along the hull, drawn in a hair from the ends so that each has a section.
func stationsOf(h *hullform.Hull, n int) []float64 {
	low, high := h.Bounds().Low.X, h.Bounds().High.X
	eps := 1e-4 * (high - low)
	xs := make([]float64, n)
	for i := range xs {
		t := 0.5 - 0.5*math.Cos(math.Pi*float64(i)/float64(n-1)) // closer at the ends, where the lines turn
		xs[i] = low + eps + t*(high-low-2*eps)
	}
	return xs
}

// lines draws the hull; sheer gives the height of her deck at x, NaN where it is not entered.
func (d *Drawing) lines(h *hullform.Hull, sheer func(x float64) float64) error {
	low, high := h.Bounds().Low.Z, h.Bounds().High.Z
	var heights []float64
	for z := math.Ceil(low + 0.25); z < high; z++ {
		heights = append(heights, z)
	}
	xs := stationsOf(h, 81)
	e, err := h.Expansion(xs, heights, hullform.Port)
	if err != nil {
		return err
	}
	for i, x := range xs {
		z := sheer(x)
		if math.IsNaN(z) {
			z = e.Deck[i].Z
		}
		d.Profile.Deck = append(d.Profile.Deck, XY{round(x), round(z)})
		d.Plan.Outline = append(d.Plan.Outline, XY{round(x), round(math.Abs(e.Deck[i].Y))})
		d.Shell.Edge = append(d.Shell.Edge, XY{round(x), round(e.Girth[i])})
	}
	d.Profile.Outline = silhouette(h, xs, d.Profile.Deck)
	for _, line := range e.Lines {
		on := DrawnLine{Z: line.Height, Points: []XY{}}
		from := DrawnLine{Z: line.Height, Points: []XY{}}
		for _, s := range line.Along {
			on.Points = append(on.Points, XY{round(s.X), round(s.Girth)})
			if y, err := h.HalfBreadth(s.X, line.Height, hullform.Port); err == nil {
				from.Points = append(from.Points, XY{round(s.X), round(y)})
			}
		}
		d.Shell.Lines = append(d.Shell.Lines, on)
		d.Plan.Waterlines = append(d.Plan.Waterlines, from)
		d.Profile.Waterlines = append(d.Profile.Waterlines, DrawnLine{Z: line.Height})
	}
	for _, x := range stationsOf(h, 23) {
		r, err := h.Rib(x, hullform.Port)
		if err != nil {
			continue
		}
		s := DrawnSection{X: round(x)}
		for _, p := range r.Points {
			s.Points = append(s.Points, XY{round(p.Y), round(p.Z)})
		}
		d.Sections = append(d.Sections, s)
	}
	return nil
}

// skin is the least half-breadth, m, that counts as hull in the silhouette: on the centre plane itself a form that is given wider than she is runs on
// as a sheet of no thickness.
const skin = 0.01

// silhouette is the view from the side: along the bottom from aft, and back along the deck.
func silhouette(h *hullform.Hull, xs []float64, deck []XY) []XY {
	var outline []XY
	for _, x := range xs {
		r, err := h.Rib(x, hullform.Port)
		if err != nil {
			continue
		}
		for _, p := range r.Points {
			if math.Abs(p.Y) > skin {
				outline = append(outline, XY{round(x), round(p.Z)})
				break
			}
		}
	}
	for i := len(deck) - 1; i >= 0; i-- {
		outline = append(outline, deck[i])
	}
	return outline
}

// frames labels every fifth or tenth frame, so that the numbers stand clear of each other.
func (d *Drawing) frames(l ship.Locator, h *hullform.Hull) {
	if l.Frames == nil {
		return
	}
	last := math.NaN()
	for n := 0; n < 1000; n += 5 {
		label := frameName(n)
		x, err := l.Frames.X(label, nil)
		if err != nil || x < h.Bounds().Low.X || x > h.Bounds().High.X {
			continue
		}
		if !math.IsNaN(last) && math.Abs(x-last) < h.Length()/40 {
			continue
		}
		d.Frames = append(d.Frames, DrawnFrame{label, round(x)})
		last = x
	}
}

func (d *Drawing) strakes(l ship.Locator, h *hullform.Hull) {
	if l.Shell == nil {
		return
	}
	for _, name := range l.Shell.Names() {
		s := DrawnStrake{Name: name, Lower: []XY{}, Upper: []XY{}}
		for _, x := range stationsOf(h, 41) {
			spot := l.Locate(ship.Place{Frame: "0", Offset: new(offsetTo(l, x)), Strake: name, Side: ship.Port})
			if ship.Known(spot.G0) && ship.Known(spot.G1) {
				s.Lower = append(s.Lower, XY{round(x), round(spot.G0)})
				s.Upper = append(s.Upper, XY{round(x), round(spot.G1)})
			}
		}
		d.Strakes = append(d.Strakes, s)
	}
}

func (d *Drawing) spaces(from *dossier.Dossier) {
	for _, e := range dossier.All[ship.Compartment](from) {
		c := e.Body
		if c.X0 == nil || c.X1 == nil || c.Z0 == nil || c.Z1 == nil {
			continue
		}
		s := DrawnSpace{ID: e.ID, Name: c.Name, X: [2]float64{*c.X0, *c.X1}, Z: [2]float64{*c.Z0, *c.Z1}}
		if c.Y0 != nil && c.Y1 != nil {
			s.Y = [2]float64{*c.Y0, *c.Y1}
		}
		d.Spaces = append(d.Spaces, s)
	}
}

// round keeps millimetres: a drawing shows no more.
func round(x float64) float64 { return math.Round(x*1000) / 1000 }

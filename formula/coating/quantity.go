package coating

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// QuantityIn is what is to be painted, and the paint.
type QuantityIn struct {
	Areas    []float64 `key:"areas" unit:"m2" symbol:"areas" min:"0" max:"1000000" most:"10000" label:"areas to be painted"`
	DFT      float64   `key:"dft" unit:"um" symbol:"d" over:"0" max:"5000" label:"dry film of one coat"`
	Solids   float64   `key:"solids" unit:"%" symbol:"vs" over:"0" max:"100" label:"solids by volume, as in the tin"`
	Thinning float64   `key:"thinning" unit:"%" symbol:"th" default:"0" min:"0" max:"100" label:"thinner added, of the paint's volume"`
	Loss     float64   `key:"loss" unit:"%" symbol:"lo" default:"30" min:"0" max:"90" label:"paint lost" help:"30 % for airless spray, 10 to 15 % for brush and roller, 50 % and more for air spray; more in wind and on frames"`
	Profile  float64   `key:"profile" unit:"um" symbol:"pr" default:"0" min:"0" max:"1000" label:"roughness of the blasted steel" help:"the first coat has to fill it: 10, 35, 60 or 125 um of dry film for up to 50, 100, 150 and more"`
	Coats    int       `key:"coats" symbol:"k" default:"1" min:"1" max:"20" label:"coats of that film"`
	Pack     *float64  `key:"pack" unit:"L" symbol:"pk" over:"0" max:"1000" label:"size of a pack"`
}

// QuantityOut is how much paint.
type QuantityOut struct {
	Area      float64  `key:"area" unit:"m2" symbol:"A" label:"area" expr:"sum(areas)"`
	Thinned   float64  `key:"solids_thinned" unit:"%" symbol:"vt" label:"solids once thinned" expr:"vs/(1+th)"`
	Spreading float64  `key:"spreading_rate" unit:"m2/L" symbol:"sr" label:"spreading rate, nothing lost" expr:"vs/d/1000"`
	Practical float64  `key:"spreading_practical" unit:"m2/L" symbol:"sp" label:"spreading rate, losses taken off" expr:"sr*(1-lo)"`
	Wet       float64  `key:"wet_film" unit:"um" symbol:"w" label:"wet film to put on" expr:"d/vt"`
	Dead      float64  `key:"dead_film" unit:"um" symbol:"df" label:"dry film that the roughness swallows, once"`
	Litres    float64  `key:"litres" unit:"L" symbol:"Q" label:"paint" expr:"A*(k*d+df)/vs/(1-lo)"`
	Thinner   float64  `key:"thinner" unit:"L" symbol:"Qt" label:"thinner" expr:"Q*th"`
	Packs     *float64 `key:"packs" symbol:"np" label:"packs"`

	Warnings calc.Warnings `key:"-"`
}

// deadFilms are the dry films lost in a blasted surface, by roughness up to so much, m.
var deadFilms = []struct{ to, film float64 }{{50e-6, 10e-6}, {100e-6, 35e-6}, {150e-6, 60e-6}, {math.Inf(1), 125e-6}}

// DeadFilm is the dry film that fills a roughness, m; none for steel that was not blasted.
func DeadFilm(profile float64) float64 {
	if profile == 0 {
		return 0
	}
	for _, r := range deadFilms {
		if profile <= r.to+1e-12 {
			return r.film
		}
	}
	return 0
}

// Quantity is the paint that an area takes.
//
// Spreading rate = 10 VS/DFT (m2/L, per cent, micrometres); litres = area (coats * DFT + dead film) / VS / (1 - loss); wet film = DFT / VS once thinned.
// The dead film fills the blast profile and counts once. Losses are the painter's guess: weather, frames and skill move them by half.
var Quantity = calc.Formula[QuantityIn, QuantityOut]{
	ID:       "coating.quantity",
	Title:    "Paint for an area",
	About:    "How many litres and packs an area takes at a wanted dry film, with losses, thinning and the roughness of the steel.",
	Holds:    "Even film on the areas given. Frames, weld seams, stripe coats and touching up come on top.",
	Accuracy: "The film exact, the losses to a third.",
	Sources: []source.Ref{
		{Key: "spreading-table", At: "10 VS/DFT; losses of brush, roller and airless spray"},
		{Key: "tsr-losses", At: "dry film lost in the blast profile"},
	},
	Cautions: []calc.Caution{calc.Confined},
	Fn:       amount,
	Steps: func(in QuantityIn, out QuantityOut) []calc.Step {
		steps := []calc.Step{{Symbol: "df", Value: out.Dead, Unit: "m", Text: "table: 10, 35, 60, 125 um for a roughness up to 50, 100, 150 um and beyond"}}
		if out.Packs != nil {
			steps = append(steps, calc.Step{Symbol: "np", Value: *out.Packs, Unit: "-", Text: "litres over the size of a pack, rounded up"})
		}
		return steps
	},
}

func amount(in QuantityIn) (out QuantityOut, err error) {
	for _, a := range in.Areas {
		out.Area += a
	}
	if out.Area == 0 {
		return out, field.Refuse("areas", "areas is empty or zero: there is nothing to paint")
	}
	out.Thinned = in.Solids / (1 + in.Thinning)
	out.Spreading = in.Solids / in.DFT / 1000
	out.Practical = out.Spreading * (1 - in.Loss)
	out.Wet = in.DFT / out.Thinned
	out.Dead = DeadFilm(in.Profile)
	out.Litres = out.Area * (float64(in.Coats)*in.DFT + out.Dead) / in.Solids / (1 - in.Loss)
	out.Thinner = out.Litres * in.Thinning
	if in.Pack != nil {
		out.Packs = new(math.Ceil(out.Litres / *in.Pack - 1e-9))
	}
	if in.Solids < 0.1 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("%.2g %% solids is very thin paint: write 60 for 60 %%", 100*in.Solids))
	}
	if in.Loss < 0.05 {
		out.Warnings = append(out.Warnings, "hardly any loss is counted: brush and roller lose 10 to 15 %")
	}
	if in.Profile > 300e-6 {
		out.Warnings = append(out.Warnings, "the table of dead film ends at 300 um: pitted steel takes more than is counted here")
	}
	return out, nil
}

package plating

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Looked is a plate, a cell or a space, with how often it was measured.
type Looked struct {
	Place    string `key:"place" label:"place"`
	Readings int    `key:"readings" default:"0" min:"0" max:"1000000" label:"readings taken there"`
	Below    bool   `key:"below" optional:"yes" label:"found below the limit"`
}

// SampleIn is how much was looked at and what was found.
type SampleIn struct {
	Plates     *int     `key:"plates" symbol:"N" min:"1" max:"1000000" label:"plates there are" help:"left out, the bound is for plates without number"`
	Inspected  *int     `key:"inspected" symbol:"n" min:"1" max:"1000000" label:"plates measured"`
	Below      *int     `key:"below" symbol:"k" min:"0" max:"1000000" label:"of those, below the limit"`
	Places     []Looked `key:"places" optional:"yes" most:"200000" label:"or every place there is, with its readings"`
	Confidence float64  `key:"confidence" symbol:"c" default:"0.95" min:"0.5" max:"0.9999" label:"confidence"`
	Wanted     float64  `key:"wanted" symbol:"w" default:"0.05" over:"0" under:"1" label:"largest share below the limit that one is willing to miss"`
}

// SampleOut is what the sample proves.
type SampleOut struct {
	Inspected  int      `key:"inspected" symbol:"ni" label:"plates measured"`
	Found      int      `key:"below" symbol:"ki" label:"of those, below the limit"`
	Inspection *float64 `key:"share_inspected" symbol:"si" label:"share of the plates measured"`
	ShareBelow float64  `key:"share_below" symbol:"sb" label:"share below the limit among those" expr:"ki/ni"`
	Upper      float64  `key:"upper_share" symbol:"U" label:"share below the limit is at most this, with the confidence given"`
	UpperCount *float64 `key:"upper_plates" symbol:"D" label:"plates below the limit there may be"`
	Needed     *float64 `key:"needed" symbol:"nn" label:"plates to measure in all for the wanted bound, if no more are found below"`
	More       *float64 `key:"needed_more" symbol:"nm" label:"that many more" expr:"max(nn-ni, 0)"`
	Never      []string `key:"never_looked" optional:"yes" label:"places never looked at"`

	Warnings calc.Warnings `key:"-"`
}

// Sample is what a sample of plates proves about all of them.
//
// The bound is the one-sided Clopper-Pearson one: the share U at which k or fewer below the limit among n would have the chance 1 - c. For k = 0
// it is 1 - (1-c)^(1/n). Of a finite number of plates the hypergeometric law takes the binomial's place, and the bound is the largest number
// of thin plates that the sample does not contradict. It holds for plates drawn at random; plates picked where it is easy to stand prove little.
var Sample = calc.Formula[SampleIn, SampleOut]{
	ID:       "plating.sample",
	Title:    "What a sample of readings proves",
	About:    "How large a share of the plates may still be below the limit after so many were measured, how many more to measure, and which were never looked at.",
	Holds:    "Plates drawn at random, one verdict a plate. A plate measured at one spot is not a plate known: see plating.extreme for its worst spot.",
	Accuracy: "Exact for a random draw, and never too hopeful.",
	Sources: []source.Ref{
		{Key: "clopper-pearson-1934", At: "the exact limits of a binomial share"},
		{Key: "wright-1991", At: "exact limits of a hypergeometric count"},
	},
	Fn: sample,
	Steps: func(in SampleIn, out SampleOut) []calc.Step {
		step := calc.Step{Symbol: "U", Value: out.Upper, Unit: "-"}
		switch {
		case in.Plates != nil || len(in.Places) > 0:
			step.Text = "largest count of thin plates under which so few among the measured have a chance over 1-c (hypergeometric), over all plates"
		case out.Found == 0:
			step.Formula, step.Text = "1-(1-c)^(1/ni)", "none of n below the limit"
		default:
			step.Text = "Clopper and Pearson: quantile c of the beta law with k+1 and n-k"
		}
		return []calc.Step{step}
	},
}

func sample(in SampleIn) (out SampleOut, err error) {
	n, k, plates, err := in.counts(&out)
	if err != nil {
		return out, err
	}
	out.Inspected, out.Found, out.ShareBelow = n, k, float64(k)/float64(n)
	if plates == 0 {
		out.Upper = BinomialUpper(k, n, in.Confidence)
	} else {
		d := HypergeometricUpper(k, n, plates, in.Confidence)
		out.Inspection = new(float64(n) / float64(plates))
		out.Upper, out.UpperCount = float64(d)/float64(plates), new(float64(d))
	}
	if need, ok := needed(k, plates, in.Confidence, in.Wanted); ok {
		out.Needed = new(float64(need))
		out.More = new(math.Max(float64(need-n), 0))
	} else {
		out.Warnings = append(out.Warnings, fmt.Sprintf("no number of readings gives the bound of %g %%: already %d of %d plates are below the limit", 100*in.Wanted, k, plates))
	}
	if len(out.Never) > 0 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("%d places were never looked at; they are not known to be sound", len(out.Never)))
	}
	if k == 0 {
		out.Warnings = append(out.Warnings, "none below the limit among those measured does not mean none")
	}
	return out, nil
}

// counts gives the sample and, where the number of plates is finite, that number; 0 stands for without number.
func (in SampleIn) counts(out *SampleOut) (n, k, plates int, err error) {
	if len(in.Places) > 0 {
		if in.Inspected != nil || in.Below != nil || in.Plates != nil {
			return 0, 0, 0, field.Refuse("places", "give the places, or how many were inspected, not both")
		}
		for i, p := range in.Places {
			switch {
			case p.Readings > 0:
				n++
				if p.Below {
					k++
				}
			case p.Below:
				return 0, 0, 0, field.Refuse("places", "places[%d] (%s) is found below the limit without a reading", i, p.Place)
			default:
				out.Never = append(out.Never, p.Place)
			}
		}
		if n == 0 {
			return 0, 0, 0, field.Refuse("places", "no place has a reading: nothing is known of any")
		}
		return n, k, len(in.Places), nil
	}
	if in.Inspected == nil {
		return 0, 0, 0, field.Refuse("inspected", "inspected is missing: how many plates were measured?")
	}
	n = *in.Inspected
	if in.Below != nil {
		k = *in.Below
	} else {
		return 0, 0, 0, field.Refuse("below", "below is missing: how many of them were below the limit? 0 is an answer")
	}
	if in.Plates != nil {
		plates = *in.Plates
	}
	switch {
	case k > n:
		return 0, 0, 0, field.Refuse("below", "below (%d) is more than inspected (%d)", k, n)
	case plates > 0 && n > plates:
		return 0, 0, 0, field.Refuse("inspected", "inspected (%d) is more than plates (%d)", n, plates)
	}
	return n, k, plates, nil
}

package docking

import (
	"fmt"
	"math"
	"strings"
)

// Verdict is the answer in one word.
type Verdict string

// The three answers.
const (
	Safe     Verdict = "safe"
	Marginal Verdict = "marginal"
	Unsafe   Verdict = "unsafe"
)

// standing is a ship on her first block: masses in kg, lengths in m, sinkage in kg/m.
type standing struct {
	w, kg, km, fsm, tpc float64
	p                   float64 // upthrust
	gmRequired, margin  float64 // what is wanted
}

// gm is the metacentric height left, on the basis of her weight: free surfaces over the water still displaced, as the published examples count them.
func (s standing) gm() float64 { return s.km - s.kg - s.p*s.km/s.w - s.fsm/(s.w-s.p) }

// moment is the righting moment per radian, kg m.
func (s standing) moment() float64 { return s.w * s.gm() }

// upthrust is the upthrust that leaves a GM of wanted on the basis of her weight, at constant KM. With u the water still displaced, W gm = W wanted
// is KM u2 - W (KG + wanted) u - FSM W = 0.
func (s standing) upthrust(wanted float64) float64 {
	b := s.w * (s.kg + wanted)
	return s.w - (b+math.Sqrt(b*b+4*s.km*s.fsm*s.w))/(2*s.km)
}

// upthrustAlt is the same with the GM wanted on the basis of the water displaced: (KM - wanted) u2 - W KG u - FSM W = 0.
func (s standing) upthrustAlt(wanted float64) float64 {
	b := s.w * s.kg
	return s.w - (b+math.Sqrt(b*b+4*(s.km-wanted)*s.fsm*s.w))/(2*(s.km-wanted))
}

// critical is the upthrust that leaves no righting moment; below zero she is unstable afloat.
func (s standing) critical() float64 { return s.upthrust(0) }

// fallLeft is how far the water may fall from here before she turns unstable, as she settles evenly, m.
func (s standing) fallLeft() float64 { return (s.critical() - s.p) / s.tpc }

// lower is how far G must come down to have what is wanted; below zero it is how far it may rise.
func (s standing) lower() float64 {
	forGM := s.gmRequired - s.gm()
	u := s.w - s.p - s.margin*s.tpc
	if u <= 0 {
		return forGM
	}
	return max(forGM, s.kg-(u*s.km/s.w-s.fsm/u))
}

func (s standing) verdict() Verdict {
	switch {
	case s.gm() <= 0 || s.critical() <= s.p:
		return Unsafe
	case s.gm() < s.gmRequired || s.fallLeft() < s.margin:
		return Marginal
	}
	return Safe
}

// reason says why, when is the moment judged: "when she lies flat".
func (s standing) reason(when string) string {
	gm, left := s.gm(), s.fallLeft()
	switch {
	case s.critical() <= 0:
		return fmt.Sprintf("UNSAFE: she has no stability afloat (GM %s m with free surfaces); she must not be docked like this", metres(s.km-s.kg-s.fsm/s.w))
	case s.verdict() == Unsafe:
		return fmt.Sprintf("UNSAFE: her GM %s is %s m; she turns unstable before, at an upthrust of %.4g t of the %.4g t there would be", when, metres(gm), s.critical()/1000, s.p/1000)
	}
	head := "Safe by these figures"
	if s.verdict() == Marginal {
		head = "MARGINAL"
	}
	return fmt.Sprintf("%s: GM %s is %s m (%s m wanted), and the water may fall another %s m before she turns unstable (%s m wanted)",
		head, when, metres(gm), metres(s.gmRequired), metres(left), metres(s.margin))
}

// change says what would change the verdict. trim is what is there to be taken out, trimMax what the wanted GM allows; NaN where trim has no part.
func (s standing) change(trim, trimMax float64) string {
	var ways []string
	down := s.lower()
	if s.verdict() == Safe {
		if !math.IsNaN(trimMax) {
			ways = append(ways, fmt.Sprintf("a trim of more than %s m against the blocks (now %s m)", metres(trimMax), metres(math.Abs(trim))))
		}
		ways = append(ways, fmt.Sprintf("a centre of gravity %s m higher", metres(-down)))
		return "It stops being safe with " + strings.Join(ways, ", or ") + "."
	}
	if !math.IsNaN(trimMax) && trimMax > 0 && math.Abs(trim) > trimMax {
		ways = append(ways, fmt.Sprintf("trim her to %s m or less against the blocks (now %s m) for the GM wanted", metres(trimMax), metres(math.Abs(trim))))
	}
	if down > 0 {
		ways = append(ways, fmt.Sprintf("bring the centre of gravity down by %s m (weights low, solid ballast low, topweight off)", metres(down)))
	}
	if s.fsm > 0 {
		ways = append(ways, fmt.Sprintf("press up or empty the slack tanks (worth %s m of GM)", metres(s.fsm/(s.w-s.p))))
	}
	return "What would change it: " + strings.Join(ways, "; ") + "; side blocks or shores set before she loses her stability, as the dockmaster decides."
}

func metres(x float64) string { return fmt.Sprintf("%.3f", x) }

package ship

import (
	"fmt"
	"strings"
)

// Side of the ship.
type Side string

// The sides. The empty one is not known.
const (
	Port      Side = "port"
	Starboard Side = "starboard"
	Centre    Side = "centre"
	Both      Side = "both"
)

// sides holds the spellings met in reports and drawings, in small letters without points and brackets.
var sides = map[string]Side{
	"p": Port, "ps": Port, "port": Port, "port side": Port, "portside": Port, "l": Port, "left": Port, "lhs": Port, "larboard": Port,
	"bb": Port, "ba": Port, "backbord": Port, "babord": Port, "bâbord": Port, "bakboord": Port, "babor": Port, "sinistra": Port, "bombordo": Port,
	"s": Starboard, "sb": Starboard, "stb": Starboard, "stbd": Starboard, "stbd side": Starboard, "sbd": Starboard, "starboard": Starboard,
	"starboard side": Starboard, "r": Starboard, "right": Starboard, "rhs": Starboard,
	"tr": Starboard, "steuerbord": Starboard, "styrbord": Starboard, "tribord": Starboard, "stuurboord": Starboard, "estribor": Starboard, "dritta": Starboard, "estibordo": Starboard,
	"c": Centre, "cl": Centre, "c/l": Centre, "centre line": Centre, "center line": Centre, "ctr": Centre, "centre": Centre, "center": Centre, "centreline": Centre, "centerline": Centre, "mid": Centre, "middle": Centre,
	"mitte": Centre, "mittschiffs": Centre, "midtskips": Centre, "milieu": Centre,
	"both": Both, "ps&sb": Both, "p&s": Both, "p+s": Both, "p/s": Both, "s/p": Both, "ps/sb": Both, "bb/stb": Both, "bb+stb": Both, "port&starboard": Both,
	"port and starboard": Both, "p and s": Both, "both sides": Both, "p)(s": Both, "beide": Both, "b": Both,
}

var sideMarks = strings.NewReplacer(".", "", "\u00a0", " ", "'", "", " & ", "&", " + ", "+", " / ", "/", "-", "")

// ParseSide reads a side as people write it: P, stbd, BB, StB, bâbord, (s), both. The empty text is the unknown side. A side must not be
// guessed: what has two readings is refused.
func ParseSide(text string) (Side, error) {
	word := strings.Trim(sideMarks.Replace(strings.ToLower(text)), " ()")
	if word == "" || word == "?" {
		return "", nil
	}
	if s, ok := sides[word]; ok {
		return s, nil
	}
	return "", fmt.Errorf("%q is no side: write port, starboard, centre or both", text)
}

// UnmarshalText reads what ParseSide reads.
func (s *Side) UnmarshalText(text []byte) error {
	switch Side(text) {
	case Port, Starboard, Centre, Both, "":
		*s = Side(text)
		return nil
	}
	side, err := ParseSide(string(text))
	if err != nil {
		return err
	}
	*s = side
	return nil
}

// MarshalText gives the word.
func (s Side) MarshalText() ([]byte, error) { return []byte(s), nil }

// Sign is +1 to port, -1 to starboard, 0 otherwise: the sign of y.
func (s Side) Sign() float64 {
	switch s {
	case Port:
		return 1
	case Starboard:
		return -1
	default:
		return 0
	}
}

// Meets tells whether something on this side can be on that one: both meets either, the unknown side meets any.
func (s Side) Meets(o Side) bool {
	return s == o || s == "" || o == "" || s == Both && o != Centre || o == Both && s != Centre
}

package intake

import (
	"strings"

	"oakum/dossier"
	"oakum/field"
)

// meaning is what a column holds: a field, and for a reading the side and the end of the plate that the column goes for. Each says that the heading
// names what was read: a tank, a pump, a station.
type meaning struct {
	field, side, end string
	each             bool
}

// String is the meaning as the guess carries it: thickness, thickness_port, thickness_forward_port.
func (m meaning) String() string {
	s := m.field
	if m.end != "" {
		s += "_" + m.end
	}
	if m.side != "" {
		s += "_" + m.side
	}
	if m.each {
		s += "_each"
	}
	return s
}

// parseMeaning reads what String gives.
func parseMeaning(text string, k dossier.Kind) (m meaning, ok bool) {
	m.field = text
	if head, each := strings.CutSuffix(text, "_each"); each {
		f, isField := k.Field(head)
		return meaning{field: head, each: true}, profileOf(k.Name).subject != "" && isField && f.Type == field.Number
	}
	for range 3 {
		if known := isMeaning(m.field, k); known {
			return m, true
		}
		i := strings.LastIndexByte(m.field, '_')
		if i < 0 {
			return m, false
		}
		switch tail := m.field[i+1:]; tail {
		case "port", "starboard":
			if m.side != "" {
				return m, false
			}
			m.side = tail
		case "forward", "aft", "mid":
			if m.end != "" {
				return m, false
			}
			m.end = tail
		default:
			return m, false
		}
		m.field = m.field[:i]
	}
	return m, false
}

func isMeaning(key string, k dossier.Kind) bool {
	_, isField := k.Field(key)
	return isField || derived[key] != "" || key == meansPlaceInText && placed(k) || key == meansStrakeNumber && placed(k)
}

// sided tells whether a field can be read on a side or an end of its own: figures, of a kind with a place.
func sided(key string, k dossier.Kind) bool {
	if derived[key] != "" {
		return true
	}
	f, ok := k.Field(key)
	return ok && placed(k) && (f.Type == field.Number || key == "remark" || key == "notes")
}

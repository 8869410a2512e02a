package ship

import (
	"regexp"
	"strings"
)

var (
	sideTail = regexp.MustCompile(`(?i)^(.*?[\d½¼¾A-Z])[\s,;/]*(?:\(\s*(p|s|ps|sb|stb|stbd|c|bb)\s*\)|\s(p|s|ps|sb|stb|stbd|port|starboard|bb))\.?$`)
	strakeRx = regexp.MustCompile(`(?i)^(?:strakes?|str|stk|gang|virures?|huidgang)\.?\s+(?:no\.?\s*)?`)
)

// Settle brings the names of a place into their one written form: "fr. 37 1/2 (P)" becomes frame 37½ and side port, "38-39" a range, "37+0.2"
// frame and offset. What it can't read stays as it was typed.
func (p *Place) Settle() {
	if !plainFrame(p.Frame) && p.Frame != "" {
		p.settleFrame()
	}
	if !plainFrame(p.FrameTo) && p.FrameTo != "" {
		p.FrameTo = frameOrText(p.FrameTo)
	}
	p.Strake, p.StrakeTo = settleStrakes(p.Strake, p.StrakeTo)
	p.Space, p.Where = strings.TrimSpace(p.Space), strings.TrimSpace(p.Where)
}

func (p *Place) settleFrame() {
	text := strings.TrimSpace(p.Frame)
	text = strings.Trim(text, `"“”`)
	if m := sideTail.FindStringSubmatch(text); m != nil {
		if side, err := ParseSide(m[2] + m[3]); err == nil && (p.Side == "" || p.Side == side) {
			p.Side, text = side, strings.TrimSpace(m[1])
		}
	}
	bare, _ := withoutFrameWord(text)
	if f, ok := readFrame(bare); ok {
		p.Frame = f.String()
		return
	}
	if name, offset, ok := readOffset(bare); ok && (p.Offset == nil || *p.Offset == offset) {
		f, _ := readFrame(name)
		p.Frame, p.Offset = f.String(), &offset
		return
	}
	for _, rx := range frameRanges {
		m := rx.FindStringSubmatch(bare)
		if m == nil || p.FrameTo != "" {
			continue
		}
		from, okFrom := readFrame(m[1])
		end, _ := withoutFrameWord(m[2])
		to, okTo := readFrame(end)
		if okFrom && okTo {
			p.Frame, p.FrameTo = from.String(), to.String()
			return
		}
	}
	p.Frame = strings.TrimSpace(p.Frame)
}

func frameOrText(text string) string {
	text = strings.TrimSpace(text)
	bare, _ := withoutFrameWord(text)
	if f, ok := readFrame(bare); ok {
		return f.String()
	}
	return text
}

// settleStrakes writes strake letters as capitals and splits "C-E".
func settleStrakes(from, to string) (string, string) {
	from, to = strake(from), strake(to)
	if i := strings.IndexByte(from, '-'); to == "" && i > 0 && i < len(from)-1 && short(from[:i]) && short(from[i+1:]) {
		return from[:i], from[i+1:]
	}
	return from, to
}

func strake(text string) string {
	if text == "" || len(text) == 1 && text[0] >= 'A' && text[0] <= 'Z' {
		return text
	}
	text = strings.TrimSpace(strakeRx.ReplaceAllString(strings.TrimSpace(text), ""))
	if len(text) <= 5 {
		return strings.ToUpper(text)
	}
	return text
}

// short tells whether a text can be the name of a strake: one or two letters, or a figure of one or two places.
func short(s string) bool { return len(s) == 1 || len(s) == 2 }

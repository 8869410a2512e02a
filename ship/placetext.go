package ship

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"oakum/quantity"
)

// text writes the parts that are said, joined by commas. What might be misread stands in quotes.
func (p Place) text() string {
	var parts []string
	add := func(s string) { parts = append(parts, s) }
	switch {
	case p.Frame != "":
		s := "fr " + bareOr(p.Frame, isFrameName)
		if p.Offset != nil {
			s += signed(*p.Offset) + " m"
		}
		if p.FrameTo != "" {
			s += " to " + bareOr(p.FrameTo, isFrameName)
		}
		add(s)
	default:
		if p.Offset != nil {
			add("offset " + signed(*p.Offset) + " m")
		}
		if p.FrameTo != "" {
			add("to fr " + bareOr(p.FrameTo, isFrameName))
		}
	}
	switch {
	case p.Strake != "" && p.StrakeTo != "":
		add("strake " + bareOr(p.Strake, isName) + " to " + bareOr(p.StrakeTo, isName))
	case p.Strake != "":
		add("strake " + bareOr(p.Strake, isName))
	case p.StrakeTo != "":
		add("to strake " + bareOr(p.StrakeTo, isName))
	}
	if p.Height != nil {
		add("height " + strconv.FormatFloat(*p.Height, 'f', -1, 64) + " m")
	}
	if p.Side != "" {
		add(string(p.Side))
	}
	if p.Space != "" {
		add("in " + bareOr(p.Space, isName))
	}
	if p.Where != "" {
		add(quoted(p.Where))
	}
	return strings.Join(parts, ", ")
}

func signed(x float64) string {
	s := strconv.FormatFloat(x, 'f', -1, 64)
	if !strings.HasPrefix(s, "-") {
		s = "+" + s
	}
	return s
}

var name = regexp.MustCompile(`^[\p{L}\p{N}][\p{L}\p{N} .&/()'’½-]*$`)

func isFrameName(s string) bool {
	f, ok := readFrame(s)
	return ok && f.String() == s
}

func isName(s string) bool {
	return name.MatchString(s) && strings.TrimSpace(s) == s && !strings.Contains(s, " to ")
}

func bareOr(s string, bare func(string) bool) string {
	if bare(s) {
		return s
	}
	return quoted(s)
}

func quoted(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(s) + `"`
}

// ParsePlace reads a place: its written form, and the looser ways people write one ("Fr. 37 1/2 C P", "frame 72-148, stbd"). What can't be
// read is refused by name; nothing is dropped.
func ParsePlace(text string) (Place, error) {
	parts, err := splitPlace(text)
	if err != nil {
		return Place{}, err
	}
	var p Place
	for _, part := range parts {
		if err := p.take(part); err != nil {
			return Place{}, err
		}
	}
	p.Settle()
	return p, nil
}

// splitPlace splits at commas and semicolons that stand outside quotes. A comma between figures is a decimal comma.
func splitPlace(text string) ([]string, error) {
	var parts []string
	var b strings.Builder
	inQuotes, escaped := false, false
	runes := []rune(text)
	for i, r := range runes {
		switch {
		case escaped:
			escaped = false
		case inQuotes && r == '\\':
			escaped = true
		case r == '"' && (inQuotes || opensQuote(b.String())):
			inQuotes = !inQuotes
		case !inQuotes && (r == ';' || r == ',' && !decimalComma(runes, i)):
			parts = append(parts, b.String())
			b.Reset()
			continue
		}
		b.WriteRune(r)
	}
	if inQuotes {
		return nil, fmt.Errorf("the quotation mark in %q is not closed", text)
	}
	return append(parts, b.String()), nil
}

// opensQuote tells a quotation mark from the sign for inches: after a figure it is inches.
func opensQuote(before string) bool {
	before = strings.TrimRight(before, " ")
	return before == "" || before[len(before)-1] < '0' || before[len(before)-1] > '9'
}

func decimalComma(r []rune, i int) bool {
	figure := func(j int) bool { return j >= 0 && j < len(r) && r[j] >= '0' && r[j] <= '9' }
	return figure(i-1) && figure(i+1)
}

// take reads one part of a place into it.
func (p *Place) take(part string) error {
	part = strings.TrimSpace(part)
	head, rest, _ := strings.Cut(part, " ")
	rest = strings.TrimSpace(rest)
	switch strings.ToLower(head) {
	case "":
		return nil
	case "in":
		return set("space", &p.Space, rest)
	case "strake", "str", "str.", "gang", "virure":
		return p.takeStrakes(rest)
	case "height":
		return p.takeLength("height", &p.Height, rest)
	case "offset":
		return p.takeLength("offset", &p.Offset, rest)
	case "to":
		return p.takeEnd(rest)
	case "fr":
		if from, to, ok := quotedRange(rest); ok {
			if err := p.takeFrame(from); err != nil {
				return err
			}
			return setIf("frame_to", &p.FrameTo, to)
		}
	}
	if strings.HasPrefix(part, `"`) {
		return set("where", &p.Where, part)
	}
	if side, err := ParseSide(part); err == nil {
		return p.takeSide(side)
	}
	return p.takeLoose(part)
}

func (p *Place) takeSide(side Side) error {
	if p.Side != "" && p.Side != side {
		return fmt.Errorf("the place is said to be %s and %s", p.Side, side)
	}
	p.Side = side
	return nil
}

// takeFrame reads a quoted or plain frame with its offset: 37½, "mid"+0.2 m.
func (p *Place) takeFrame(text string) error {
	if p.Frame != "" {
		return fmt.Errorf("two frames are named: %s and %s", p.Frame, text)
	}
	if strings.HasPrefix(text, `"`) {
		end := closing(text)
		if offset := strings.TrimSpace(text[end+1:]); offset != "" {
			if err := p.takeLength("offset", &p.Offset, offset); err != nil {
				return err
			}
		}
		p.Frame = unquoted(text[:end+1])
		return nil
	}
	q := Place{Frame: text}
	q.Settle()
	if q.Offset != nil && p.Offset != nil {
		return fmt.Errorf("two offsets are given")
	}
	p.Frame = q.Frame
	if q.Offset != nil {
		p.Offset = q.Offset
	}
	if q.FrameTo != "" {
		if err := setIf("frame_to", &p.FrameTo, q.FrameTo); err != nil {
			return err
		}
	}
	if q.Side != "" {
		return p.takeSide(q.Side)
	}
	return nil
}

func (p *Place) takeStrakes(rest string) error {
	from, to, ok := quotedRange(rest)
	if !ok {
		from, to = rest, ""
	}
	if err := set("strake", &p.Strake, from); err != nil {
		return err
	}
	return setIf("strake_to", &p.StrakeTo, to)
}

func (p *Place) takeEnd(rest string) error {
	head, tail, _ := strings.Cut(rest, " ")
	switch strings.ToLower(head) {
	case "fr":
		return set("frame_to", &p.FrameTo, tail)
	case "strake":
		return set("strake_to", &p.StrakeTo, tail)
	}
	return fmt.Errorf("%q is no end of a range: write to fr 38, or to strake E", "to "+rest)
}

func (p *Place) takeLength(key string, to **float64, text string) error {
	if *to != nil {
		return fmt.Errorf("%s is given twice", key)
	}
	r, err := quantity.Parse(text, "m")
	if err != nil || !quantity.SameDimension(r.Unit, "m") {
		return fmt.Errorf("%s %q is no length", key, text)
	}
	x := r.Value
	*to = &x
	return nil
}

var looseStrake = regexp.MustCompile(`^(.*[\d½¼¾])\s+([A-Za-z]{1,2}\d{0,2})(?:\s+([\p{L}()./&]+))?$`)

// takeLoose reads a frame with what people write after it: "Fr 37 1/2 C P".
func (p *Place) takeLoose(part string) error {
	text, said := withoutFrameWord(part)
	if m := looseStrake.FindStringSubmatch(text); m != nil {
		if side, err := ParseSide(m[2]); err != nil || m[3] != "" || side == Centre {
			if err := set("strake", &p.Strake, m[2]); err != nil {
				return err
			}
			text = m[1]
			if m[3] != "" {
				side, err := ParseSide(m[3])
				if err != nil {
					return err
				}
				if err := p.takeSide(side); err != nil {
					return err
				}
			}
		}
	}
	q := Place{Frame: text}
	q.Settle()
	if _, ok := readFrame(q.Frame); !ok && !said {
		return fmt.Errorf("%q is no frame, strake, side, height or space", part)
	}
	if q.Frame == "" {
		return fmt.Errorf("%q names no frame", part)
	}
	return p.takeFrame(text)
}

// quotedRange splits "X to Y" outside quotes.
func quotedRange(s string) (from, to string, ok bool) {
	skip := 0
	if strings.HasPrefix(s, `"`) {
		skip = closing(s) + 1
	}
	i := strings.Index(s[skip:], " to ")
	if i < 0 {
		return s, "", strings.HasPrefix(s, `"`) || isFrameName(s) || hasOffset(s)
	}
	return strings.TrimSpace(s[:skip+i]), strings.TrimSpace(s[skip+i+4:]), true
}

func hasOffset(s string) bool {
	_, _, ok := readOffset(s)
	return ok
}

// closing gives the index of the quotation mark that ends the quoted text at the start of s.
func closing(s string) int {
	for i := 1; i < len(s); i++ {
		switch s[i] {
		case '\\':
			i++
		case '"':
			return i
		}
	}
	return len(s) - 1
}

func unquoted(s string) string {
	if len(s) < 2 || s[0] != '"' || s[len(s)-1] != '"' {
		return s
	}
	return strings.NewReplacer(`\\`, `\`, `\"`, `"`).Replace(s[1 : len(s)-1])
}

func set(key string, to *string, text string) error {
	text = unquoted(strings.TrimSpace(text))
	switch {
	case text == "":
		return fmt.Errorf("%s is named without saying which", key)
	case *to != "":
		return fmt.Errorf("%s is given twice: %s and %s", key, *to, text)
	}
	*to = text
	return nil
}

func setIf(key string, to *string, text string) error {
	if text == "" {
		return nil
	}
	return set(key, to, text)
}

package bag

import (
	"fmt"
	"strings"
)

// Line is a label and a text of bag-info.txt. A label may stand more than once.
type Line struct{ Label, Text string }

// readInfo cuts bag-info.txt into its lines; one that begins with a blank goes on with the text above it.
func readInfo(text []byte) (lines []Line) {
	for _, s := range splitLines(string(text)) {
		if s != "" && (s[0] == ' ' || s[0] == '\t') && len(lines) > 0 {
			lines[len(lines)-1].Text += " " + strings.TrimSpace(s)
			continue
		}
		if label, value, ok := strings.Cut(s, ":"); ok {
			lines = append(lines, Line{strings.TrimSpace(label), strings.TrimSpace(value)})
		}
	}
	return lines
}

// oxum holds the count of bytes and files against what bag-info.txt says, where it says so.
func (c *checker) oxum() {
	for _, l := range readInfo(c.read("bag-info.txt")) {
		if !strings.EqualFold(l.Label, "Payload-Oxum") {
			continue
		}
		if have := fmt.Sprintf("%d.%d", c.Bytes, c.Files); l.Text != have {
			c.fault("bag-info.txt says the contents are %s (bytes, then files), and they are %s", l.Text, have)
		}
	}
}

// fetch refuses contents that are still out on the network.
func (c *checker) fetch() {
	for n, s := range splitLines(string(c.read("fetch.txt"))) {
		parts := strings.Fields(s)
		if len(parts) == 0 {
			continue
		}
		if len(parts) < 3 {
			c.fault("fetch.txt line %d: %q is no address, length and file", n+1, s)
			continue
		}
		name := decode(strings.Join(parts[2:], " "))
		if why := outside(name); why != "" {
			c.fault("fetch.txt line %d: %q %s: refused", n+1, name, why)
			continue
		}
		if _, there := c.there[name]; !there {
			c.fault("%s is not in the bag; fetch.txt says it lies on a network, and nothing is fetched from there", name)
		}
	}
}

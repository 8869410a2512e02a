package quantity

import "strings"

// plainer turns what typesetters, spreadsheets and phones make of marks into
// plain ASCII. A fraction sign gets a space before it, so that "37½" is read
// as "37 1/2".
var plainer = strings.NewReplacer(
	"½", " 1/2", "⅓", " 1/3", "⅔", " 2/3", "¼", " 1/4", "¾", " 3/4", "⅕", " 1/5", "⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5",
	"⅙", " 1/6", "⅚", " 5/6", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⁄", "/", "∕", "/", "÷", "/",
	"−", "-", "–", "-", "—", "-", "‐", "-", "‑", "-", "‒", "-", "﹣", "-", "－", "-", "＋", "+",
	"''", `"`, "′′", `"`, "″", `"`, "“", `"`, "”", `"`, "„", `"`, "ʺ", `"`, "’’", `"`,
	"′", "'", "’", "'", "‘", "'", "ʹ", "'", "´", "'", "`", "'",
	"\u00a0", " ", "\u2007", " ", "\u2008", " ", "\u2009", " ", "\u200a", " ", "\u202f", " ", "\u2002", " ", "\u2003", " ", "\u2006", " ",
	"\u200b", "", "\u200e", "", "\u200f", "", "\ufeff", "", "\t", " ", "\n", " ", "\r", " ",
	"≤", "<", "≥", ">", "≈", "~", "，", ",", "．", ".",
)

// plain gives the text in plain marks with single spaces.
func plain(text string) string {
	return strings.Join(strings.Fields(plainer.Replace(text)), " ")
}

var leads = []struct {
	mark string
	flag Flag
}{
	{"<=", FlagBelow}, {"<", FlagBelow}, {">=", FlagAbove}, {">", FlagAbove}, {"less than ", FlagBelow}, {"more than ", FlagAbove},
	{"~", FlagAbout}, {"about ", FlagAbout}, {"approx. ", FlagAbout}, {"approx ", FlagAbout},
	{"abt. ", FlagAbout}, {"abt ", FlagAbout}, {"ca. ", FlagAbout}, {"ca ", FlagAbout}, {"c. ", FlagAbout},
}

// qualifiers takes "<", "about" and a closing "?" off a plain text.
func qualifiers(s string) (string, []Flag) {
	var flags []Flag
	for _, lead := range leads {
		if len(s) > len(lead.mark) && strings.EqualFold(s[:len(lead.mark)], lead.mark) {
			s = strings.TrimSpace(s[len(lead.mark):])
			flags = append(flags, lead.flag)
			break
		}
	}
	if cut, ok := strings.CutSuffix(s, "?"); ok && cut != "" {
		s = strings.TrimSpace(cut)
		flags = append(flags, FlagDoubtful)
	}
	return s, flags
}

package quantity

import (
	"regexp"
	"strings"
)

var (
	currencyFirst = regexp.MustCompile(`^([-+]?) ?(US\$|€|\$|£|EUR|USD|GBP|NOK|kr\.?) ?([-+.,\d].*)$`)
	thousands     = regexp.MustCompile(`^ ?(k|K|M|m|mn|mio|Mio|million|thousand)(?:$|[ .€$£]|EUR|USD|GBP|NOK)`)
	inBrackets    = regexp.MustCompile(`^\(([^()]*\d[^()]*)\)$`)
)

// currencyLast turns "€ 1.9 M" into "1.9 M €".
func currencyLast(s string) string {
	if m := currencyFirst.FindStringSubmatch(s); m != nil {
		return m[1] + m[3] + " " + m[2]
	}
	return s
}

// bookkeeping turns "(1 234.50)" in a column of money into a negative amount.
func bookkeeping(s string, column Unit) string {
	if m := inBrackets.FindStringSubmatch(s); m != nil && isMoney(column) {
		return "-" + strings.TrimLeft(m[1], "-")
	}
	return s
}

// magnitude multiplies an amount of money by the "k" or "M" after it and gives
// the text of the unit. Without one "1,234" is settled: no currency here has
// three decimals.
func (n numeral) magnitude(column Unit) (numeral, string) {
	rest := n.rest
	if !isMoney(column) && !endsInCurrency(rest) {
		return n, rest
	}
	m := thousands.FindStringSubmatch(rest)
	if m == nil {
		if len(n.values) > 1 {
			n.values = n.values[:1]
		}
		return n, rest
	}
	by := 1e6
	if m[1] == "k" || m[1] == "K" || m[1] == "thousand" {
		by = 1e3
	}
	scaled := n
	scaled.values = nil
	for _, v := range n.values {
		scaled.values = append(scaled.values, v*by)
	}
	rest = strings.TrimPrefix(rest, " ")
	return scaled, strings.TrimLeft(rest[len(m[1]):], ". ")
}

func isMoney(u Unit) bool { return strings.HasPrefix(string(u.Dim), "money in ") }

func endsInCurrency(s string) bool {
	u, ok := Lookup(lastWord(s))
	return ok && isMoney(u)
}

func lastWord(s string) string {
	if i := strings.LastIndex(s, " "); i >= 0 {
		return s[i+1:]
	}
	return s
}

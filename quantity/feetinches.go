package quantity

import (
	"fmt"
	"math"
)

// FeetInches prints a length in metres as feet, inches and a fraction of an
// inch, rounded to one part in parts (16 for sixteenths): "17 ft 6 1/2 in".
func FeetInches(base float64, parts int) string {
	total, sign, ok := inParts(base, parts)
	if !ok {
		return noNumber
	}
	feet := total / (12 * parts)
	if feet == 0 {
		return sign + inches(total, parts)
	}
	return fmt.Sprintf("%s%d ft %s", sign, feet, inches(total%(12*parts), parts))
}

// Inches prints a length in metres as inches and a fraction: "37 1/2 in".
func Inches(base float64, parts int) string {
	total, sign, ok := inParts(base, parts)
	if !ok {
		return noNumber
	}
	return sign + inches(total, parts)
}

// inParts counts the parts of an inch in a length.
func inParts(base float64, parts int) (total int, sign string, ok bool) {
	count := math.Round(math.Abs(base) / float64(Inch) * float64(parts))
	if parts < 1 || !(count < 1e15) {
		return 0, "", false
	}
	if base < 0 && count > 0 {
		sign = "-"
	}
	return int(count), sign, true
}

func inches(total, parts int) string {
	whole, n := total/parts, total%parts
	switch {
	case n == 0:
		return fmt.Sprintf("%d in", whole)
	case whole == 0:
		return fmt.Sprintf("%s in", lowest(n, parts))
	}
	return fmt.Sprintf("%d %s in", whole, lowest(n, parts))
}

// lowest prints a fraction in its lowest terms.
func lowest(n, d int) string {
	a, b := n, d
	for b != 0 {
		a, b = b, a%b
	}
	return fmt.Sprintf("%d/%d", n/a, d/a)
}

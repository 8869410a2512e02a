package quantity

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Money is an amount of one currency, counted in its hundredth part, so that
// sums are exact. The zero value (no currency) means that there is no amount.
type Money struct {
	Minor    int64  // cents, pence, øre
	Currency string // "EUR", "USD", "GBP", "NOK"
}

// minorUnits is the number of minor units in one of every currency here (ISO 4217).
const minorUnits = 100

var errMoneyRange = errors.New("the amount is too large to be counted")

// NewMoney makes an amount from a value in the currency, rounded to its
// hundredth, halves away from zero.
func NewMoney(value float64, currency string) (Money, error) {
	u, ok := Lookup(currency)
	if !ok || !isMoney(u) || u.Dim == DimMoney {
		return Money{}, fmt.Errorf("%q is not a currency known here", currency)
	}
	minor := math.Round(value * minorUnits)
	if !(math.Abs(minor) < 1<<53) {
		return Money{}, errMoneyRange
	}
	return Money{int64(minor), u.Key}, nil
}

// ParseMoney reads an exact amount: "1.234,50 EUR", "$25", "640 k". currency is
// that of an amount without one, and the only one accepted where it is given.
func ParseMoney(text, currency string) (Money, error) {
	r, err := ParseOne(text, currency)
	if err != nil {
		return Money{}, err
	}
	m, err := NewMoney(r.Value, r.Unit)
	if err != nil {
		return Money{}, err
	}
	if math.Abs(r.Value*minorUnits-float64(m.Minor)) > 1e-3 {
		return Money{}, &ParseError{Text: text, Want: "an amount with two decimals", Why: "it has more decimals than the currency"}
	}
	return m, nil
}

// IsZero tells whether there is no amount. An amount of nothing in a currency
// is not zero in this sense.
func (m Money) IsZero() bool { return m == Money{} }

// Value gives the amount in the currency.
func (m Money) Value() float64 { return float64(m.Minor) / minorUnits }

// Add sums two amounts of one currency. No amount adds nothing.
func (m Money) Add(o Money) (Money, error) {
	switch {
	case m.IsZero():
		return o, nil
	case o.IsZero():
		return m, nil
	case m.Currency != o.Currency:
		return Money{}, fmt.Errorf("%s and %s do not add up: no rate of exchange is known", m, o)
	}
	sum := m.Minor + o.Minor
	if (sum > m.Minor) != (o.Minor > 0) && o.Minor != 0 {
		return Money{}, errMoneyRange
	}
	return Money{sum, m.Currency}, nil
}

// Neg gives the amount with its sign turned.
func (m Money) Neg() Money { return Money{-m.Minor, m.Currency} }

// Sub takes o off m.
func (m Money) Sub(o Money) (Money, error) { return m.Add(o.Neg()) }

// Times multiplies an amount, rounded to the hundredth, halves away from zero.
func (m Money) Times(factor float64) (Money, error) {
	if m.IsZero() {
		return Money{}, nil
	}
	return NewMoney(float64(m.Minor)*factor/minorUnits, m.Currency)
}

// Compare orders two amounts of one currency; ok is false where they are not.
func (m Money) Compare(o Money) (order int, ok bool) {
	if m.Currency != o.Currency {
		return 0, false
	}
	switch {
	case m.Minor < o.Minor:
		return -1, true
	case m.Minor > o.Minor:
		return 1, true
	}
	return 0, true
}

// String gives "-1234.50 EUR", or "" for no amount.
func (m Money) String() string {
	if m.IsZero() {
		return ""
	}
	sign, minor := "", uint64(m.Minor)
	if m.Minor < 0 {
		sign, minor = "-", -minor
	}
	return strings.TrimSpace(sign + strconv.FormatUint(minor/minorUnits, 10) + fmt.Sprintf(".%02d ", minor%minorUnits) + m.Currency)
}

// MarshalText gives the form of [Money.String].
func (m Money) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads an amount with its currency; the empty text is none.
func (m *Money) UnmarshalText(text []byte) error {
	if strings.TrimSpace(string(text)) == "" {
		*m = Money{}
		return nil
	}
	read, err := ParseMoney(string(text), "")
	if err != nil {
		return err
	}
	*m = read
	return nil
}

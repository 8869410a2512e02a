package quantity

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseMoney(t *testing.T) {
	for _, c := range []struct {
		text, currency, want string
	}{
		{"1.234,50 EUR", "", "1234.50 EUR"}, {"1,234.50", "EUR", "1234.50 EUR"}, {"$25", "", "25.00 USD"}, {"640 k", "EUR", "640000.00 EUR"},
		{"1.9 M", "GBP", "1900000.00 GBP"}, {"-0,05 €", "EUR", "-0.05 EUR"}, {"(12.30)", "USD", "-12.30 USD"}, {"0", "NOK", "0.00 NOK"},
		{"35 kr", "", "35.00 NOK"},
	} {
		m, err := ParseMoney(c.text, c.currency)
		if err != nil || m.String() != c.want {
			t.Errorf("ParseMoney(%q, %s) = %s, %v; want %s", c.text, c.currency, m, err, c.want)
		}
	}
	for text, says := range map[string]string{
		"1.2345": "more decimals", "25 USD": "no rate of exchange", "25 kg": "mass", "twelve": "no number", "9e16": "too large", "": "blank",
		"1,234 k": "1234000 EUR or 1234 EUR",
	} {
		if m, err := ParseMoney(text, "EUR"); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("ParseMoney(%q) = %s, %v; want an error with %q", text, m, err, says)
		}
	}
	if _, err := ParseMoney("12", ""); err == nil {
		t.Error("an amount without a currency was read")
	}
	if _, err := NewMoney(12, "kg"); err == nil {
		t.Error("kilograms are no currency")
	}
	if _, err := NewMoney(12, "money"); err == nil {
		t.Error("the ship's money names no currency")
	}
	for _, v := range []float64{math.NaN(), math.Inf(1), 1e15} {
		if m, err := NewMoney(v, "EUR"); err == nil {
			t.Errorf("NewMoney(%v) = %s", v, m)
		}
	}
}

func TestMoneySums(t *testing.T) {
	euro := func(minor int64) Money { return Money{minor, "EUR"} }
	if got, err := euro(1010).Add(euro(-2020)); err != nil || got != euro(-1010) {
		t.Errorf("10.10 - 20.20 = %s, %v", got, err)
	}
	if got, err := euro(5).Add(Money{}); err != nil || got != euro(5) {
		t.Errorf("0.05 and nothing = %s, %v", got, err)
	}
	if got, err := (Money{}).Sub(euro(5)); err != nil || got != euro(-5) {
		t.Errorf("nothing less 0.05 = %s, %v", got, err)
	}
	if got, err := euro(5).Add(Money{5, "USD"}); err == nil || !got.IsZero() {
		t.Errorf("euros and dollars = %s", got)
	}
	if got, err := euro(math.MaxInt64).Add(euro(1)); err == nil {
		t.Errorf("the largest amount and a cent = %s", got)
	}
	if got, err := euro(1005).Times(0.5); err != nil || got != euro(503) {
		t.Errorf("half of 10.05 = %s, %v", got, err)
	}
	if _, err := euro(1005).Times(math.Inf(1)); err == nil {
		t.Error("an endless amount")
	}
	if got, err := (Money{}).Times(3); err != nil || !got.IsZero() {
		t.Errorf("three times nothing = %s, %v", got, err)
	}
	if n, ok := euro(1).Compare(euro(2)); n != -1 || !ok {
		t.Error("0.01 is less than 0.02")
	}
	if _, ok := euro(1).Compare(Money{1, "USD"}); ok {
		t.Error("euros and dollars were compared")
	}
	if euro(0).IsZero() || !(Money{}).IsZero() || euro(1234).Value() != 12.34 {
		t.Error("an amount of nothing is an amount")
	}
	if got := euro(math.MinInt64).String(); got != "-92233720368547758.08 EUR" {
		t.Errorf("the least amount is %s", got)
	}
}

func TestMoneyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := Money{rapid.Int64Range(-1e13, 1e13).Draw(t, "minor"), rapid.SampledFrom([]string{"EUR", "USD", "GBP", "NOK"}).Draw(t, "currency")}
		body, err := json.Marshal(m)
		if err != nil {
			t.Fatal(err)
		}
		var back Money
		if err := json.Unmarshal(body, &back); err != nil || back != m {
			t.Fatalf("%s came back as %s, %v", body, back, err)
		}
	})
	var none Money
	if err := none.UnmarshalText(nil); err != nil || none.String() != "" {
		t.Errorf("no amount is %s, %v", none, err)
	}
	if err := none.UnmarshalText([]byte("12")); err == nil {
		t.Error("an amount without a currency was read")
	}
}

package quantity_test

import (
	"errors"
	"fmt"

	"oakum/quantity"
)

func ExampleParse() {
	r, err := quantity.Parse(`17'-6 1/2"`, "m")
	fmt.Println(r.Value, r.Unit, err)

	r, err = quantity.Parse("20.4#", "mm")
	fmt.Println(r.Ask(), err)

	_, err = quantity.Parse("N/E", "mm")
	var word *quantity.NoValue
	fmt.Println(errors.As(err, &word), err)
	// Output:
	// 5.3467 ft <nil>
	// "20.4#" may be 20.4 lb plate or 20.4 lb plate (40 lb/in): which is meant? <nil>
	// true no value: "N/E" means no echo
}

func ExampleHabit() {
	builder := quantity.Habit{Decimal: quantity.DecimalComma, Units: []string{"long_ton"}}
	r, err := builder.Parse("1.234,5 tons", "t")
	fmt.Println(quantity.Exact(r.Value, r.Unit), r.Ask(), err)
	// Output: 1234.5 long_ton <nil> <nil>
}

func ExampleConvert() {
	v, err := quantity.Convert(1, "t.m/cm", "kg.m/m")
	fmt.Println(v, err)
	_, err = quantity.Convert(1, "EUR", "USD")
	fmt.Println(err)
	// Output:
	// 100000 <nil>
	// EUR does not convert into USD: no rate of exchange is known
}

func ExampleFeetInches() {
	fmt.Println(quantity.FeetInches(5.3467, 16))
	// Output: 17 ft 6 1/2 in
}

func ExampleReadDate() {
	r, err := quantity.ReadDate("03/04/2021")
	fmt.Println(r.Alternatives, r.Flags, err)
	// Output: [2021-04-03 2021-03-04] [date-order] <nil>
}

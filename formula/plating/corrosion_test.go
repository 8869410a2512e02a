package plating

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
	"oakum/field"
)

// Published: conversion table for iron (Roberge, Corrosion Engineering, table 3.2): 1 mA/cm2 = 11.6 mm/y = 456 mpy, 1 mm/y = 0.0863 mA/cm2.
func TestFaradayPublished(t *testing.T) {
	near(t, "mm/y of 1 mA/cm2", IronLoss(10)*1000, 11.6, 0.05)
	near(t, "mpy of 1 mA/cm2", IronLoss(10)/25.4e-6, 456, 1.5) // the table takes 7.88 g/cm3 and 365 days
	s := run(t, Corrosion, `{"current_density": 100}`)
	near(t, "mm/y of 100 mA/m2", value(t, s, "rate"), 0.116, 0.0005)
}

// Published: ERDC LR-03-19, p. 7.
func TestExposurePublished(t *testing.T) {
	for exposure, mm := range map[string]float64{"immersed": 0.035, "tidal": 0.075, "splash": 0.075, "low-water": 0.075, "below-bed": 0.015} {
		s := run(t, Corrosion, `{"exposure": "`+exposure+`"}`)
		near(t, exposure, value(t, s, "rate"), mm, 1e-12)
	}
}

// Published: Batt and Robinson: 0.001 mm/y at -770 mV SCE, 54 mV a decade, natural sea water.
func TestResidualPublished(t *testing.T) {
	for mv, mm := range map[float64]float64{-770: 0.001, -716: 0.0100, -662: 0.100} {
		near(t, "mm/y", ResidualLoss(mv/1000)*1000, mm, mm*1e-9)
	}
}

// Computed by hand from r (t - Tc - Tt + Tt exp(-(t - Tc)/Tt)): r 0.1, Tc 5, Tt 4.
func TestCoatingLossByHand(t *testing.T) {
	for age, mm := range map[float64]float64{10: 0.2146, 20: 1.1094, 4: 0} {
		in := Corrosion.New()
		in.Rate, in.Life, in.Transition, in.Age = new(0.1e-3), 5, 4, &age
		out, err := Corrosion.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "loss", *out.Loss*1000, mm, 0.00005)
	}
}

// Identity: the loss is the integral of the rate, and a transition of nothing is the limit of a short one.
func TestLossIsTheIntegralOfTheRate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Corrosion.New()
		in.Rate = new(rapid.Float64Range(1e-5, 5e-4).Draw(t, "rate"))
		in.Life = rapid.Float64Range(0, 20).Draw(t, "life")
		in.Transition = rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(0.5, 10)).Draw(t, "transition")
		in.Age = new(rapid.Float64Range(0, 80).Draw(t, "age"))
		out, err := Corrosion.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		const step = 1e-4
		later, between := in, in
		later.Age, between.Age = new(*in.Age+step), new(*in.Age+step/2)
		next, _ := Corrosion.Fn(later)
		mid, _ := Corrosion.Fn(between)
		if slope := (*next.Loss - *out.Loss) / step; *in.Age > in.Life && math.Abs(slope-*mid.Now) > 1e-3**in.Rate {
			t.Fatalf("slope %g, rate %g", slope, *mid.Now)
		}
		if *out.Loss < 0 || *out.Loss > *in.Rate*max(*in.Age-in.Life, 0)*(1+1e-12) {
			t.Fatalf("loss %g", *out.Loss)
		}
	})
}

func TestCorrosionRefuses(t *testing.T) {
	for raw, want := range map[string]string{
		`{}`:                                             "exposure",
		`{"rate": 0.1, "exposure": "tidal"}`:             "exposure",
		`{"exposure": "wet"}`:                            "exposure",
		`{"rate": -0.1}`:                                 "rate",
		`{"rate": 100}`:                                  "rate",
		`{"potential": -450}`:                            "potential",
		`{"potential": 850}`:                             "potential",
		`{"rate": 0.1, "coating_life": 5}`:               "age",
		`{"rate": 0.1, "age": -3}`:                       "age",
		`{"rate": 0.1, "age": 30, "sides": 4}`:           "sides",
		`{"current_density": {"value": 1, "unit": "A"}}`: "current_density",
	} {
		_, err := calc.JSON(Corrosion, json.RawMessage(raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want {
			t.Errorf("%s: %v, want a refusal of %s", raw, err, want)
		}
	}
}

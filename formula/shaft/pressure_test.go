package shaft

import (
	"strings"
	"testing"
)

// Published limits: SNAME Technical and Research Bulletin 3-51, 75 psi disc and 50 psi ring lubricated line shaft bearings. A bearing of 20 by
// 20 in takes 30 000 and 20 000 lbf.
func TestBearingPressurePublishedLimits(t *testing.T) {
	for kind, pounds := range map[string]float64{"line-disc": 30000, "line-ring": 20000} {
		out, err := BearingPressure.Fn(BearingPressureIn{Force: pounds * 4.4482216152605, Length: 20 * 0.0254, Diameter: 20 * 0.0254, Kind: kind})
		if err != nil {
			t.Fatal(err)
		}
		near(t, kind, out.Used, 1, 1e-9)
	}
}

func TestBearingPressureOverTheLimit(t *testing.T) {
	out, err := BearingPressure.Fn(BearingPressureIn{Force: 2.7e5, Length: 1.2, Diameter: 0.45, Kind: "lignum-vitae"})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "pressure", out.Pressure, 0.5e6, 1e-6)
	if !strings.Contains(strings.Join(out.Warnings, ";"), "from memory") {
		t.Errorf("%v", out.Warnings)
	}
	if _, err := BearingPressure.Run(map[string]any{"force": 100.0, "length": 1.0, "diameter": 0.4, "kind": "oak"}); err == nil {
		t.Error("a kind without a limit is not refused")
	}
}

package afloat

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
)

// twoHolds is a box of 100 x 20 m at 5 m with two spaces side by side along her and a doorway between them.
func twoHolds(door Connection) FloodingIn {
	v := floodedBox(100, 20, 5)
	v.GM, v.Depth, v.Duration = new(2.0), new(9.0), 400*3600
	a, b := midship(40, 50, 0.9)[0], midship(50, 62, 0.8)[0]
	a.Name, b.Name, b.Level = "engine room", "hold", new(0.0)
	a.HoleArea = new(5e-3)
	v.Compartments = []Compartment{a, b}
	door.From, door.To = "engine room", "hold"
	if door.Discharge == 0 {
		door.Discharge = 0.6
	}
	v.Connections = []Connection{door}
	return v
}

// Identity: water that may run on ends where both spaces open to the sea end; while it stands under the sill the next space is dry.
func TestFloodingRunsOn(t *testing.T) {
	v := twoHolds(Connection{Sill: 2, Width: new(0.8), Height: new(1.8)})
	out, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	w := v
	w.Connections = nil
	w.Compartments = []Compartment{v.Compartments[0], v.Compartments[1]}
	w.Compartments[0].HoleArea, w.Compartments[1].Level = nil, nil
	both, err := Flooding.Fn(w)
	if err != nil {
		t.Fatal(err)
	}
	if !out.Steady {
		t.Errorf("not at rest after %v h", *out.Time/3600)
	}
	agrees(t, "draft in the end", *out.DraftMid, "m", *both.DraftMid, 0.002)
	agrees(t, "trim in the end", *out.Trim, "m", *both.Trim, 0.004)
	for _, p := range out.Curve {
		if p.Levels[0] < 1.99 && p.Levels[1] > 1e-9 {
			t.Fatalf("after %v s the engine room holds %v m, under the sill, and the hold %v m", p.Time, p.Levels[0], p.Levels[1])
		}
	}
	if r := out.Spaces[1].Reached; r == nil || out.Spaces[0].Reached == nil || *r <= *out.Spaces[0].Reached {
		t.Errorf("reached %v", r)
	}
	shut := v
	shut.Connections = []Connection{v.Connections[0]}
	shut.Connections[0].Sill = 7
	if out, err = Flooding.Fn(shut); err != nil || out.Spaces[1].Volume > 1e-6 {
		t.Errorf("over a sill above the water %v m3 ran, %v", out.Spaces[1].Volume, err)
	}
}

// Closed form: two spaces so small beside the ship that she lies still, joined by an orifice at the floor: they close on each other as
// dt = 2 A1 A2/(A1 + A2) (sqrt(h1) - sqrt(h2))/(C a sqrt(2 g)).
func TestFloodingTwoTanks(t *testing.T) {
	v := twoHolds(Connection{Sill: 0, Area: new(4e-3)})
	for i := range v.Compartments {
		c := &v.Compartments[i]
		c.Y0, c.Y1, c.Z1, c.HoleArea, c.Permeability = new(-0.5), new(0.5), new(8.0), nil, 1
	}
	v.Compartments[0].X0, v.Compartments[0].X1, v.Compartments[0].Level = new(49.0), new(50.0), new(4.0)
	v.Compartments[1].X0, v.Compartments[1].X1 = new(50.0), new(53.0)
	equal := 2 * 1 * 3 / 4.0 / (0.6 * 4e-3 * math.Sqrt(2*calc.Gravity))
	v.Duration = equal * (math.Sqrt(4) - math.Sqrt(1))
	out, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "difference of levels", out.Spaces[0].Volume/1-out.Spaces[1].Volume/3, "m", 1, 0.003) // she trims by a millimetre or two
	agrees(t, "water kept", out.Spaces[0].Volume+out.Spaces[1].Volume, "m3", 4, 1e-9)
}

// Identity: no water is made or lost between the spaces, whatever the ship does, full spaces and all.
func TestFloodingKeepsWater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := twoHolds(Connection{Sill: rapid.Float64Range(0, 3).Draw(t, "sill"), Width: new(rapid.Float64Range(0.05, 2).Draw(t, "width")), Height: new(rapid.Float64Range(0.2, 2).Draw(t, "high"))})
		v.Compartments[0].HoleArea, v.Compartments[0].Level = nil, new(rapid.Float64Range(0.5, 6).Draw(t, "level"))
		v.Compartments[1].Z1 = new(rapid.Float64Range(3.1, 6).Draw(t, "ceiling"))
		v.Duration = rapid.Float64Range(60, 20000).Draw(t, "duration")
		before := 10 * 20 * 0.9 * *v.Compartments[0].Level
		out, err := Flooding.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		// a full space takes a ten-thousandth more in the pressure of its narrow pipe
		if after := out.Spaces[0].Volume + out.Spaces[1].Volume; math.Abs(after-before) > 0.12 {
			t.Fatalf("%v m3 before, %v m3 after", before, after)
		}
	})
}

// A downflooding port given as an opening from the sea lets the water in when it goes under: she does not stay at the waterline of the one space.
func TestFloodingThroughAPort(t *testing.T) {
	v := twoHolds(Connection{Sill: 5.4, Area: new(0.05)})
	v.Connections[0].From, v.Connections[0].X = Sea, new(55.0)
	out, err := Flooding.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if out.Spaces[1].Volume < 100 {
		t.Errorf("through a port under water came %v m3", out.Spaces[1].Volume)
	}
}

func TestConnectionsRefuse(t *testing.T) {
	for where, spoil := range map[string]func(*Connection){
		"connections[0].from":  func(c *Connection) { c.From = "nowhere" },
		"connections[0].to":    func(c *Connection) { c.To = "engine room" },
		"connections[0].width": func(c *Connection) { c.Width = nil },
		"connections[0].area":  func(c *Connection) { c.Area = new(1.0) },
		"connections[0].sill":  func(c *Connection) { c.Sill = 40 },
	} {
		v := twoHolds(Connection{Sill: 2, Width: new(0.8), Height: new(1.8)})
		spoil(&v.Connections[0])
		if _, err := Flooding.Fn(v); !refused(err, where) {
			t.Errorf("%s: %v", where, err)
		}
	}
}

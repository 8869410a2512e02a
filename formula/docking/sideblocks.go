package docking

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// SideBlocksIn describes a ship dry on her blocks, pushed sideways by wind and earthquake.
type SideBlocksIn struct {
	Mass       float64  `key:"mass" unit:"t" symbol:"W" over:"0" max:"600000" label:"mass of the ship, dry"`
	KG         float64  `key:"kg" unit:"m" symbol:"KG" min:"0" max:"80" label:"centre of gravity above the blocks"`
	WindForce  float64  `key:"wind_force" unit:"kN" symbol:"F" default:"0" min:"0" max:"1e6" label:"wind force from the side"`
	WindArm    float64  `key:"wind_arm" unit:"m" symbol:"h" default:"0" min:"0" max:"100" label:"height of the wind force above the blocks"`
	Earthquake float64  `key:"earthquake" symbol:"a" default:"0.2" min:"0" max:"2" label:"earthquake as a fraction of g" help:"0.2 is from memory: the dock's own rule governs; 0 leaves it out"`
	N          int      `key:"n" symbol:"n" min:"1" max:"1000" label:"side blocks on each side"`
	Spread     float64  `key:"spread" unit:"m" symbol:"b" over:"0" max:"100" label:"distance from port to starboard side blocks"`
	Preload    float64  `key:"preload" unit:"kN" symbol:"R0" default:"0" min:"0" max:"1e6" label:"load that each side carries in still air"`
	BlockLimit *float64 `key:"block_limit" unit:"kN" symbol:"Rl" over:"0" max:"1e6" label:"load that one side block may carry"`
}

// SideBlocksOut is what the side blocks carry and whether they hold her.
type SideBlocksOut struct {
	Verdict     Verdict  `key:"verdict" enum:"safe|marginal|unsafe" label:"verdict"`
	Reason      string   `key:"reason" label:"why"`
	Change      string   `key:"change" label:"what would change it"`
	Moment      float64  `key:"moment" unit:"kN.m" symbol:"M" label:"overturning moment" expr:"F*h+a*W*g*KG"`
	LeeLoad     float64  `key:"leeward_load" unit:"kN" symbol:"R" label:"load on the side blocks to leeward" expr:"max(R0+M/b, 2*M/b)"`
	LeeBlock    float64  `key:"leeward_block" unit:"kN" symbol:"Rb" label:"the same on each block" expr:"R/n"`
	WindwardOff bool     `key:"windward_lifted" label:"the side blocks to windward carry nothing"`
	KeelLoad    float64  `key:"keel_load" unit:"kN" symbol:"K" label:"load left on the keel blocks" expr:"max(W*g-R-max(R0-M/b, 0), 0)"`
	Overturning *float64 `key:"overturning_factor" symbol:"o" label:"weight moment that holds her over the overturning moment"`
	Uplift      float64  `key:"uplift" unit:"kN" symbol:"U" label:"pull that would be needed at the keel to hold her" expr:"max(R-W*g, 0)"`
	Used        *float64 `key:"used" unit:"%" symbol:"u" label:"part of the block limit used"`

	Warnings calc.Warnings `key:"-"`
}

// SideBlocks is the load on the side blocks of a ship pushed sideways in a dry dock.
//
// Moments about the keel: M = F h + a W g KG. Side blocks push only. While both sides bear, the load to leeward grows and that to windward falls by
// M/b; once the windward side has let go, the leeward side alone must turn her back about the keel blocks: R = M/(b/2). When R exceeds her weight the
// keel lifts and she goes over: the factor is W g (b/2) over M. Blocks as springs of one stiffness, ship rigid.
var SideBlocks = calc.Formula[SideBlocksIn, SideBlocksOut]{
	ID:       "docking.side-blocks",
	Title:    "Side blocks under wind and earthquake",
	About:    "What the side blocks to leeward carry when wind or an earthquake pushes the ship, and how far she is from going over.",
	Holds:    "Dry on keel blocks and two rows of side blocks, rigid ship, blocks that push only and don't slide or topple. Tall cribs topple before they crush: that is not looked at here.",
	Accuracy: "Statics: as good as the wind force and the fraction of g. The leeward load leaves out the block heights' own tolerance, which can double it on single blocks.",
	Sources:  []source.Ref{{Key: "practice", At: "moments about the keel, blocks that push only"}, {Key: "memory", At: "earthquake fraction 0.2"}},
	Cautions: []calc.Caution{calc.Docking, calc.Stability},
	Fn:       sideBlocks,
	Steps:    sideBlockSteps,
}

// steady is the overturning factor under which she is called marginal; from memory.
const steady = 1.5

func sideBlocks(in SideBlocksIn) (out SideBlocksOut, err error) {
	weight := in.Mass * calc.Gravity
	out.Moment = in.WindForce*in.WindArm + in.Earthquake*weight*in.KG
	even := out.Moment / in.Spread
	out.LeeLoad = max(in.Preload+even, 2*even)
	out.LeeBlock = out.LeeLoad / float64(in.N)
	out.WindwardOff = even >= in.Preload
	out.KeelLoad = max(weight-out.LeeLoad-max(in.Preload-even, 0), 0)
	out.Uplift = max(out.LeeLoad-weight, 0)
	if out.Moment > 0 {
		out.Overturning = new(weight * in.Spread / 2 / out.Moment)
	}
	if in.BlockLimit != nil {
		out.Used = new(out.LeeBlock / *in.BlockLimit)
	}
	if 2*in.Preload >= weight {
		return out, field.Refuse("preload", "preload of %v on each side is more than the ship weighs (%v)", field.Q("preload", in.Preload, "kN"), field.Q("", weight, "kN"))
	}
	out.Verdict, out.Reason, out.Change = judgeSideBlocks(in, out)
	if out.Verdict != Safe {
		out.Warnings = append(out.Warnings, out.Reason)
	}
	if in.Spread < in.KG/2 {
		out.Warnings = append(out.Warnings, "the side blocks stand closer together than half the height of her centre of gravity: check that spread is from port to starboard and in metres")
	}
	return out, nil
}

func judgeSideBlocks(in SideBlocksIn, out SideBlocksOut) (Verdict, string, string) {
	arm := in.Spread / 2
	widen := fmt.Sprintf("a spread of at least %.2f m for a factor of %.2g, a lower centre of gravity, shores to the dock sides", 2*steady*out.Moment/(in.Mass*calc.Gravity), steady)
	switch {
	case out.Overturning != nil && *out.Overturning <= 1:
		return Unsafe, fmt.Sprintf("UNSAFE: she goes over: the moment of %.4g kN m is more than her weight can hold at %.2f m from the keel (factor %.2f)", out.Moment/1e3, arm, *out.Overturning), "What would change it: " + widen + "."
	case out.Used != nil && *out.Used > 1:
		need := int(out.LeeLoad / *in.BlockLimit) + 1
		return Unsafe, fmt.Sprintf("UNSAFE: each block to leeward carries %.4g kN of the %.4g kN it may", out.LeeBlock/1e3, *in.BlockLimit/1e3), fmt.Sprintf("What would change it: %d blocks a side, or stronger ones, or a wider spread.", need)
	case out.Overturning != nil && *out.Overturning < steady:
		return Marginal, fmt.Sprintf("MARGINAL: the overturning factor is %.2f; %.2g is a usual least (from memory)", *out.Overturning, steady), "What would change it: " + widen + "."
	case out.Used == nil:
		return Marginal, "NOT SHOWN SAFE: she does not go over, but what a side block may carry is not known", "What would change it: what one side block may carry, asked of the dock and entered."
	}
	return Safe, fmt.Sprintf("Safe by these figures: blocks to leeward carry %.0f %% of what they may, and she does not go over", *out.Used*100),
		"It stops being safe with fewer blocks, a closer spread, or a larger wind or earthquake than given."
}

func sideBlockSteps(in SideBlocksIn, out SideBlocksOut) []calc.Step {
	var steps []calc.Step
	if out.Overturning != nil {
		steps = append(steps, calc.Step{Symbol: "o", Formula: "W*g*b/2/M", Value: *out.Overturning, Unit: "-", Text: "overturning factor"})
	}
	if out.Used != nil {
		steps = append(steps, calc.Step{Symbol: "u", Formula: "Rb/Rl", Value: *out.Used, Unit: "-", Text: "part of the block limit used"})
	}
	return steps
}

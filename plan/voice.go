package plan

import "oakum/quantity"

// Voice is one who is heard: what weighs for them, and what they prefer.
type Voice struct {
	Name     string        `key:"name" label:"voice" help:"curator, superintendent, treasurer"`
	Matter   string        `key:"matter" label:"matter" of:"matter" optional:"yes"`
	Criteria []string      `key:"criteria" label:"criteria" of:"criterion" optional:"yes"`
	Swings   []float64     `key:"swings" label:"swings" help:"one for each criterion" min:"0" max:"1000" optional:"yes"`
	Prefers  string        `key:"prefers" label:"prefers" of:"course" optional:"yes"`
	Accepts  []string      `key:"accepts" label:"could live with" of:"course" optional:"yes"`
	Refuses  []string      `key:"refuses" label:"refuses" of:"course" optional:"yes"`
	Words    string        `key:"words" label:"in their words" optional:"yes"`
	Heard    quantity.Date `key:"heard" label:"heard" optional:"yes"`
}

package choice

import (
	"fmt"
	"math"

	"oakum/field"
)

// Node is a place in a tree: a decision, a chance, or an end. It names its parent and the branch that leads to it; its worth is added on the way.
type Node struct {
	ID          string   `key:"id" label:"node"`
	Parent      string   `key:"parent" optional:"yes" label:"its parent" help:"left out for the root"`
	Kind        string   `key:"kind" enum:"decide|chance|end" label:"what it is"`
	Label       string   `key:"label" optional:"yes" label:"the branch that leads to it"`
	Probability *float64 `key:"probability" min:"0" max:"1" label:"chance of that branch" help:"where the parent is a chance"`
	Value       float64  `key:"value" default:"0" label:"worth gained on reaching it" help:"a cost is negative"`
}

// NodeResult is what a node is worth.
type NodeResult struct {
	ID     string  `key:"id" label:"node"`
	Value  float64 `key:"value" label:"expected worth from here on, with what it gains itself"`
	Taken  bool    `key:"taken" label:"the best branch of its parent's decision, or any branch of a chance"`
	Chance float64 `key:"reached" label:"chance that the best policy comes here"`
}

// rollBack works the tree out from its ends.
func (out *TreeOut) rollBack(nodes []Node) error {
	children, root, err := family(nodes)
	if err != nil {
		return err
	}
	out.Nodes = make([]NodeResult, len(nodes))
	for i, n := range nodes {
		out.Nodes[i].ID = n.ID
	}
	visited := 0
	var worth func(i, depth int) error
	worth = func(i, depth int) error {
		visited++
		n, r := nodes[i], &out.Nodes[i]
		kids := children[n.ID]
		switch {
		case depth > 1000:
			return field.Refuse(fmt.Sprintf("nodes[%d].parent", i), "the tree is deeper than 1000 nodes at %q", n.ID)
		case n.Kind == "end" && len(kids) > 0:
			return field.Refuse(fmt.Sprintf("nodes[%d].kind", i), "node %q is an end but has branches", n.ID)
		case n.Kind != "end" && len(kids) == 0:
			return field.Refuse(fmt.Sprintf("nodes[%d].kind", i), "node %q is a %s without branches", n.ID, n.Kind)
		}
		r.Value = n.Value
		best, sum := -1, 0.0
		for _, k := range kids {
			if err := worth(k, depth+1); err != nil {
				return err
			}
			if n.Kind == "chance" {
				p := nodes[k].Probability
				if p == nil {
					return field.Refuse(fmt.Sprintf("nodes[%d].probability", k), "node %q hangs on a chance and has no probability", nodes[k].ID)
				}
				sum += *p
				r.Value += *p * out.Nodes[k].Value
				out.Nodes[k].Taken = true
			} else if best < 0 || out.Nodes[k].Value > out.Nodes[best].Value {
				best = k
			}
		}
		if n.Kind == "chance" && math.Abs(sum-1) > 1e-6 {
			return field.Refuse(fmt.Sprintf("nodes[%d].id", i), "the branches of %q have chances that add up to %.6g, not 1", n.ID, sum)
		}
		if best >= 0 {
			r.Value += out.Nodes[best].Value
			out.Nodes[best].Taken = true
		}
		return nil
	}
	if err := worth(root, 0); err != nil {
		return err
	}
	if visited < len(nodes) {
		return field.Refuse("nodes", "some nodes go round in a circle of parents and never come to the root")
	}
	out.Nodes[root].Taken = true
	out.reach(nodes, children, root, 1)
	out.Value, out.ValueBest = out.Nodes[root].Value, out.Nodes[root].Value
	return nil
}

// reach follows the best policy and notes its decisions.
func (out *TreeOut) reach(nodes []Node, children map[string][]int, i int, chance float64) {
	out.Nodes[i].Chance = chance
	for _, k := range children[nodes[i].ID] {
		switch {
		case nodes[i].Kind == "chance":
			out.reach(nodes, children, k, chance**nodes[k].Probability)
		case out.Nodes[k].Taken:
			name := nodes[k].Label
			if name == "" {
				name = nodes[k].ID
			}
			if out.Best == "" && nodes[i].Parent == "" {
				out.Best = name
			}
			out.Policy = append(out.Policy, Policy{Signal: nodes[i].Label, Probability: chance, Action: name, Value: out.Nodes[k].Value})
			out.reach(nodes, children, k, chance)
		}
	}
}

func family(nodes []Node) (children map[string][]int, root int, err error) {
	children, root = map[string][]int{}, -1
	known := map[string]bool{}
	for i, n := range nodes {
		if n.ID == "" || known[n.ID] {
			return nil, 0, field.Refuse(fmt.Sprintf("nodes[%d].id", i), "node %q stands twice, or has no id", n.ID)
		}
		known[n.ID] = true
	}
	for i, n := range nodes {
		switch {
		case n.Parent == "" && root >= 0:
			return nil, 0, field.Refuse(fmt.Sprintf("nodes[%d].parent", i), "%q and %q both have no parent: a tree has one root", nodes[root].ID, n.ID)
		case n.Parent == "":
			root = i
		case !known[n.Parent]:
			return nil, 0, field.Refuse(fmt.Sprintf("nodes[%d].parent", i), "node %q hangs on %q, which is not there", n.ID, n.Parent)
		default:
			children[n.Parent] = append(children[n.Parent], i)
		}
	}
	if root < 0 {
		return nil, 0, field.Refuse("nodes", "every node has a parent: the root is missing")
	}
	return children, root, nil
}

package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/afloat"
	"oakum/plan"
)

// WeightLeft is a weight that a course or a work takes off or puts on in dock: she goes out again with the weights as left.
type WeightLeft struct {
	ID   string `json:"id"`
	Kind string `json:"kind"`
	Name string `json:"name"`
	Mass Figure `json:"mass"` // off positive
	Plan bool   `json:"plan"` // the plan assumed holds it
}

// weightsLeft lists the courses and works that move weight and say where it lies.
func (c *inquiry) weightsLeft() []WeightLeft {
	list := []WeightLeft{}
	for _, e := range dossier.All[plan.Course](c.d) {
		if b := c.filled(e.Body); b.MassOff != nil && *b.MassOff != 0 && b.X != nil && b.Z != nil {
			name := b.Name
			if m, ok := dossier.Find[plan.Matter](c.d, b.Matter); ok {
				name = m.Body.Name + ": " + name
			}
			list = append(list, WeightLeft{e.ID, "course", name, known("mass", "taken off", *b.MassOff, "t", basisOf(e.Head, field.Assumed), e.BasisNote).of("course", e.ID), c.planHolds(e.ID)})
		}
	}
	for _, e := range dossier.All[plan.Work](c.d) {
		if b := e.Body; b.MassOff != nil && *b.MassOff != 0 && b.X != nil && b.Z != nil && b.State != "dropped" && b.Course == "" {
			list = append(list, WeightLeft{e.ID, "work", b.Name, known("mass", "taken off", *b.MassOff, "t", basisOf(e.Head, field.Assumed), e.BasisNote).of("work", e.ID), false})
		}
	}
	return list
}

func (c *inquiry) planHolds(course string) bool {
	for _, id := range c.plan.Courses {
		if id == course {
			return true
		}
	}
	return false
}

// changesLeft are the weights of the courses and works named.
func (c *inquiry) changesLeft(ids []string) (list []afloat.Change, err error) {
	for _, id := range ids {
		if e, ok := dossier.Find[plan.Course](c.d, id); ok {
			if b := c.filled(e.Body); b.MassOff != nil && b.X != nil {
				list = append(list, afloat.Change{Name: b.Name, Mass: -*b.MassOff, X: *b.X, Y: orElse(b.Y, 0), Z: b.Z})
				continue
			}
		}
		e, ok := dossier.Find[plan.Work](c.d, id)
		if !ok || e.Body.MassOff == nil || e.Body.X == nil {
			return nil, field.Refuse("changes", "%q is no course or work that moves a weight whose place is entered", id)
		}
		list = append(list, afloat.Change{Name: e.Body.Name, Mass: -*e.Body.MassOff, X: *e.Body.X, Y: orElse(e.Body.Y, 0), Z: e.Body.Z})
	}
	return list, nil
}

// changesWords names weights for the subject of a sheet.
func changesWords(list []afloat.Change) string {
	if len(list) == 0 {
		return "weights as she came"
	}
	return fmt.Sprintf("weights as left, %d moved", len(list))
}

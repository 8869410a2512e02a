package app

import (
	"context"
	"fmt"

	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
	"oakum/survey"
)

var taken = map[string]string{"standing": "the record as it stood", "edit": "the edit", "both": "both, by hand"}

// Settle says which of two edits of one record is right. Taking the edit writes it over the record as it now stands; either way both stay in the journal.
func (a *App) Settle(ctx context.Context, who Who, id, take string) (dossier.Record, error) {
	r, err := a.Record(id)
	if err != nil {
		return r, err
	}
	c, ok := r.Body.(*survey.Clash)
	if !ok {
		return r, field.Refuse("id", "%s is no second edit", id)
	}
	if !c.Settled.IsZero() {
		return r, field.Refuse("id", "this was settled on %s by %s", c.Settled.Words(), someone(c.Settler))
	}
	if taken[take] == "" {
		return r, field.Refuse("take", "take must be standing, edit or both, not %q", take)
	}
	done := *c
	done.Taken, done.Settled, done.Settler = taken[take], quantity.DateOf(a.now()), who.Name
	r.Body = &done
	records := []dossier.Record{r}
	if take == "edit" {
		with, err := a.edited(c)
		if err != nil {
			return r, err
		}
		records = append(records, with)
	}
	out, err := a.Put(ctx, who, fmt.Sprintf("settled two edits: took %s", done.Taken), records...)
	if err != nil {
		return r, err
	}
	return out[0], nil
}

// edited is the record with the edit of a clash in place of what stands.
func (a *App) edited(c *survey.Clash) (dossier.Record, error) {
	r, err := a.Record(c.Of)
	if err != nil {
		return r, err
	}
	r.Body, r.Typed, err = dossier.DecodeBody(r.Kind, []byte(c.Edit))
	return r, err
}

package main

import (
	"fmt"

	"oakum/assess"
	"oakum/demo/invent"
	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
)

// signed puts two names under sheets of the steamer, with the fingerprints of what stood in them on the day: one stands, and one is stale, because the
// bore of the rudder's gland was measured again afterwards.
func signed(records []dossier.Record) ([]dossier.Record, error) {
	d := dossier.New()
	if err := d.Put(records...); err != nil {
		return nil, err
	}
	stands, err := signature(d, "gland.rings@gland-gland-starboard")
	if err != nil {
		return nil, err
	}
	stands.Name, stands.Licence, stands.Words = "naval architect N", "made-up licence 4411", "Bore and sleeve measured in my presence."
	stands.Verdict, stands.Date = "signed", mustDate("2026-03-20")
	e, ok := dossier.Find[ship.Gland](d, "gland-rudder")
	if !ok {
		return nil, fmt.Errorf("the rudder has no gland to sign for")
	}
	before := d.Clone()
	e.Body.Bore = new(0.294) // as the docking report of 1996 was first read
	if err := before.Put(dossier.RecordOf(e)); err != nil {
		return nil, err
	}
	stale, err := signature(before, "gland.rings@gland-gland-rudder")
	if err != nil {
		return nil, err
	}
	stale.Name, stale.Licence, stale.Words = "naval architect N", "made-up licence 4411", "Bore to be measured again when the packing is out."
	stale.Verdict, stale.Date = "signed with remarks", mustDate("2024-10-01")
	head := dossier.Head{Kind: "review", Basis: "documented", BasisNote: invent.Note, By: "made up", Mark: dossier.Board}
	one, two := head, head
	one.ID, two.ID = "review-1", "review-2"
	return append(records, dossier.Record{Head: one, Body: &stands}, dossier.Record{Head: two, Body: &stale}), nil
}

// signature is what a reviewer would put a name under today.
func signature(d *dossier.Dossier, sheet string) (plan.Review, error) {
	s, ok := assess.Assess(d, assess.PlanInForce(d), mustDate("2026-11-25")).Sheet(sheet)
	if !ok {
		return plan.Review{}, fmt.Errorf("no sheet %s is made, so nobody can sign it", sheet)
	}
	r := plan.Review{Sheet: sheet}
	r.Hash, r.Signed = assess.Signable(s)
	return r, nil
}

package days

import (
	"context"
	"fmt"
	"io/fs"
	"time"

	"oakum/app"
	"oakum/demo"
	"oakum/dossier"
	"oakum/survey"
)

// Through enters what people entered up to the evening of a day in dock, from whatever day was played before; set moves the clock that the app was given.
func Through(ctx context.Context, a *app.App, set func(time.Time), from, to int) error {
	if to < 1 || to > Last || from > to {
		return fmt.Errorf("there are days 1 to %d in dock, not %d", Last, to)
	}
	steps, err := script()
	if err != nil {
		return err
	}
	begin, end := time.Time{}, Date(to+1)
	if from > 1 {
		begin = Date(from)
	}
	for _, s := range steps {
		if s.at.Before(begin) || !s.at.Before(end) {
			continue
		}
		set(s.at)
		if err := enter(ctx, a, s); err != nil {
			return fmt.Errorf("%s, %s: %w", s.at.Format("2 January 15:04"), s.by, err)
		}
	}
	return nil
}

func enter(ctx context.Context, a *app.App, s step) error {
	d, _ := a.Dossier()
	for i := range s.records {
		if r, ok := d.Get(s.records[i].ID); ok {
			s.records[i].Version = r.Version
		}
		if err := photograph(ctx, a, s.records[i]); err != nil {
			return err
		}
	}
	if s.phone == desk {
		_, err := a.Put(ctx, app.Who{Name: s.by, Role: app.Keeper}, "", s.records...)
		return err
	}
	return handOver(ctx, a, s)
}

// handOver brings a step as a phone does: a lot of entries, each under its own key. One that does not land is a slip in the script.
func handOver(ctx context.Context, a *app.App, s step) error {
	lot := app.Lot{Device: "phone of " + s.by, Sent: s.at}
	for _, r := range s.records {
		lot.Items = append(lot.Items, app.Queued{Key: fmt.Sprintf("%s-%s-%d", s.at.Format("0102T1504"), r.ID, r.Version), Made: s.at, Record: r})
	}
	got, err := a.Merge(ctx, app.Who{Name: s.by, Role: app.Volunteer}, lot)
	if err != nil {
		return err
	}
	for _, o := range got.Items {
		if o.State != app.Landed {
			return fmt.Errorf("%s is %s: %s", o.ID, o.State, o.Reason)
		}
	}
	return nil
}

// photograph sends the picture ahead of its record.
func photograph(ctx context.Context, a *app.App, r dossier.Record) error {
	p, ok := r.Body.(*survey.Photo)
	if !ok || p.File == "" {
		return nil
	}
	for _, dir := range demo.Pictures("corran-vey", true) {
		f, err := dir.Open(p.File)
		if err != nil {
			continue
		}
		_, err = a.PutPhoto(ctx, p.File, p.SHA256, f)
		f.Close()
		return err
	}
	return fmt.Errorf("%s: %w", p.File, fs.ErrNotExist)
}

package bench

import (
	"context"
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/store/sqlite"
	"oakum/survey"
)

// Twenty phones hand over ten thousand records that were made without a network. Every tenth is an edit of a found report that all twenty had in their
// hands: the first phone's lands, the others' are kept beside it.
const (
	phones  = 20
	entries = 10_000
	shared  = 50 // found reports that every phone edits
)

func BenchmarkMergeOfTenThousandOfflineRecords(b *testing.B) {
	ctx := context.Background()
	for b.Loop() {
		b.StopTimer()
		a := dockFile(ctx, b)
		lots := make([]app.Lot, phones)
		for p := range lots {
			lots[p] = phoneLot(p)
		}
		b.StartTimer()
		landed, beside := 0, 0
		for p, l := range lots {
			out, err := a.Merge(ctx, app.Who{Name: fmt.Sprintf("hand %d", p), Role: app.Volunteer}, l)
			if err != nil {
				b.Fatal(err)
			}
			for _, o := range out.Items {
				switch o.State {
				case app.Landed:
					landed++
				case app.Beside:
					beside++
				default:
					b.Fatalf("%s: %s %s", o.Key, o.State, o.Reason)
				}
			}
		}
		b.StopTimer()
		if want := (phones - 1) * shared; beside != want || landed != entries-want {
			b.Fatalf("%d landed and %d beside; want %d and %d", landed, beside, entries-want, want)
		}
		again, err := a.Merge(ctx, app.Who{Name: "hand 0", Role: app.Volunteer}, lots[0])
		if err != nil || again.Items[0].State != app.Already {
			b.Fatalf("sent twice: %+v, %v", again.Items[0], err)
		}
		if err := a.Close(); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
	}
	b.ReportMetric(entries, "records/op")
	alone(b, "10 000 offline records of 20 phones merged, with conflicts", spent{wall: b.Elapsed()}.times(1/float64(b.N)), "")
}

// dockFile is a new ship file with the found reports that the phones take with them.
func dockFile(ctx context.Context, b *testing.B) *app.App {
	b.Helper()
	s, err := sqlite.Create(ctx, filepath.Join(b.TempDir(), "dock.oakum"))
	if err != nil {
		b.Fatal(err)
	}
	a, err := app.Open(ctx, s, time.Now)
	if err != nil {
		b.Fatal(err)
	}
	var list []dossier.Record
	for i := range shared {
		list = append(list, dossier.Record{Head: dossier.Head{ID: fmt.Sprintf("found-%d", i), Kind: "found"}, Body: &plan.Found{Finding: "plate", Condition: "as found"}})
	}
	if _, err := a.Put(ctx, app.Who{Name: "keeper", Role: app.Keeper}, "", list...); err != nil {
		b.Fatal(err)
	}
	return a
}

func phoneLot(p int) app.Lot {
	now := time.Now()
	l := app.Lot{Device: fmt.Sprintf("phone %d", p), Sent: now}
	for i := range entries / phones {
		q := app.Queued{Key: fmt.Sprintf("p%d-%d", p, i), Made: now}
		if i < shared {
			q.Record = dossier.Record{Head: dossier.Head{ID: fmt.Sprintf("found-%d", i), Kind: "found", Version: 1}, Body: &plan.Found{Finding: "plate", Condition: fmt.Sprintf("as phone %d saw it", p)}}
		} else {
			q.Record = dossier.Record{Head: dossier.Head{ID: fmt.Sprintf("p%d-r%d", p, i), Kind: "thickness", Basis: field.Measured}, Body: &survey.Thickness{Thickness: new(0.009 + float64(i)*1e-6), Number: fmt.Sprint(i)}}
		}
		l.Items = append(l.Items, q)
	}
	return l
}

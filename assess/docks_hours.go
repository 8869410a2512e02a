package assess

import (
	"fmt"
	"time"

	"oakum/plan"
)

// dockHours are the hours of the day in which a yard docks ships, Universal Time; at any hour where nobody has said otherwise.
type dockHours struct {
	from, to time.Duration // of the day
	known    bool
}

func hoursOf(b plan.Dock) dockHours {
	if b.DocksFrom == nil || b.DocksTo == nil || *b.DocksTo <= *b.DocksFrom {
		return dockHours{to: 24 * time.Hour}
	}
	return dockHours{time.Duration(*b.DocksFrom * float64(time.Second)), time.Duration(*b.DocksTo * float64(time.Second)), true}
}

// on are the hours of the day that a time falls in.
func (h dockHours) on(t time.Time) (from, to time.Time) {
	midnight := t.UTC().Truncate(24 * time.Hour)
	return midnight.Add(h.from), midnight.Add(h.to)
}

// words says in which hours tides are counted.
func (h dockHours) words() string {
	if !h.known {
		return "tides counted at any hour: nobody has said in which hours the yard docks"
	}
	return fmt.Sprintf("tides counted from %s to %s, when the yard docks, Universal Time", clock(h.from), clock(h.to))
}

func clock(d time.Duration) string {
	return fmt.Sprintf("%d:%02d", int(d.Hours()), int(d.Minutes())%60)
}

// clip cuts a time with water enough down to the hours in which the yard docks, and leaves out what is then shorter than is of use.
func (h dockHours) clip(start, end time.Time, shortest time.Duration) (list [][2]time.Time) {
	if !h.known {
		return [][2]time.Time{{start, end}}
	}
	for day := start.UTC().Truncate(24 * time.Hour); day.Before(end); day = day.Add(24 * time.Hour) {
		from, to := h.on(day)
		if from.Before(start) {
			from = start
		}
		if to.After(end) {
			to = end
		}
		if to.Sub(from) >= shortest {
			list = append(list, [2]time.Time{from, to})
		}
	}
	return list
}

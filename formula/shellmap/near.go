package shellmap

import (
	"cmp"
	"math"
	"slices"
)

// index finds the readings nearest to a place, in ranges, by buckets of about four readings.
type index struct {
	kernel   Kernel
	readings []Reading
	x0, y0   float64
	side     float64 // of a bucket, in ranges
	nx, ny   int
	start    []int // of each bucket in order
	order    []int
}

func newIndex(readings []Reading, k Kernel) *index {
	ix := &index{kernel: k, readings: readings, x0: math.Inf(1), y0: math.Inf(1)}
	x1, y1 := math.Inf(-1), math.Inf(-1)
	for _, r := range readings {
		ix.x0, x1 = min(ix.x0, r.X), max(x1, r.X)
		ix.y0, y1 = min(ix.y0, r.Y), max(y1, r.Y)
	}
	w, h := (x1-ix.x0)/k.RangeX, (y1-ix.y0)/k.RangeY
	buckets := float64(len(readings))/4 + 1
	ix.side = max(math.Sqrt(w*h/buckets), max(w, h)/buckets, 1e-9)
	ix.nx, ix.ny = int(w/ix.side)+1, int(h/ix.side)+1
	counts := make([]int, ix.nx*ix.ny+1)
	for _, r := range readings {
		i, j := ix.bucket(r.X, r.Y)
		counts[j*ix.nx+i+1]++
	}
	for b := 1; b < len(counts); b++ {
		counts[b] += counts[b-1]
	}
	ix.start = counts
	ix.order = make([]int, len(readings))
	at := slices.Clone(counts)
	for n, r := range readings {
		i, j := ix.bucket(r.X, r.Y)
		ix.order[at[j*ix.nx+i]] = n
		at[j*ix.nx+i]++
	}
	return ix
}

func (ix *index) bucket(x, y float64) (i, j int) {
	i = int((x - ix.x0) / ix.kernel.RangeX / ix.side)
	j = int((y - ix.y0) / ix.kernel.RangeY / ix.side)
	return min(max(i, 0), ix.nx-1), min(max(j, 0), ix.ny-1)
}

// found is a reading and how far it lies, in ranges.
type found struct {
	n int
	d float64
}

// nearest puts the (at most) m nearest readings into out, nearest first.
func (ix *index) nearest(x, y float64, m int, out []found) []found {
	out = out[:0]
	ci, cj := ix.bucket(x, y)
	// A place outside the buckets is this far from the bucket it is put into; rings are counted from there.
	for ring := 0; ring <= ix.nx+ix.ny; ring++ {
		for j := cj - ring; j <= cj+ring; j++ {
			if j < 0 || j >= ix.ny {
				continue
			}
			step := 2 * ring
			if j == cj-ring || j == cj+ring || ring == 0 {
				step = 1
			}
			for i := ci - ring; i <= ci+ring; i += step {
				if i >= 0 && i < ix.nx {
					out = ix.gather(x, y, j*ix.nx+i, out)
				}
			}
		}
		if len(out) >= m {
			slices.SortFunc(out, func(a, b found) int { return cmp.Or(cmp.Compare(a.d, b.d), cmp.Compare(a.n, b.n)) })
			out = out[:m]
			if out[m-1].d <= ix.clear(x, y, ci, cj, ring) {
				return out
			}
		}
	}
	slices.SortFunc(out, func(a, b found) int { return cmp.Or(cmp.Compare(a.d, b.d), cmp.Compare(a.n, b.n)) })
	return out
}

func (ix *index) gather(x, y float64, b int, out []found) []found {
	for _, n := range ix.order[ix.start[b]:ix.start[b+1]] {
		r := ix.readings[n]
		out = append(out, found{n, ix.kernel.Distance(r.X-x, r.Y-y)})
	}
	return out
}

// clear is the distance, in ranges, within which rings 0..ring hold every reading: to the nearest side of their square that has buckets beyond.
func (ix *index) clear(x, y float64, ci, cj, ring int) float64 {
	px, py := (x-ix.x0)/ix.kernel.RangeX/ix.side, (y-ix.y0)/ix.kernel.RangeY/ix.side
	d := math.Inf(1)
	if ci-ring > 0 {
		d = min(d, px-float64(ci-ring))
	}
	if ci+ring < ix.nx-1 {
		d = min(d, float64(ci+ring+1)-px)
	}
	if cj-ring > 0 {
		d = min(d, py-float64(cj-ring))
	}
	if cj+ring < ix.ny-1 {
		d = min(d, float64(cj+ring+1)-py)
	}
	return max(d, 0) * ix.side
}

package hullform

// fills is the volume under level planes, upright: the first guess of a draft.
type fills struct {
	z, volume []float64
}

const fillLevels = 33

func newFills(h *Hull) fills {
	var f fills
	low, high := h.bounds.Low.Z, h.bounds.High.Z
	for i := range fillLevels {
		z := low + (high-low)*float64(i)/(fillLevels-1)
		s := h.wet(Level(z))
		f.z = append(f.z, z)
		f.volume = append(f.volume, s.h)
	}
	return f
}

// level is about the height of water at which the upright hull displaces a volume.
func (f *fills) level(volume float64) float64 {
	for i := 1; i < len(f.z); i++ {
		if lo, hi := f.volume[i-1], f.volume[i]; volume <= hi && hi > lo {
			return f.z[i-1] + (f.z[i]-f.z[i-1])*(volume-lo)/(hi-lo)
		}
	}
	return f.z[len(f.z)-1]
}

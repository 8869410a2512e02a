package tide

import (
	"math"
	"time"
)

// longitudes are the mean longitudes that tides are reckoned from, in degrees: of the moon s, the sun h, the lunar perigee p, the moon's
// ascending node n, and the solar perigee p1.
type longitudes struct{ s, h, p, n, p1 float64 }

var epoch = time.Date(1899, 12, 31, 12, 0, 0, 0, time.UTC)

// longitudesAt gives the mean longitudes at t. Source: Schureman, Special Publication 98, table 1 (epoch 1899 December 31, Greenwich mean noon).
func longitudesAt(t time.Time) longitudes {
	c := t.Sub(epoch).Hours() / (24 * 36525)
	of := func(deg, minutes, sec, turns, perCentury, square, cube float64) float64 {
		seconds := sec + perCentury*c + square*c*c + cube*c*c*c
		return turn(deg + minutes/60 + seconds/3600 + 360*math.Mod(turns*c, 1))
	}
	return longitudes{
		s:  of(270, 26, 14.72, 1336, 1108411.20, 9.09, 0.0068),
		h:  of(279, 41, 48.04, 0, 129602768.13, 1.089, 0),
		p:  of(334, 19, 40.87, 11, 392515.94, -37.24, -0.045),
		n:  of(259, 10, 57.12, -5, -482912.63, 7.58, 0.008),
		p1: of(281, 13, 15.0, 0, 6189.03, 1.63, 0.012),
	}
}

// turn brings an angle into 0 to 360 degrees.
func turn(x float64) float64 {
	x = math.Mod(x, 360)
	if x < 0 {
		x += 360
	}
	return x
}

// speed in degrees per hour of T, s, h, p and p1 at the epoch; the squares are worth less than a second of arc a year.
var speed = [5]float64{15, perHour(1336*1296000 + 1108411.20), perHour(129602768.13), perHour(11*1296000 + 392515.94), perHour(6189.03)}

func perHour(secondsPerCentury float64) float64 { return secondsPerCentury / 3600 / (24 * 36525) }

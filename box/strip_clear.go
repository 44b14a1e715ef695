package box

import (
	"math"
	"sort"

	"holt.example/box/outline"
)

// clearOfStrips is the place nearest to q for a screw hole so wide that is clear of
// the joints between the strips of a made-up part, within room and two diameters off
// the holes there are: wood beside a joint splits, and a tongue holds no screw. Where
// there is no such place it is q.
func (s *shell) clearOfStrips(p *part, q outline.Point, dia float64, room outline.Box, taken []outline.Point) outline.Point {
	seams := s.stripJoints(p, dia/2+3)
	if len(seams) == 0 {
		return q
	}
	up := p.grain(FromOuter)[0] != 0 // strips lie on one another
	moved := func(x float64) outline.Point {
		if up {
			return outline.Point{X: q.X, Y: x}
		}
		return outline.Point{X: x, Y: q.Y}
	}
	at, lo, hi := q.X, room.Min.X, room.Max.X
	if up {
		at, lo, hi = q.Y, room.Min.Y, room.Max.Y
	}
	free := func(x float64) bool {
		for _, j := range seams {
			if x > j[0]+1e-9 && x < j[1]-1e-9 {
				return false
			}
		}
		for _, t := range taken {
			if m := moved(x); math.Hypot(m.X-t.X, m.Y-t.Y) < 2*dia-1e-9 {
				return false
			}
		}
		return x == at || x >= lo && x <= hi
	}
	try := []float64{at}
	for _, j := range seams {
		try = append(try, j[0], j[1])
	}
	for _, t := range taken {
		c := t.X
		if up {
			c = t.Y
		}
		try = append(try, c-2*dia, c+2*dia)
	}
	sort.SliceStable(try, func(i, k int) bool { return math.Abs(try[i]-at) < math.Abs(try[k]-at) })
	for _, x := range try {
		if free(x) {
			return moved(x)
		}
	}
	return q
}

// stripJoints are the joints between the strips that a part will be made up of,
// across the grain in the feature frame of its face, and so much on both sides.
func (s *shell) stripJoints(p *part, beside float64) [][2]float64 {
	if p.at < 0 {
		return nil
	}
	m, path := s.madeUpOf(p.face)
	if m == nil {
		return nil
	}
	keep := s.c
	s.c = &collector{} // what is wrong with the strips is told when they are made
	defer func() { s.c = keep }()
	c := s.courses(m, path, p)
	if c == nil {
		return nil
	}
	lo, hi := 0.0, 0.0
	for _, b := range c.prof.bands {
		lo, hi = math.Min(lo, math.Min(b.begin, b.end)), math.Max(hi, math.Max(b.begin, b.end))
	}
	if t := c.prof.tongue; t != nil {
		lo, hi = math.Min(lo, -t.width/2), math.Max(hi, t.width/2)
	}
	var out [][2]float64
	for k := range len(c.his) - 1 {
		out = append(out, [2]float64{c.his[k] + lo - beside, c.his[k] + hi + beside})
	}
	return out
}

package bom

import (
	"math"
	"strconv"

	"holt.example/box"
	"holt.example/box/outline"
)

// Side is one side of an outline: straight, or an arc.
type Side struct {
	Name   string // "lower", "upper right", by the way it faces; "all round" for a circle
	Length box.MM
	Radius box.MM // of an arc, 0 for a straight side
	Hollow bool   // the arc bends into the part
}

// Words say what a side is but for its name.
func (s Side) Words() string {
	switch {
	case s.Name == allRound:
		return "a circle of radius " + tenth(float64(s.Radius))
	case s.Radius > 0 && s.Hollow:
		return "a hollow arc of radius " + tenth(float64(s.Radius))
	case s.Radius > 0:
		return "an arc of radius " + tenth(float64(s.Radius))
	}
	return "straight"
}

// mostSides is how many sides of a free part are listed.
const mostSides = 24

// Sides are the sides of the rim that lists name, and how many more there are, which
// are read off the drawing.
func (it Item) Sides() (sides []Side, more int) {
	n := min(len(it.Rim), mostSides)
	return it.Rim[:n:n], len(it.Rim) - n
}

const allRound = "all round"

// rim lists the sides of the outer contours of a region.
func rim(r outline.Region) []Side {
	var out []Side
	used := map[string]int{}
	for _, c := range r {
		if c.Area() <= 0 {
			continue
		}
		if _, d, ok := c.IsCircle(near); ok {
			out = append(out, Side{Name: allRound, Length: box.MM(float64(math.Pi * d)), Radius: box.MM(d / 2)})
			continue
		}
		for i, v := range c {
			w := c[(i+1)%len(c)]
			dx, dy := w.X-v.X, w.Y-v.Y
			chord := math.Hypot(dx, dy)
			if !(chord > near) {
				continue
			}
			s := Side{Name: sideWord(dy/chord, -dx/chord), Length: box.MM(chord)}
			if b := math.Abs(v.Bulge); b > 1e-9 {
				// The bulge is tan(sweep/4); half the chord is r sin(sweep/2), which is
				// 2 b r/(1+b*b).
				radius := chord * (1 + float64(b*b)) / (4 * b)
				s.Radius, s.Hollow = box.MM(radius), v.Bulge < 0
				s.Length = box.MM(float64(4 * math.Atan(b) * radius))
			}
			used[s.Name]++
			if n := used[s.Name]; n > 1 {
				s.Name += " " + strconv.Itoa(n)
			}
			out = append(out, s)
		}
	}
	return out
}

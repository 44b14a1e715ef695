package layout

import (
	"fmt"
	"math"
)

// steps writes a tree of cuts as a list a person can follow: first what is
// divided first, each division from its lower or left edge, so that every
// piece comes off at a fence or stop set to its own size.
func steps(root *Cut, kerf float64) []Step {
	w := &stepper{kerf: kerf}
	w.wait = append(w.wait, waiting{root, "1"})
	for len(w.wait) > 0 {
		// the piece whose first cut needs no new setting, else the first in line
		at := 0
		for i := range w.wait {
			if w.ready(w.wait[i].cut) {
				at = i
				break
			}
		}
		p := w.wait[at]
		w.wait = append(w.wait[:at], w.wait[at+1:]...)
		w.walk(p.cut, p.name)
	}
	return w.out
}

// waiting is a piece that has come off and is still to be divided.
type waiting struct {
	cut  *Cut
	name string
}

// ready says whether the first cut of a piece is made at the present setting.
func (w *stepper) ready(c *Cut) bool {
	if len(c.Into) == 0 || c.Slant != 0 {
		return false
	}
	k, size := 0, c.Into[0].Box.Max.X-c.Box.Min.X
	if c.Rip {
		k, size = 1, c.Into[0].Box.Max.Y-c.Box.Min.Y
	}
	return w.set[k] && math.Abs(w.last[k]-size) <= settingMatch
}

// settingMatch is the difference, in mm, that does not move a fence or stop.
const settingMatch = 0.05

type stepper struct {
	kerf float64
	out  []Step
	wait []waiting
	last [2]float64 // the settings of fence and stop
	set  [2]bool
}

func (w *stepper) walk(c *Cut, name string) {
	if len(c.Into) == 0 {
		return
	}
	if c.Slant != 0 {
		a, b := &c.Into[0], &c.Into[1]
		run := math.Abs(math.Tan(c.Slant * (math.Pi / 180)))
		at := a.Box.Width() // along the bottom edge
		if c.Slant < 0 {
			at -= float64(run * c.Box.Height())
		}
		w.add(Step{Kind: Crosscut, From: name, Off: name + ".1", Setting: at, At: at, Slant: c.Slant, Place: a.Place,
			Long: math.Hypot(c.Box.Height(), float64(run*c.Box.Height()))})
		w.out[len(w.out)-1].Frees = b.Place
		return
	}
	lo := func(d *Cut) float64 {
		if c.Rip {
			return d.Box.Min.Y
		}
		return d.Box.Min.X
	}
	hi := func(d *Cut) float64 {
		if c.Rip {
			return d.Box.Max.Y
		}
		return d.Box.Max.X
	}
	long := c.Box.Height()
	kind, trim := Crosscut, TrimCrosscut
	if c.Rip {
		kind, trim = Rip, TrimRip
		long = c.Box.Width()
	}
	edge := lo(c)
	n := 0
	names := make([]string, len(c.Into))
	for i := range c.Into {
		d := &c.Into[i]
		if lo(d)-edge > sameWidth { // only dust comes off: an edge is cleaned
			w.add(Step{Kind: trim, From: name, Setting: lo(d) - edge, At: lo(d) - edge, Long: long})
			edge = lo(d)
		}
		if hi(c)-hi(d) <= sameWidth {
			names[i] = name
			if n > 0 {
				names[i] = fmt.Sprintf("%s.%d", name, n+1)
			}
			if d.Place > 0 {
				w.free(d.Place)
			} else if n > 0 && len(d.Into) > 0 {
				w.out[len(w.out)-1].Left = names[i]
			}
			break
		}
		s := Step{Kind: kind, From: name, Setting: hi(d) - edge, At: hi(d) - edge, Long: long, Place: d.Place}
		if d.Trim {
			s.Kind = trim
		} else {
			n++
			names[i] = fmt.Sprintf("%s.%d", name, n)
			s.Off = names[i]
		}
		w.add(s)
		edge = math.Min(hi(d)+w.kerf, hi(c))
	}
	for i := range c.Into {
		if names[i] != "" && len(c.Into[i].Into) > 0 {
			w.wait = append(w.wait, waiting{&c.Into[i], names[i]})
		}
	}
}

// free notes the part that is left when the last cut is made.
func (w *stepper) free(place int) {
	if n := len(w.out); n > 0 && w.out[n-1].Frees == 0 {
		w.out[n-1].Frees = place
	}
}

func (w *stepper) add(s Step) {
	s.Number = len(w.out) + 1
	k := 0
	if s.Kind == Rip || s.Kind == TrimRip {
		k = 1
	}
	s.Same = w.set[k] && s.Slant == 0 && math.Abs(w.last[k]-s.Setting) <= settingMatch
	w.last[k], w.set[k] = s.Setting, s.Slant == 0
	w.out = append(w.out, s)
}

package flat

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
)

// kindOf is the kind of an operation: holes for screws and nails are apart, since
// they take a drill of their own.
func kindOf(op box.Op) Kind {
	switch op.Kind {
	case box.OpBore:
		if op.Use == box.UseFixing {
			return Fixing
		}
		return Bore
	case box.OpOpening:
		return Opening
	case box.OpRebate:
		return Rebate
	case box.OpHousing:
		return Housing
	case box.OpGroove:
		return Groove
	case box.OpNotch:
		return Notch
	case box.OpMark:
		return Mark
	case box.OpEngrave:
		return Engrave
	}
	return Pocket
}

// view is one side of a panel: what is cut there, and the box of the panel.
type view struct {
	items   []Item
	box     outline.Box
	face    outline.Box // of the face that is up
	corners []outline.Point
	jobs    []job
}

// collector gathers items and drops what lies on an item of its layer.
type collector struct {
	items []Item
	seen  map[string]bool // by layer and line
	lines map[string]bool // by line alone
}

func (c *collector) add(l Layer, r outline.Region, note string) {
	for _, o := range r {
		if it, ok := closed(l, o, note); ok {
			c.put(it)
		}
	}
}

func (c *collector) addStrokes(l Layer, ps []outline.Path, note string) {
	for _, p := range ps {
		if it, ok := open(l, p, note); ok {
			c.put(it)
		}
	}
}

func (c *collector) put(it Item) {
	line := it.sameLine()
	if key := it.Layer.Name() + " " + line; !c.seen[key] {
		c.seen[key] = true
		c.lines[line] = true
		c.items = append(c.items, it)
	}
}

// addNew adds the contours of r that no item shows yet.
func (c *collector) addNew(l Layer, r outline.Region, note string) {
	for _, o := range r {
		if it, ok := closed(l, o, note); ok && !c.lines[it.sameLine()] {
			c.add(l, outline.Region{o}, note)
		}
	}
}

// views draws the two sides of a panel in its own coordinates. The second has
// no items when no work is on the far face.
func views(p box.Panel) (machined, turned view, err error) {
	if err := checkPanel(p); err != nil {
		return view{}, view{}, err
	}
	t := float64(p.Thickness)
	up := collector{seen: map[string]bool{}, lines: map[string]bool{}}
	over := collector{seen: map[string]bool{}, lines: map[string]bool{}}
	var jobs [2][]job

	outer, holes := split(p.Machined)
	profile := at(AsMachined, Profile, 0, t)
	up.add(profile, outer, "profile, "+Dotted(t)+" thick")
	for _, op := range p.Ops {
		s := side(op, t)
		if op.InOutline {
			// The contours show it: never the same cut twice.
			jobs[0] = append(jobs[0], job{op, s})
			continue
		}
		c, of := &up, &jobs[0]
		if s.layer.View == Turned {
			c, of = &over, &jobs[1]
			s.top, s.low = s.top.Transform(outline.MirrorX()), s.low.Transform(outline.MirrorX())
			op.Strokes = slices.Clone(op.Strokes)
			for k, p := range op.Strokes {
				op.Strokes[k] = p.Transform(outline.MirrorX())
			}
		}
		*of = append(*of, job{op, s})
		note := describe(op, s)
		c.add(s.layer, s.top, note)
		c.addStrokes(s.layer, op.Strokes, note)
		if len(s.low) > 0 {
			l := s.layer
			l.Bottom = true
			c.add(l, s.low, note+", its bottom")
		}
	}
	// A hole that a notch leaves inside the outline is part of the line to cut.
	up.addNew(profile, holes, "profile, "+Dotted(t)+" thick")
	far := at(AsMachined, Face, 0, t)
	up.addNew(far, p.Far, "the far face, "+Dotted(t)+" below")
	if len(over.items) > 0 {
		over.addNew(at(Turned, Face, 0, 0), outers(p.Far).Transform(outline.MirrorX()), "the far face, now up")
	}

	var all outline.Region
	for _, r := range []outline.Region{p.Machined, p.Far, p.Silhouette} {
		all = append(all, r...)
	}
	b := all.Extents()
	mb := outline.Box{Min: outline.Point{X: -b.Max.X, Y: b.Min.Y}, Max: outline.Point{X: -b.Min.X, Y: b.Max.Y}}
	top, low := outer, outers(p.Far).Transform(outline.MirrorX())
	return view{up.items, b, top.Extents(), ends(top), jobs[0]}, view{over.items, mb, low.Extents(), ends(low), jobs[1]}, nil
}

// ends are the corners of contours.
func ends(r outline.Region) []outline.Point {
	var out []outline.Point
	for _, c := range r {
		if _, _, ok := c.IsCircle(roundTolerance); ok {
			continue
		}
		for _, v := range c {
			out = append(out, v.At())
		}
	}
	return out
}

// checkPanel refuses a panel that cannot be drawn.
func checkPanel(p box.Panel) error {
	t := float64(p.Thickness)
	if !(t > 0 && t <= Limit) {
		return fmt.Errorf("thickness %g: want a number above 0", t)
	}
	if outer, _ := split(p.Machined); len(outer) == 0 {
		return fmt.Errorf("the machined face has no outline")
	}
	look := func(what string, r outline.Region) error {
		for _, c := range r {
			if err := check(c); err != nil {
				return fmt.Errorf("%s: %w", what, err)
			}
		}
		return nil
	}
	for _, r := range []struct {
		what string
		r    outline.Region
	}{{"machined face", p.Machined}, {"far face", p.Far}, {"silhouette", p.Silhouette}} {
		if err := look(r.what, r.r); err != nil {
			return err
		}
	}
	for i, op := range p.Ops {
		what := fmt.Sprintf("operation %d (%s)", i, op.Kind)
		if !fits(float64(op.From)) || !fits(float64(op.To)) {
			return fmt.Errorf("%s: depths %g to %g", what, float64(op.From), float64(op.To))
		}
		if err := look(what, op.Region); err != nil {
			return err
		}
		if err := look(what, op.Bottom); err != nil {
			return err
		}
		for _, p := range op.Strokes {
			if err := check(outline.Contour(p)); err != nil {
				return fmt.Errorf("%s: %w", what, err)
			}
		}
	}
	return nil
}

// split parts the outer contours from the holes.
func split(r outline.Region) (outer, holes outline.Region) {
	for _, c := range r {
		switch a := c.Area(); {
		case a > 0:
			outer = append(outer, c)
		case a < 0:
			holes = append(holes, c)
		}
	}
	return outer, holes
}

func outers(r outline.Region) outline.Region {
	o, _ := split(r)
	return o
}

// seen is an operation as its view shows it: top is where it meets the face
// that is up (or its upper end, from an edge), low its bottom where that is
// another outline.
type seen struct {
	layer    Layer
	top, low outline.Region
	from, to float64 // below the face that is up
}

// side turns an operation the way it is cut. Its region lies at the depth
// From and its bottom at the depth To, both counted from the machined face;
// work on the far face is counted from that face instead.
func side(op box.Op, t float64) seen {
	from, to := float64(op.From), float64(op.To)
	first, last := op.Region, op.Bottom
	if last == nil {
		last = first
	}
	if from > to {
		from, to = to, from
		first, last = last, first
	}
	v := AsMachined
	switch op.Side {
	case box.SideFar:
		v = Turned
		from, to = t-to, t-from
		first, last = last, first
	case box.SideEdge:
		v = AtEdge
	}
	s := seen{layer: at(v, kindOf(op), from, to), top: first, from: from, to: to}
	if op.Bottom != nil {
		s.low = last
	}
	return s
}

// describe says in words what an operation is.
func describe(op box.Op, s seen) string {
	var b strings.Builder
	b.WriteString(string(op.Kind))
	if u := string(op.Use); u != "" && u != string(op.Kind) {
		b.WriteString(", " + u)
	}
	switch {
	case op.Side == box.SideThrough:
		b.WriteString(", through")
	case ticks(s.from) != 0:
		b.WriteString(", " + Dotted(s.from) + " to " + Dotted(s.to) + " deep")
	case ticks(s.to) != 0:
		b.WriteString(", " + Dotted(s.to) + " deep")
	}
	if len(op.Strokes) > 0 && ticks(float64(op.Width)) != 0 {
		b.WriteString(", lines " + Dotted(float64(op.Width)) + " wide")
		if op.Tool.VAngle != 0 {
			b.WriteString(" with a V-cutter of " + Num(float64(op.Tool.VAngle)) + "°")
		}
	}
	if op.Guest != "" {
		b.WriteString(", takes " + string(op.Guest))
	}
	if op.Source != "" {
		b.WriteString(" (" + op.Source + ")")
	}
	return b.String()
}

// tenth rounds to what a person reads off a tape.
func tenth(x float64) float64 { return math.Round(x*10) / 10 }

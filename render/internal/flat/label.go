package flat

import (
	"fmt"
	"math"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
)

// job is an operation as one view shows it.
type job struct {
	op box.Op
	s  seen
}

// mostAlike is how many equal operations are labelled one by one; of more the
// first says how many there are.
const mostAlike = 8

// figure is a length for people, to 0.1.
func figure(x float64) string { return Num(tenth(x)) }

// depthOf and widthOf round the section of a joint's cut as the lists do: no
// lip gets thinner, and the guest goes in.
func depthOf(op box.Op, x float64) string {
	if op.Guest != "" {
		return Num(math.Floor(float64((x+1e-6)*10)) / 10)
	}
	return figure(x)
}

func widthOf(op box.Op, x float64) string {
	if op.Guest != "" {
		return Num(math.Ceil(float64((x-1e-6)*10)) / 10)
	}
	return figure(x)
}

// labels writes what the operations are, each near its own. Places count from
// the left and the lower end of the face that is up.
func labels(p *placer, jobs []job, v view, mode View) []Item {
	type key struct{ kind, what string }
	count := map[key]int{}
	of := func(j job) key { return key{string(j.op.Kind) + string(j.op.Use), j.what(v)} }
	for _, j := range jobs {
		count[of(j)]++
	}
	done := map[key]bool{}
	var out []Item
	// What fills a strip comes first: it has the fewest places.
	for _, strips := range [2]bool{true, false} {
		for _, j := range jobs {
			if len(j.s.top) == 0 && len(j.op.Strokes) == 0 || j.strip() != strips {
				continue
			}
			k := of(j)
			if k.what == "" || done[k] {
				continue
			}
			where := j.where(v)
			lines := []string{k.what, where}
			if n := count[k]; n > mostAlike || len(j.op.Strokes) > 0 || j.op.InOutline && n > 1 {
				done[k] = true
				lines = []string{k.what, "places in the list"}
				if n > 1 {
					lines[0] = fmt.Sprintf("%d × %s", n, k.what)
				}
				if j.op.InOutline || len(j.op.Strokes) > 0 {
					lines = lines[:1]
				}
			}
			if lines[len(lines)-1] == "" {
				lines = lines[:len(lines)-1]
			}
			out = append(out, j.label(p, lines, mode)...)
		}
	}
	return out
}

// strip reports whether the operation is a long channel.
func (j job) strip() bool {
	switch j.op.Kind {
	case box.OpRebate, box.OpHousing, box.OpGroove:
		return true
	}
	return false
}

// round is the circle of a round hole.
func (j job) round() (at outline.Point, d float64, ok bool) {
	if len(j.s.top) != 1 {
		return at, 0, false
	}
	return j.s.top[0].IsCircle(roundTolerance)
}

// what says what is cut.
func (j job) what(v view) string {
	op := j.op
	depth := ""
	if d, long, ok := j.edgeBore(); ok {
		return fmt.Sprintf("ø%s %s deep in the edge", figure(d), figure(long))
	}
	switch {
	case op.Side == box.SideEdge:
		depth = fmt.Sprintf(" in the edge, %s to %s below the face", figure(j.s.from), figure(j.s.to))
	case op.Side != box.SideThrough:
		depth = " " + depthOf(op, j.s.to-j.s.from) + " deep"
	}
	if len(op.Strokes) > 0 {
		return "engraved" + depth
	}
	if _, d, ok := j.round(); ok {
		return "ø" + figure(d) + depth
	}
	b := j.s.top.Extents()
	switch {
	case op.Kind == box.OpMark:
		return ""
	case j.strip():
		if w, _, ok := j.across(); ok {
			if depth != "" {
				depth += ","
			}
			return string(op.Kind) + depth + " " + widthOf(op, w) + " wide"
		}
		return string(op.Kind) + depth
	case op.InOutline:
		return string(op.Kind) + " " + figure(b.Width()) + " × " + figure(b.Height())
	}
	return string(op.Kind) + depth + " " + figure(b.Width()) + " × " + figure(b.Height())
}

// edgeBore is the diameter and the depth of a round hole into an edge, of which the
// panel shows the shadow.
func (j job) edgeBore() (d, long float64, ok bool) {
	d = j.s.to - j.s.from
	if j.op.Side != box.SideEdge || j.op.Kind != box.OpBore || len(j.s.top) != 1 || !(d > 0) {
		return 0, 0, false
	}
	return d, j.s.top.Area() / d, true
}

// across is the width of a level or upright strip, and whether it is level.
func (j job) across() (w float64, level, ok bool) {
	if len(j.s.top) != 1 {
		return 0, false, false
	}
	b := j.s.top.Extents()
	// Of a strip that leans, or has ends cut off much, the box says nothing.
	if a := j.s.top.Area(); a < float64(0.7*float64(b.Width()*b.Height())) {
		return 0, false, false
	}
	if b.Width() >= b.Height() {
		return b.Height(), true, true
	}
	return b.Width(), false, true
}

// where says where it is, "" where that is plain to see: along a whole edge.
func (j job) where(v view) string {
	f := v.face
	if at, _, ok := j.round(); ok {
		return "at " + figure(at.X-f.Min.X) + ", " + figure(at.Y-f.Min.Y)
	}
	b := j.s.top.Extents()
	if len(j.s.top) == 0 {
		return ""
	}
	if d, _, ok := j.edgeBore(); ok {
		c, below := b.Centre(), ", "+figure((j.s.from+j.s.to)/2)+" below the face"
		switch {
		case math.Abs(b.Height()-d) < 1e-3:
			return figure(c.Y-f.Min.Y) + " up" + below
		case math.Abs(b.Width()-d) < 1e-3:
			return figure(c.X-f.Min.X) + " from the left" + below
		}
		return "middle at " + figure(c.X-f.Min.X) + ", " + figure(c.Y-f.Min.Y) + below
	}
	if _, level, ok := j.across(); ok && j.strip() {
		var s []string
		lo, hi, from, to := b.Min.Y, b.Max.Y, f.Min.Y, f.Max.Y
		start, end, left, right := b.Min.X, b.Max.X, f.Min.X, f.Max.X
		word, also, side := " up", " from the left", "lower"
		if !level {
			lo, hi, from, to, start, end, left, right = start, end, left, right, lo, hi, from, to
			word, also, side = also, word, "left"
		}
		if !(lo < from+0.05) && !(hi > to-0.05) {
			s = append(s, side+" side "+figure(lo-from)+word)
		}
		if !(start < left+0.05) || !(end > right-0.05) {
			start, end = math.Max(start-left, 0), math.Min(end, right)-left
			if j.op.Guest != "" { // as the list has it: the guest goes in
				end = tenth(start) + math.Ceil(float64((end-start-1e-6)*10))/10
			}
			s = append(s, figure(start)+" to "+figure(end)+also)
		}
		return strings.Join(s, ", ")
	}
	if j.op.InOutline {
		return ""
	}
	c := b.Centre()
	return "middle at " + figure(c.X-f.Min.X) + ", " + figure(c.Y-f.Min.Y)
}

// label finds a place for the lines and draws them, with a leader if they had
// to go far.
func (j job) label(p *placer, lines []string, mode View) []Item {
	b, bs := j.blocks(lines)
	t, _ := p.best(bs)
	return j.write(p, b, t, mode)
}

// write draws the lines where they were placed.
func (j job) write(p *placer, b outline.Box, t block, mode View) []Item {
	l := Layer{View: mode, Kind: Size}
	p.put(t)
	out := t.items(l)
	if from, to, ok := leader(b, t); ok {
		it := Item{Shape: Line, Layer: l, From: from, To: to}
		p.draw(it)
		out = append(out, it)
	}
	return out
}

// blocks are the places for the lines, the best first, and the extents of what
// they belong to.
func (j job) blocks(lines []string) (outline.Box, []block) {
	var b outline.Box
	if len(j.s.top) > 0 {
		b = j.s.top.Extents()
	} else {
		for i, t := range j.op.Strokes {
			if e := t.Extents(); i == 0 {
				b = e
			} else {
				b = b.Join(e)
			}
		}
	}
	_, _, round := j.round()
	one := []string{strings.Join(lines, ", ")}
	var bs []block
	if j.strip() {
		// Along the strip in one line, in the strip; where there is no room, beside.
		angle := 0.0
		if b.Height() > b.Width() {
			angle = 90
		}
		for _, set := range [][]string{one, lines} {
			for _, k := range [...]float64{0.5, 0.35, 0.65, 0.2, 0.8} {
				c := b.Centre()
				if angle == 0 {
					c.X = b.Min.X + float64(k*b.Width())
				} else {
					c.Y = b.Min.Y + float64(k*b.Height())
				}
				t := block{lines: set, height: small, at: c, angle: angle}
				if w, h := t.size(); angle == 0 && w < b.Width() && h < b.Height() || angle != 0 && w < b.Height() && h < b.Width() {
					bs = append(bs, t)
				}
			}
		}
	} else {
		t := block{lines: lines, height: small, at: b.Centre()}
		w, h := t.size()
		room := w+2 < b.Width() && h+2 < b.Height()
		if round {
			room = math.Hypot(w, h)+1 < b.Width()
		}
		if room && len(j.op.Strokes) == 0 {
			bs = append(bs, t)
		}
	}
	for _, gap := range [...]float64{2, 4, 8, 13, 20} {
		for _, set := range [][]string{lines, one} {
			t := block{lines: set, height: small}
			w, h := t.size()
			dx, dy := (b.Width()+w)/2+gap, (b.Height()+h)/2+gap
			for _, d := range [...][2]float64{{0, -1}, {0, 1}, {1, 0}, {-1, 0}, {0.7, -1}, {-0.7, -1}, {0.7, 1}, {-0.7, 1}, {1, 1}, {-1, 1}, {1, -1}, {-1, -1}} {
				t.at = outline.Point{X: b.Centre().X + float64(d[0]*dx), Y: b.Centre().Y + float64(d[1]*dy)}
				bs = append(bs, t)
			}
			if len(lines) == 1 {
				break
			}
		}
	}
	return b, bs
}

// leader is a line from a box to a text that stands apart from it.
func leader(b outline.Box, t block) (from, to outline.Point, ok bool) {
	lo, hi := bounds(t.rect(0.5))
	clamp := func(x, lo, hi float64) float64 { return math.Max(lo, math.Min(x, hi)) }
	c := b.Centre()
	to = outline.Point{X: Grid(clamp(c.X, lo.X, hi.X)), Y: Grid(clamp(c.Y, lo.Y, hi.Y))}
	from = outline.Point{X: Grid(clamp(to.X, b.Min.X, b.Max.X)), Y: Grid(clamp(to.Y, b.Min.Y, b.Max.Y))}
	return from, to, math.Hypot(to.X-from.X, to.Y-from.Y) > 3
}

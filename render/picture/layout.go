package picture

import (
	"fmt"
	"math"
	"sort"
	"strconv"

	"holt.example/box"
	"holt.example/box/solid"
)

// Draw draws any solids, as they stand: New makes them from a plan. Fronts are
// directions that the view should look at besides those of the solids'
// entrances.
func Draw(name, note string, solids []Solid, fronts []solid.Vec, o Options) (*Picture, error) {
	o, err := o.filled()
	if err != nil {
		return nil, err
	}
	var main []solid.Vec
	for _, s := range solids {
		if s.Out != (solid.Vec{}) {
			main = append(main, s.Out)
		}
	}
	v := choose(o.Views, main, targets(solids, fronts), solids)
	solids = append([]Solid(nil), solids...)
	sc := drawApart(solids, v)
	p := &Picture{Name: name, Width: o.Width, View: v, ax: sc.ax, shift: map[box.Part]solid.Vec{}}
	for _, s := range solids {
		p.shift[s.Part] = s.Shift
	}
	p.Note = note
	p.Pens = math.Max(0.3, math.Min(o.Width/180, 1.4))
	if len(sc.faces) == 0 {
		sc.lo, sc.hi = pt{}, pt{1, 1}
	}
	pieces := sc.pieces(o.Unseen)
	if !o.Plain {
		pieces = append(pieces, sc.traces()...)
	}
	spots := sc.spots(pieces)
	for i, s := range solids {
		if _, ok := spots[i]; !ok {
			p.Hidden = append(p.Hidden, s.Part)
		}
	}
	pieces = append(pieces, sc.engraved()...) // not before: a spot does not look for them
	l := newLayout(p, solids, spots, o)
	l.fit(sc, o)
	if o.Tint {
		p.Polys = sc.polys(p)
	}
	var lines []Line
	for _, q := range pieces {
		lines = append(lines, Line{q.class, solids[q.owner].Part, p.page(sc.ax.screen(q.a)), p.page(sc.ax.screen(q.b))})
	}
	p.Lines = clean(lines)
	if !o.Plain {
		l.balloons(solids, spots)
		l.strip()
	}
	return p, nil
}

// layout knows where things go on the page. All lengths are mm.
type layout struct {
	p      *Picture
	k      float64 // size of lettering against that on a page 180 wide
	inset  float64 // from the page's edge to the frame
	pad    float64 // from the frame to what is in it
	ring   float64 // radius of a balloon
	column float64 // width kept for a column of balloons
	keys   [][]Text
	keyH   float64
	stripH float64
	small  float64 // by how much balloons must be smaller to fit, of 1
	count  int     // of balloons
	lo, hi Point   // where the drawing may go
}

const (
	capBalloon = 2.8
	capKey     = 2.5
	capTitle   = 4.5
	capNote    = 2.2
)

func newLayout(p *Picture, solids []Solid, spots map[int]spot, o Options) *layout {
	k := o.Width / 180
	if o.Height > 0 {
		k = math.Min(k, o.Height/220)
	}
	l := &layout{p: p, small: 1, k: math.Max(0.2, math.Min(k, 3))}
	if o.Plain {
		l.inset, l.pad = 0, 2
		return l
	}
	l.inset, l.pad = 4*l.k, 4*l.k
	l.ring = 4.2 * l.k
	for i, s := range solids {
		if _, ok := spots[i]; ok && s.Number > 0 {
			l.count++
		}
	}
	if l.count > 0 {
		l.column = 2*l.ring + float64(6*l.k)
	}
	l.stripH = 14 * l.k
	l.key(solids, spots)
	return l
}

// key sets the list of numbers and names in as many columns as fit.
func (l *layout) key(solids []Solid, spots map[int]spot) {
	type row struct{ num, name string }
	var rows []row
	shown := map[int]bool{}
	for i, s := range solids {
		if _, ok := spots[i]; ok {
			shown[s.Number] = true
		}
	}
	last := 0
	for _, s := range byNumber(solids) {
		if s.Key == "" || s.Number == last {
			continue
		}
		last = s.Number
		name := s.Key
		if !shown[s.Number] {
			name += " (out of sight)"
		}
		rows = append(rows, row{strconv.Itoa(s.Number), name})
	}
	if len(rows) == 0 {
		return
	}
	h := float64(capKey * l.k)
	width := l.p.Width - 2*(l.inset+l.pad)
	indent, gap := float64(6*l.k), float64(6*l.k)
	widest := 0.0
	for _, r := range rows {
		widest = math.Max(widest, TextWidth(r.name, h, false))
	}
	n := max(1, min(int((width+gap)/(indent+widest+gap)), len(rows), 4))
	tall := (len(rows) + n - 1) / n
	each := (width+gap)/float64(n) - gap
	pitch := 2 * h
	for i, r := range rows {
		x := l.inset + l.pad + float64(float64(i/tall)*(each+gap))
		y := float64(float64(i%tall) * pitch)
		cut, full := shorten(r.name, h, false, each-indent)
		l.keys = append(l.keys, []Text{
			{At: Point{x + indent - float64(1.6*l.k), y}, Height: h, Align: End, Bold: true, S: r.num},
			{At: Point{x + indent, y}, Height: h, S: cut, Full: full},
		})
	}
	l.keyH = float64(float64(tall)*pitch) + h
}

// byNumber is the solids in the order of their numbers.
func byNumber(solids []Solid) []Solid {
	out := append([]Solid(nil), solids...)
	sort.SliceStable(out, func(i, j int) bool { return out[i].Number < out[j].Number })
	return out
}

// fit chooses scale, page height and the place of the drawing.
func (l *layout) fit(sc *scene, o Options) {
	p := l.p
	side := l.inset + l.pad + l.column
	head, foot := l.inset+l.pad, l.inset+l.pad+l.keyH+l.stripH
	w, h := math.Max(sc.hi.x-sc.lo.x, 1e-3), math.Max(sc.hi.y-sc.lo.y, 1e-3)
	availW := p.Width - 2*side
	availH := o.Height - head - foot
	rows := float64((l.count + 1) / 2)
	if o.Height == 0 {
		availH = math.Max(float64(1.6*p.Width)-head-foot, 0.2*p.Width)
	}
	availH = math.Max(availH, 5)
	p.Scale = math.Min(availW/w, availH/h)
	p.Height = o.Height
	if o.Height == 0 {
		need := math.Max(float64(p.Scale*h), float64(rows*(2*l.ring+float64(1.5*l.k))))
		p.Height = math.Ceil(head + need + foot)
	}
	if room := (p.Height - head - foot) / math.Max(rows, 1); 2*l.ring+float64(1.5*l.k) > room {
		l.small = room / (2*l.ring + float64(1.5*l.k))
	}
	l.lo = Point{side, head}
	l.hi = Point{p.Width - side, p.Height - foot}
	p.origin = Point{
		(l.lo.X+l.hi.X)/2 - float64(p.Scale*(sc.lo.x+sc.hi.x))/2,
		(l.lo.Y+l.hi.Y)/2 + float64(p.Scale*(sc.lo.y+sc.hi.y))/2,
	}
}

func (l *layout) balloons(solids []Solid, spots map[int]spot) {
	p := l.p
	var ids []int
	var dots []Point
	for i, s := range solids {
		if q, ok := spots[i]; ok && s.Number > 0 {
			ids = append(ids, i)
			dots = append(dots, p.page(q.at))
		}
	}
	ring, gap := float64(l.ring*l.small), float64((2*l.ring+float64(1.5*l.k))*l.small)
	left, right := l.inset+l.pad+l.ring, p.Width-l.inset-l.pad-l.ring
	shoulder := l.ring + float64(2.5*l.k)
	place := columns(dots, left, right, l.lo.Y+ring, l.hi.Y-ring, gap, shoulder)
	for k, i := range ids {
		part, c := solids[i].Part, place[k]
		sign := 1.0
		if c.X == right {
			sign = -1
		}
		start, elbow := Point{c.X + float64(sign*ring), c.Y}, Point{c.X + float64(sign*shoulder), c.Y}
		p.Lines = append(p.Lines, Line{Leader, part, start, elbow}, Line{Leader, part, elbow, dots[k]})
		p.Circles = append(p.Circles,
			Circle{Balloon, part, c, ring}, Circle{Dot, part, dots[k], 0.7 * l.k * l.small})
		h := capBalloon * l.k * l.small
		p.Texts = append(p.Texts, Text{
			At: Point{c.X, c.Y + h/2}, Height: h, Align: Middle, Bold: true, S: strconv.Itoa(solids[i].Number),
		})
	}
}

// strip draws the frame, the key and the title.
func (l *layout) strip() {
	p := l.p
	x0, y0, x1, y1 := l.inset, l.inset, p.Width-l.inset, p.Height-l.inset
	rule := func(a, b Point) { p.Lines = append(p.Lines, Line{Class: Rule, From: a, To: b}) }
	rule(Point{x0, y0}, Point{x1, y0})
	rule(Point{x1, y0}, Point{x1, y1})
	rule(Point{x1, y1}, Point{x0, y1})
	rule(Point{x0, y1}, Point{x0, y0})
	ys := y1 - l.stripH
	rule(Point{x0, ys}, Point{x1, ys})
	if len(l.keys) > 0 {
		rule(Point{x0, ys - l.keyH}, Point{x1, ys - l.keyH})
		for _, row := range l.keys {
			for _, t := range row {
				t.At.Y += ys - l.keyH + float64(2*capKey*l.k)
				p.Texts = append(p.Texts, t)
			}
		}
	}
	width := x1 - x0 - 2*l.pad
	h := capTitle * l.k
	for h > 2.5*l.k && TextWidth(p.Name, h, true) > width {
		h -= float64(0.25 * l.k)
	}
	name, full := shorten(p.Name, h, true, width)
	p.Texts = append(p.Texts, Text{At: Point{x0 + l.pad, ys + float64(6.8*l.k)}, Height: h, Bold: true, S: name, Full: full})
	note := fmt.Sprintf("%s; %s, turned %s°, from %s° above; not to scale", p.Note, p.View.Name, num(p.View.Round), num(p.View.Up))
	note, full = shorten(note, capNote*l.k, false, width)
	p.Texts = append(p.Texts, Text{At: Point{x0 + l.pad, ys + float64(11.4*l.k)}, Height: capNote * l.k, S: note, Full: full})
}

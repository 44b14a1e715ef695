package bom

import (
	"fmt"
	"math"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
)

// workOf copies an operation and puts it into words. Places count up from the
// lower edge and right from the left edge of the machined face, of work on the other
// face as that lies when the part has been turned over like a page; they and the
// sizes of openings are rounded to the step, the cuts of joints to 0.1. It also
// returns the edge that the work is open to, -1 if none.
func workOf(p box.Piece, op box.Op, names []string, step float64, g enterer) (Work, int) {
	w := Work{
		Kind: op.Kind, Use: op.Use, Side: op.Side, Source: op.Source,
		From: op.From, To: op.To, Tilt: append([]box.Deg(nil), op.Tilt...),
		Region: copyRegion(op.Region), Bottom: copyRegion(op.Bottom),
	}
	for _, t := range op.Strokes {
		w.Strokes = append(w.Strokes, append(outline.Path(nil), t...))
	}
	w.Removed, w.Tool = op.Removed, op.Tool
	d := describer{p: p, op: op, names: names, step: step, open: -1, guest: g}
	if op.Side == box.SideFar {
		d.turnOver()
	}
	if op.Guest != "" {
		d.step = math.Min(step, fine)
	}
	d.u0, d.u1 = reach(d.p.Panel.Machined, 1, 0)
	d.v0, _ = reach(d.p.Panel.Machined, 0, 1)
	switch op.Kind {
	case box.OpRebate, box.OpNotch:
		d.atEdge(&w)
	case box.OpHousing, box.OpGroove:
		d.channel(&w)
	case box.OpEngrave:
		d.engraved(&w)
	default:
		d.island(&w)
	}
	w.More = d.more()
	return w, d.open
}

// describer holds what the words for one operation need.
type describer struct {
	p          box.Piece
	op         box.Op
	names      []string
	step       float64
	u0, u1, v0 float64 // of the machined face
	open       int
	guest      enterer
}

// enterer is a guest as it enters a cut: how far, and how thick it is. 0 where
// that is not known.
type enterer struct{ depth, thickness float64 }

// enterer finds how a guest enters p.
func (s source) enterer(p box.Piece, guest box.Part) enterer {
	var g enterer
	for _, q := range s.pieces {
		if guest == "" || q.Part != guest {
			continue
		}
		g.thickness = float64(q.Thickness)
		for _, e := range q.Panel.Edges {
			if e.Neighbour == p.Part {
				g.depth = math.Max(g.depth, float64(e.Adds))
			}
		}
	}
	return g
}

// section is the section of a joint's cut, deep and wide, with the play that is
// in it. A wall that is tilted makes the guest's thickness no measure.
func (d describer) section(w *Work) string {
	return fmt.Sprintf("%s deep%s, %s wide%s", mm(w.Depth), d.play(w.Depth, d.guest.depth), mm(w.Width), d.play(w.Width, d.guest.thickness))
}

func (d describer) play(size box.MM, guest float64) string {
	for _, a := range d.op.Tilt {
		if a != 0 {
			return ""
		}
	}
	play := nearest(float64(size)-guest, fine)
	if !(guest > near && play > near && play < 2) {
		return ""
	}
	return fmt.Sprintf(" (%s + %s play)", num(nearest(float64(size)-play, 0.01)), num(play))
}

func (d describer) place(x float64) string { return num(nearest(x, d.step)) }

// size rounds a size: up where a guest must go in.
func (d describer) size(x float64) float64 {
	if d.op.Guest != "" {
		return up(x, d.step)
	}
	return nearest(x, d.step)
}

// depth is the depth of the cut from the face that it starts at.
func (d describer) depth() float64 {
	x := float64(d.op.To - d.op.From)
	if d.op.Guest != "" {
		return down(x, math.Min(d.step, fine))
	}
	return nearest(x, math.Min(d.step, fine))
}

// across is ", centred" or the distance from the left edge.
func (d describer) across(u float64) string {
	if math.Abs(u-(d.u0+d.u1)/2) < near {
		return "centred"
	}
	return d.place(u-d.u0) + " from the left"
}

// island describes what lies within the face: holes, openings, pockets, marks.
func (d *describer) island(w *Work) {
	if d.op.Side == box.SideEdge && d.op.Kind == box.OpBore {
		d.endBore(w)
		return
	}
	c, dia, round := circle(d.op.Region)
	what := map[box.OpKind]string{
		box.OpBore: "hole", box.OpOpening: "opening", box.OpPocket: "pocket", box.OpMark: "mark",
	}[d.op.Kind]
	if what == "" {
		what = string(d.op.Kind)
	}
	var b strings.Builder
	b.WriteString(what)
	if round {
		w.Width = box.MM(nearest(dia, math.Min(d.step, fine)))
		b.WriteString(" " + mm(w.Width))
	} else if len(d.op.Region) > 0 {
		ul, uh := reach(d.op.Region, 1, 0)
		vl, vh := reach(d.op.Region, 0, 1)
		fmt.Fprintf(&b, " %s wide, %s high", num(d.size(uh-ul)), num(d.size(vh-vl)))
		c = outline.Point{X: (ul + uh) / 2, Y: (vl + vh) / 2}
	}
	if d.op.Side == box.SideThrough {
		if !round {
			b.WriteString(",")
		}
		b.WriteString(" through")
	} else {
		w.Depth = box.MM(d.depth())
		fmt.Fprintf(&b, ", %s deep", mm(w.Depth))
	}
	w.What = b.String()
	if len(d.op.Region) > 0 {
		w.Where = d.place(c.Y-d.v0) + " up, " + d.across(c.X)
	}
}

// engraved describes lines: how long they are together, how wide and deep, with
// what, and where their middle is.
func (d *describer) engraved(w *Work) {
	l := 0.0
	var e outline.Box
	for i, p := range d.op.Strokes {
		l += p.Length()
		if i == 0 {
			e = p.Extents()
		}
		e = e.Join(p.Extents())
	}
	w.Width, w.Depth = d.op.Width, box.MM(float64(d.op.To-d.op.From))
	tool := "a flat cutter"
	if a := d.op.Tool.VAngle; a != 0 {
		tool = "a V-cutter of " + num(float64(a)) + " deg"
	}
	w.What = fmt.Sprintf("lines engraved, %s long in all, %s wide, %s deep with %s", num(nearest(l, 1)), num(nearest(float64(w.Width), 0.01)), num(nearest(float64(w.Depth), 0.01)), tool)
	c := e.Centre()
	w.Where = d.place(c.Y-d.v0) + " up, " + d.across(c.X)
}

// atEdge describes what is open to an edge: rebates and notches.
func (d *describer) atEdge(w *Work) {
	d.clip()
	t := d.edges()
	if len(t) == 0 {
		d.island(w)
		return
	}
	if len(t) == 2 && len(d.op.Region) == 1 && len(d.op.Region[0]) == 3 && d.op.Side == box.SideThrough {
		w.What = fmt.Sprintf("corner cut off, %s along the %s edge and %s along the %s edge",
			num(d.size(t[0].hi-t[0].lo)), d.names[t[0].edge], num(d.size(t[1].hi-t[1].lo)), d.names[t[1].edge])
		return
	}
	// The edge that it reaches least far in from.
	c := t[0]
	for _, x := range t[1:] {
		if x.in < c.in-near {
			c = x
		}
	}
	d.open = c.edge
	e := d.p.Panel.Edges[c.edge]
	length := float64(e.Length)
	wide := d.size(c.in)
	w.Width = box.MM(wide)
	name := d.names[c.edge] + " edge"
	// Upright edges are measured from their lower end, others from the left.
	dir, du, dv := "up", e.To.X-e.From.X, e.To.Y-e.From.Y
	if math.Abs(du) > math.Abs(dv) {
		dir, dv = "from its left end", du
	}
	lo, hi := c.lo, c.hi
	if dv < 0 {
		lo, hi = length-hi, length-lo
	}
	if d.op.Kind == box.OpNotch {
		w.What = fmt.Sprintf("notch %s into the %s, %s along it", num(wide), name, num(d.size(hi-lo)))
	} else {
		w.Depth = box.MM(d.depth())
		w.What = fmt.Sprintf("rebate along the %s, %s", name, d.section(w))
	}
	if lo > 1e-3 || hi < length-1e-3 {
		w.Where = fmt.Sprintf("%s to %s %s", d.place(lo), d.place(lo+d.size(hi-lo)), dir)
	}
}

// clip cuts a region off where it runs out beyond the part.
func (d *describer) clip() {
	var all []outline.Point
	for _, e := range d.p.Panel.Edges {
		all = append(all, e.From, e.To)
	}
	if len(all) == 0 || len(d.op.Region) == 0 {
		return
	}
	base := outline.Region{outline.Hull(all)}
	out, in := d.op.Region.Extents(), base.Extents()
	if out.Min.X > in.Min.X-near && out.Min.Y > in.Min.Y-near && out.Max.X < in.Max.X+near && out.Max.Y < in.Max.Y+near {
		return
	}
	if r, err := outline.Intersect(d.op.Region, base); err == nil && len(r) > 0 {
		for i := range r {
			r[i] = r[i].Simplify(near)
		}
		d.op.Region = r
	}
}

// contact is an edge that an operation is open to: how far it reaches in from
// there, and the interval along the edge from its start.
type contact struct {
	edge       int
	in, lo, hi float64
}

// edges finds the edges that an operation is open to.
func (d *describer) edges() []contact {
	if len(d.op.Region) == 0 {
		return nil
	}
	var out []contact
	for i, e := range d.p.Panel.Edges {
		nu, nv := outward(e)
		base := float64(e.From.X*nu) + float64(e.From.Y*nv)
		a, b := reach(d.op.Region, nu, nv)
		if b < base-1e-3 { // does not touch the edge
			continue
		}
		tu, tv := -nv, nu
		start := float64(e.From.X*tu) + float64(e.From.Y*tv)
		l, h := reach(d.op.Region, tu, tv)
		l, h = math.Max(l-start, 0), math.Min(h-start, float64(e.Length))
		if h-l >= 1e-3 {
			out = append(out, contact{i, base - a, l, h})
		}
	}
	return out
}

// channel describes housings and grooves.
func (d *describer) channel(w *Work) {
	if len(d.op.Region) == 0 {
		w.What = string(d.op.Kind)
		return
	}
	d.clip()
	u, v := direction(d.op.Region)
	lo, hi := reach(d.op.Region, u, v)
	a, b := reach(d.op.Region, -v, u)
	w.Depth, w.Width = box.MM(d.depth()), box.MM(d.size(b-a))
	w.What = fmt.Sprintf("%s %s", d.op.Kind, d.section(w))
	faceLo, faceHi := reach(d.p.Panel.Machined, u, v)
	stopped := lo > faceLo+1e-3 || hi < faceHi-1e-3
	switch {
	case v == 0:
		w.Where = fmt.Sprintf("lower side %s up", d.place(a-d.v0))
		if stopped {
			w.Where += fmt.Sprintf(", %s to %s from the left", d.place(lo-d.u0), d.place(lo-d.u0+d.size(hi-lo)))
		}
	case u == 0:
		w.Where = fmt.Sprintf("left side %s from the left", d.place(-b-d.u0))
		if stopped {
			w.Where += fmt.Sprintf(", %s to %s up", d.place(lo-d.v0), d.place(lo-d.v0+d.size(hi-lo)))
		}
	default:
		angle := math.Atan2(v, u) * 180 / math.Pi
		mu, mv := float64((lo+hi)/2*u)-float64((a+b)/2*v), float64((lo+hi)/2*v)+float64((a+b)/2*u)
		w.Where = fmt.Sprintf("%s long at %s deg, its middle %s up, %s", num(d.size(hi-lo)), num(nearest(angle, 0.1)), d.place(mv-d.v0), d.across(mu))
	}
}

// more says what any operation may need to have said.
func (d describer) more() string {
	t := ""
	switch d.op.Side {
	case box.SideFar:
		t += ", on the other face, turned over"
	case box.SideEdge:
		if d.op.Kind == box.OpBore {
			t += fmt.Sprintf(", its middle %s below the machined face", tenth(float64(d.op.From+d.op.To)/2))
			break
		}
		t += fmt.Sprintf(", in the edge, %s to %s below the machined face", mm(d.op.From), mm(d.op.To))
	}
	lo, hi, n := 0.0, 0.0, 0
	for _, a := range d.op.Tilt {
		if a != 0 {
			n++
		}
		lo, hi = math.Min(lo, float64(a)), math.Max(hi, float64(a))
	}
	angle := hundredth(lo)
	switch {
	case lo == 0:
		angle = hundredth(hi)
	case hi > 0:
		angle += " to " + hundredth(hi)
	}
	switch {
	case n == 1:
		t += ", one wall tilted " + angle + " deg"
	case n > 1:
		t += ", walls tilted " + angle + " deg"
	}
	if d.op.Use != "" && string(d.op.Use) != string(d.op.Kind) {
		t += " (" + string(d.op.Use) + ")"
	}
	return t
}

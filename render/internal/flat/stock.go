package flat

import (
	"errors"
	"fmt"
	"math"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/box/layout"
	"holt.example/box/outline"
)

// ErrNoSheet is returned for a sheet that a batch does not have.
var ErrNoSheet = errors.New("the batch has no such sheet")

// OnStock draws one piece of stock of a batch, in its own frame: the lower left
// corner at 0, 0. Each panel stands where it is cut, with its work on the layers
// of a panel; work on the face that is down stands below the stock, once for
// equal parts, as it lies when the part has been turned over. Gap and Bare of
// the options count.
func OnStock(r *batch.Result, sheet int, o Options) (Drawing, error) {
	if err := o.check(); err != nil {
		return Drawing{}, err
	}
	if r == nil || sheet < 0 || sheet >= len(r.Sheets) {
		return Drawing{}, ErrNoSheet
	}
	s := &r.Sheets[sheet]
	b := board{s: s, stock: r.Stock(*s), bare: o.Bare}
	if !(b.stock.Length > 0 && b.stock.Length <= Limit && b.stock.Width > 0 && b.stock.Width <= Limit) {
		return Drawing{}, fmt.Errorf("stock of %g by %g mm", b.stock.Length, b.stock.Width)
	}
	d := Drawing{Title: Clean(r.SheetName(sheet), 120)}
	b.edge()
	if !o.Bare {
		b.leave()
		b.cuts(s.Piece.Cuts)
	}
	for i := range s.Placed {
		p := &s.Placed[i]
		if err := b.part(i, p); err != nil {
			return Drawing{}, err
		}
		d.Parts = append(d.Parts, Clean(p.Label+" "+string(p.Piece.Part)+", "+r.BoxName(p.Box), 120))
	}
	d.Items = b.items
	if !o.Bare {
		b.title(&d, r.Facts(sheet))
	}
	below, err := b.second(r, o)
	if err != nil {
		return Drawing{}, err
	}
	d.Items = append(d.Items, below...)
	d.Bounds = boundsOf(d.Items)
	// A whole sheet is looked at from farther away than a panel.
	d.Weight = clamp(math.Max(b.stock.Length, b.stock.Width)/500, 1, 5)
	return d, nil
}

// board is a piece of stock that is being drawn.
type board struct {
	s     *batch.Sheet
	stock layout.Stock
	bare  bool
	items []Item
}

func (b *board) put(items ...Item) { b.items = append(b.items, items...) }

// rect is a rectangle that belongs to the stock.
func rect(k Kind, r outline.Box, note string) []Item {
	it, ok := closed(Layer{Kind: k}, outline.Rectangle(r.Min.X, r.Min.Y, r.Max.X, r.Max.Y), note)
	if !ok || !(r.Width() > 0 && r.Height() > 0) {
		return nil
	}
	it.Part = -1
	return []Item{it}
}

func label(k Kind, at outline.Point, w Writing) Item {
	return Item{Shape: Label, Layer: Layer{Kind: k}, From: outline.Point{X: Grid(at.X), Y: Grid(at.Y)}, Text: w, Part: -1}
}

// edge is the edge of the stock.
func (b *board) edge() {
	s := &b.stock
	b.put(rect(Stock, outline.Box{Max: outline.Point{X: s.Length, Y: s.Width}}, "the edge of the stock, "+Num(s.Length)+" by "+Num(s.Width))...)
}

// leave is all of the stock that is no part.
func (b *board) leave() {
	s := &b.stock
	if s.End > 0 || s.Edge > 0 {
		in := outline.Box{Min: outline.Point{X: s.End, Y: s.Edge}, Max: outline.Point{X: s.Length - s.End, Y: s.Width - s.Edge}}
		b.put(rect(Trim, in, "trimmed to this")...)
	}
	for _, d := range s.Defects {
		r := d.Box
		if !(r.Height() > 0) { // of a length only the extent along it counts
			r.Min.Y, r.Max.Y = 0, s.Width
		}
		b.put(rect(Defect, r, "defect: "+d.Kind)...)
	}
	for i, e := range b.s.Piece.Beds {
		b.put(rect(Blank, e.Box, fmt.Sprintf("set-up %d", i+1))...)
	}
	for _, r := range b.s.Piece.Offcuts {
		b.put(rect(Offcut, r, "offcut, kept")...)
		long := max(r.Width(), r.Height())
		words := "offcut " + Dotted(down(r.Width())) + " × " + Dotted(down(r.Height()))
		w := Writing{Value: words, Height: clamp(long*0.03, small, 12), Middle: true}
		at := r.Centre()
		short := r.Height()
		if r.Height() > r.Width() {
			w.Angle, short = 90, r.Width()
		}
		if Width(w.Value, w.Height) < long && w.Height*2 < short {
			if w.Angle != 0 {
				at.X += w.Height / 2
			} else {
				at.Y -= w.Height / 2
			}
			b.put(label(Text, at, w))
		}
	}
}

// down is a size that is there for sure, in tenths.
func down(x float64) float64 { return math.Floor(x*10+1e-6) / 10 }

func clamp(x, lo, hi float64) float64 { return math.Max(lo, math.Min(hi, x)) }

// cuts draws the saw's cuts: lines in the middle of the kerf, from edge to edge
// of what is divided.
func (b *board) cuts(c *layout.Cut) {
	if c == nil {
		return
	}
	for i := range c.Into {
		d := &c.Into[i]
		if i > 0 && c.Slant == 0 {
			e := &c.Into[i-1]
			var p, q outline.Point
			note := "crosscut"
			if c.Rip {
				y := (e.Box.Max.Y + d.Box.Min.Y) / 2
				p, q, note = outline.Point{X: c.Box.Min.X, Y: y}, outline.Point{X: c.Box.Max.X, Y: y}, "rip"
			} else {
				x := (e.Box.Max.X + d.Box.Min.X) / 2
				p, q = outline.Point{X: x, Y: c.Box.Min.Y}, outline.Point{X: x, Y: c.Box.Max.Y}
			}
			if it, ok := open(Layer{Kind: Saw}, outline.Line(p, q), note); ok {
				it.Part = -1
				b.put(it)
			}
		}
		b.cuts(d)
	}
}

// part draws a panel in its place.
func (b *board) part(i int, p *batch.Placed) error {
	panel := placed(p.Panel, p.Lay)
	m, _, err := views(panel)
	if err != nil {
		return fmt.Errorf("part %.80q: %w", string(p.Piece.Part), err)
	}
	items := m.items
	if !b.bare {
		e := panel.Silhouette.Extents()
		if r := p.Blank; r.Width() > e.Width()+Step || r.Height() > e.Height()+Step {
			items = append(items, rect(Blank, r, "blank of "+Dotted(tenth(r.Width()))+" by "+Dotted(tenth(r.Height())))...)
		}
		items = append(items, marks(p, panel, m)...)
	}
	for k := range items {
		items[k].Part = i
	}
	b.put(items...)
	return nil
}

// marks are a part's balloon, name, bevels and grain arrow.
func marks(p *batch.Placed, panel box.Panel, v view) []Item {
	var out []Item
	pl := &placer{face: outers(panel.Machined)}
	pl.draw(v.items...)
	for _, e := range panel.Edges {
		if words := bevelWords(e); words != nil {
			out = append(out, bevel(pl, e, words)...)
		}
	}
	taken := append(v.items[:len(v.items):len(v.items)], out...)
	short := math.Min(v.box.Width(), v.box.Height())
	text := Writing{Value: Clean(p.Label, 16), Height: clamp(short*0.06, small, 9), Middle: true}
	c, r, ok := room(panel.Machined, v.box, taken, Width(text.Value, text.Height)/2+text.Height*0.6)
	text.Height *= ok
	if !(text.Height >= 1) {
		return append(out, grainArrow(panel, v.box, taken, AsMachined)...)
	}
	out = append(out,
		Item{Shape: Disc, Layer: Layer{Kind: Balloon}, Circle: Circle{Grid(c.X), Grid(c.Y), Grid(r)}},
		label(Text, outline.Point{X: c.X, Y: c.Y - text.Height/2}, text))
	name := Writing{Value: Clean(string(p.Piece.Part), 40), Height: math.Max(small*ok, text.Height*0.6), Middle: true}
	at := outline.Point{X: c.X, Y: c.Y - r - name.Height*1.6}
	n := label(Text, at, name)
	if fitsIn(panel.Machined, taken, n.extents()) {
		out = append(out, n)
	}
	taken = append(taken, out...)
	return append(out, grainArrow(panel, v.box, taken, AsMachined)...)
}

// room finds a place for a disc of radius r, or a smaller one, on the face clear
// of all work; the last number is by how much it was shrunk, 0 if there is none.
func room(face outline.Region, b outline.Box, taken []Item, r float64) (outline.Point, float64, float64) {
	for _, k := range [...]float64{1, 0.75, 0.5, 0.35} {
		for _, fy := range [...]float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.12, 0.88} {
			for _, fx := range [...]float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.12, 0.88} {
				c := outline.Point{X: b.Min.X + float64(b.Width()*fx), Y: b.Min.Y + float64(b.Height()*fy)}
				q := r*k + 1
				box := outline.Box{Min: outline.Point{X: c.X - q, Y: c.Y - q}, Max: outline.Point{X: c.X + q, Y: c.Y + q}}
				if face.Contains(c, 0) == outline.Inside && face.Distance(c) >= q && clear(taken, box) {
					return c, r * k, k
				}
			}
		}
	}
	return outline.Point{}, 0, 0
}

// fitsIn reports whether a box lies on the face, clear of all work.
func fitsIn(face outline.Region, taken []Item, b outline.Box) bool {
	for _, c := range [...]outline.Point{b.Min, b.Max, {X: b.Min.X, Y: b.Max.Y}, {X: b.Max.X, Y: b.Min.Y}} {
		if face.Contains(c, 1) != outline.Inside {
			return false
		}
	}
	return clear(taken, b)
}

// clear reports whether no item but an outline comes into the box.
func clear(items []Item, b outline.Box) bool {
	for _, it := range items {
		if it.Layer.Kind != Profile && it.Layer.Kind != Face && it.extents().Overlaps(b, 0) {
			return false
		}
	}
	return true
}

// title says above the stock what it is and how it is cut.
func (b *board) title(d *Drawing, facts string) {
	h := clamp(b.stock.Length*0.009, small, 16)
	at := outline.Point{Y: b.stock.Width + h}
	d.Items = append(d.Items, label(Text, at, Writing{Value: Clean(facts, 160), Height: h * 0.75}))
	at.Y += h * 1.6
	d.Items = append(d.Items, label(Text, at, Writing{Value: d.Title, Height: h}))
}

// second draws the work on the faces that are down, in rows below the stock.
func (b *board) second(r *batch.Result, o Options) ([]Item, error) {
	type key struct {
		order, item int
		over        bool
	}
	seen := map[key]bool{}
	var cells []cell
	for i := range b.s.Placed {
		p := &b.s.Placed[i]
		k := key{r.Boxes[p.Box].Order, p.Item, p.Over}
		if seen[k] {
			continue
		}
		seen[k] = true
		_, t, err := views(p.Panel)
		if err != nil {
			return nil, fmt.Errorf("part %.80q: %w", string(p.Piece.Part), err)
		}
		if len(t.items) == 0 {
			continue
		}
		items := t.items
		if !o.Bare {
			q := p.Piece
			q.Panel = p.Panel
			items = append(items, dress(Subject{q, p.Item}, t, Turned)...)
		}
		for n := range items {
			items[n].Part = i
		}
		cells = append(cells, cell{items: items, box: boundsOf(items)})
	}
	if len(cells) == 0 {
		return nil, nil
	}
	widest := b.stock.Length
	for _, c := range cells {
		widest = math.Max(widest, c.box.Width())
	}
	items := arrange(cells, widest, o.gap())
	return moveAll(items, outline.Point{Y: -boundsOf(items).Max.Y - 2*o.gap()}), nil
}

// placed is a panel carried by a turn and a move.
func placed(p box.Panel, a outline.Affine) box.Panel {
	q := p
	q.Machined, q.Far, q.Silhouette = p.Machined.Transform(a), p.Far.Transform(a), p.Silhouette.Transform(a)
	q.Grain = [2]float64{float64(a.XX*p.Grain[0]) + float64(a.XY*p.Grain[1]), float64(a.YX*p.Grain[0]) + float64(a.YY*p.Grain[1])}
	q.Edges = make([]box.PanelEdge, len(p.Edges))
	for i, e := range p.Edges {
		e.From, e.To = a.Apply(e.From), a.Apply(e.To)
		q.Edges[i] = e
	}
	q.Ops = make([]box.Op, len(p.Ops))
	for i, op := range p.Ops {
		op.Region = op.Region.Transform(a)
		if op.Bottom != nil {
			op.Bottom = op.Bottom.Transform(a)
		}
		strokes := op.Strokes
		op.Strokes = nil
		for _, s := range strokes {
			op.Strokes = append(op.Strokes, s.Transform(a))
		}
		q.Ops[i] = op
	}
	return q
}

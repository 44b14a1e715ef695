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
func down(x float64) float64 { return math.Floor(float64(x*10)+1e-6) / 10 }

func clamp(x, lo, hi float64) float64 { return math.Max(lo, math.Min(hi, x)) }

// cuts draws the saw's cuts: lines in the middle of the kerf, from edge to edge
// of what is divided.
func (b *board) cuts(c *layout.Cut) {
	if c == nil {
		return
	}
	for i := range c.Into {
		d := &c.Into[i]
		if i > 0 {
			e := &c.Into[i-1]
			var p, q outline.Point
			note := "crosscut"
			if c.Rip {
				y := (e.Box.Max.Y + d.Box.Min.Y) / 2
				p, q, note = outline.Point{X: c.Box.Min.X, Y: y}, outline.Point{X: c.Box.Max.X, Y: y}, "rip"
			} else {
				// the boxes of a pair head to tail overlap by the run of the cut,
				// whose middle is that of the boxes' sides all the same
				x := (e.Box.Max.X + d.Box.Min.X) / 2
				run := 0.0
				if c.Slant != 0 {
					run = float64(math.Tan(float64(c.Slant*math.Pi)/180) * c.Box.Height())
					note = "crosscut " + Dotted(tenth(math.Abs(c.Slant))) + "° off square"
				}
				p, q = outline.Point{X: x + run/2, Y: c.Box.Min.Y}, outline.Point{X: x - run/2, Y: c.Box.Max.Y}
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

// title says above the stock what it is and how it is cut.
func (b *board) title(d *Drawing, facts string) {
	h := clamp(b.stock.Length*0.009, small, 16)
	at := outline.Point{Y: b.stock.Width + h}
	d.Items = append(d.Items, label(Text, at, Writing{Value: Clean(facts, 160), Height: h * 0.75}))
	at.Y += float64(h * 1.6)
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

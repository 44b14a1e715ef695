package flat

import (
	"fmt"
	"math"
	"slices"

	"holt.example/box/outline"
)

// Shape is the form of an item.
type Shape int

// The shapes.
const (
	Closed Shape = iota // Item.Contour
	Disc                // Item.Circle
	Line                // from Item.From to Item.To
	Label               // Item.Text at Item.From
	Open                // Item.Stroke
)

// Item is one thing on a drawing.
type Item struct {
	Shape    Shape
	Layer    Layer
	Contour  outline.Contour
	Circle   Circle
	Stroke   outline.Path
	From, To outline.Point
	Text     Writing
	Note     string // what it is, in words; made from the plan, so escape it
	Part     int    // index into Drawing.Parts; -1 for what belongs to the sheet
}

// Writing is one line of text.
type Writing struct {
	Value  string  // on one line, but otherwise as the user wrote it
	Height float64 // of the capitals, mm
	Angle  float64 // degrees anticlockwise, over -90 to 90
	Middle bool    // centred on its place; else it starts there
	Ink    Kind    // written in the colour of this kind; Profile is no other than the layer's
}

// Drawing is what a file shows.
type Drawing struct {
	Title  string // the design's name, on one line
	Parts  []string
	Items  []Item
	Bounds outline.Box // of everything, texts by their likely width
	Weight float64     // of lines that are seen, over the usual; 0 is 1
}

// Layers are the layers that have items, in order.
func (d Drawing) Layers() []Layer {
	seen := map[Layer]bool{}
	var ls []Layer
	for _, it := range d.Items {
		if !seen[it.Layer] {
			seen[it.Layer] = true
			ls = append(ls, it.Layer)
		}
	}
	slices.SortFunc(ls, Layer.Compare)
	return ls
}

// extents is the box around an item.
func (it Item) extents() outline.Box {
	switch it.Shape {
	case Closed:
		return it.Contour.Extents()
	case Open:
		return it.Stroke.Extents()
	case Disc:
		c := it.Circle
		return outline.Box{Min: outline.Point{X: c.X - c.R, Y: c.Y - c.R}, Max: outline.Point{X: c.X + c.R, Y: c.Y + c.R}}
	case Line:
		return outline.Box{Min: it.From, Max: it.From}.Join(outline.Box{Min: it.To, Max: it.To})
	}
	// Text: a third of the height hangs below the line.
	w, h := Width(it.Text.Value, it.Text.Height), it.Text.Height
	lo := 0.0
	if it.Text.Middle {
		lo = -w / 2
	}
	r := outline.Rectangle(lo, -h/3, lo+w, h)
	return r.Transform(outline.Turn(it.Text.Angle).Then(outline.Shift(it.From.X, it.From.Y))).Extents()
}

// boundsOf is the box around items.
func boundsOf(items []Item) outline.Box {
	bs := make([]outline.Box, len(items))
	for i, it := range items {
		bs[i] = it.extents()
	}
	return around(bs...)
}

// moved shifts an item.
func (it Item) moved(by outline.Point) Item {
	p := func(q outline.Point) outline.Point { return outline.Point{X: Grid(q.X + by.X), Y: Grid(q.Y + by.Y)} }
	it.Contour = shift(it.Contour, by)
	it.Stroke = outline.Path(shift(outline.Contour(it.Stroke), by))
	c := p(outline.Point{X: it.Circle.X, Y: it.Circle.Y})
	it.Circle.X, it.Circle.Y = c.X, c.Y
	it.From, it.To = p(it.From), p(it.To)
	return it
}

// moveAll shifts items by a whole number of grid steps, so that they stay what
// they were to the last digit.
func moveAll(items []Item, by outline.Point) []Item {
	by = outline.Point{X: Grid(by.X), Y: Grid(by.Y)}
	out := make([]Item, len(items))
	for i, it := range items {
		out[i] = it.moved(by)
	}
	return out
}

// closed makes the item of a contour: a circle if it is one. It reports false
// for what has no area on the grid.
func closed(l Layer, c outline.Contour, note string) (Item, bool) {
	if at, d, ok := c.IsCircle(roundTolerance); ok {
		o := Circle{Grid(at.X), Grid(at.Y), Grid(d / 2)}
		return Item{Shape: Disc, Layer: l, Circle: o, Note: note}, o.R > 0
	}
	c = onGrid(c)
	if len(c) < 2 || len(c) == 2 && c[0].Bulge == 0 && c[1].Bulge == 0 {
		return Item{}, false
	}
	return Item{Shape: Closed, Layer: l, Contour: c, Note: note}, true
}

// open makes the item of a stroke: a contour or circle if it comes back to its
// beginning, a line if it is one.
func open(l Layer, p outline.Path, note string) (Item, bool) {
	if p.Closed() {
		return closed(l, outline.Contour(p[:len(p)-1]), note)
	}
	var g outline.Path
	for _, v := range p {
		v.X, v.Y = Grid(v.X), Grid(v.Y)
		if n := len(g); n > 0 && g[n-1].At() == v.At() {
			g[n-1].Bulge = v.Bulge
			continue
		}
		g = append(g, v)
	}
	if len(g) < 2 {
		return Item{}, false
	}
	g[len(g)-1].Bulge = 0
	if len(g) == 2 && g[0].Bulge == 0 {
		return Item{Shape: Line, Layer: l, From: g[0].At(), To: g[1].At(), Note: note}, true
	}
	return Item{Shape: Open, Layer: l, Stroke: g, Note: note}, true
}

// check refuses what cannot be written.
func check(c outline.Contour) error {
	for i, v := range c {
		if !fits(v.X) || !fits(v.Y) {
			return fmt.Errorf("corner %d at %g, %g: want numbers within %g mm", i, v.X, v.Y, float64(Limit))
		}
		if math.IsNaN(v.Bulge) || !(math.Abs(v.Bulge) <= maxBulge) {
			return fmt.Errorf("corner %d has the bulge %g: want at most %g in size", i, v.Bulge, float64(maxBulge))
		}
	}
	return nil
}

// maxBulge is an arc of all but half a degree of a full turn.
const maxBulge = 1e3

// sameLine is the place and form of an item without its layer: two items with
// the same one lie on each other. A contour counts from its lowest corner and
// anticlockwise.
func (it Item) sameLine() string {
	switch it.Shape {
	case Disc:
		return fmt.Sprint("disc", ticks(it.Circle.X), ticks(it.Circle.Y), ticks(it.Circle.R))
	case Closed:
		c := it.Contour
		if c.Area() < 0 {
			c = c.Reverse()
		}
		first := 0
		for i, v := range c {
			f := c[first]
			if v.Y < f.Y || v.Y == f.Y && (v.X < f.X || v.X == f.X && v.Bulge < f.Bulge) {
				first = i
			}
		}
		b := []byte("closed")
		for i := range c {
			v := c[(first+i)%len(c)]
			b = append(appendTicks(append(b, ' '), ticks(v.X), 0), ' ')
			b = append(appendTicks(b, ticks(v.Y), 0), ' ')
			b = fmt.Appendf(b, "%.9f", v.Bulge)
		}
		return string(b)
	}
	if it.Shape == Open || it.Shape == Line {
		p := it.Stroke
		if it.Shape == Line {
			p = outline.Line(it.From, it.To)
		}
		// Either way round is the same stroke.
		return min(strokeKey(p), strokeKey(p.Reverse()))
	}
	return ""
}

func strokeKey(p outline.Path) string {
	b := []byte("open")
	for i, v := range p {
		b = append(appendTicks(append(b, ' '), ticks(v.X), 0), ' ')
		b = append(appendTicks(b, ticks(v.Y), 0), ' ')
		if i+1 < len(p) {
			b = fmt.Appendf(b, "%.9f", v.Bulge+0)
		}
	}
	return string(b)
}

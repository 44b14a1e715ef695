package flat

import (
	"errors"
	"fmt"
	"math"

	"holt.example/box"
	"holt.example/box/outline"
)

// Subject is a part to draw and the number it has in the list; 0 is none.
type Subject struct {
	Piece  box.Piece
	Number int
}

// Options say what a drawing shows. The zero value shows all.
type Options struct {
	Bare   bool    // only what is cut or marked: no text, sizes or grain arrow
	Legend bool    // says how the drawing is read, and writes kinds of work in their colours
	Corner bool    // a single part: the lower left corner of its silhouette at 0, 0
	Gap    float64 // between parts, mm; 0 means 20
	Width  float64 // of a sheet, mm; 0 chooses one that is somewhat wider than high
}

func (o Options) gap() float64 {
	if o.Gap == 0 {
		return 20
	}
	return o.Gap
}

func (o Options) check() error {
	if !(o.Gap >= 0 && o.Gap <= 1000) {
		return fmt.Errorf("gap %g: want 0 to 1000 mm", o.Gap)
	}
	if !(o.Width >= 0 && o.Width <= Limit) {
		return fmt.Errorf("sheet width %g: want 0 to %g mm", o.Width, float64(Limit))
	}
	return nil
}

// Part draws one part. Its panel's origin is at 0, 0 unless o.Corner says
// otherwise; work on the far face stands to the right, turned over.
func Part(title string, s Subject, o Options) (Drawing, error) {
	if err := o.check(); err != nil {
		return Drawing{}, err
	}
	items, b, err := draw(s, o)
	if err != nil {
		return Drawing{}, err
	}
	if !o.Bare && o.Legend {
		all := boundsOf(items)
		items = append(items, legend(items, b.Min.X, all.Min.Y-2*small, math.Max(all.Max.X-b.Min.X, 120), Layer{Kind: Text}, 0)...)
	}
	if o.Corner {
		items = moveAll(items, outline.Point{X: -b.Min.X, Y: -b.Min.Y})
	}
	return Drawing{
		Title:  Clean(title, 80),
		Parts:  []string{Clean(string(s.Piece.Part), 80)},
		Items:  items,
		Bounds: boundsOf(items),
	}, nil
}

// draw is one part with everything round it, and the box of its silhouette.
func draw(s Subject, o Options) ([]Item, outline.Box, error) {
	m, t, err := views(s.Piece.Panel)
	if err != nil {
		return nil, outline.Box{}, fmt.Errorf("part %.80q: %w", string(s.Piece.Part), err)
	}
	items := m.items
	if !o.Bare {
		items = append(items, dress(s, m, AsMachined)...)
	}
	if len(t.items) > 0 {
		second := t.items
		if !o.Bare {
			second = append(second, dress(s, t, Turned)...)
		}
		x := boundsOf(items).Max.X + o.gap() - boundsOf(second).Min.X
		items = append(items, moveAll(second, outline.Point{X: x})...)
	}
	return items, m.box, nil
}

// ErrNoParts is returned for a plan without parts.
var ErrNoParts = errors.New("the plan has no parts")

// Sheet draws all parts in rows, each with its number and name, the first at
// the upper left. The sheet's lower left corner is at 0, 0.
func Sheet(title string, parts []Subject, o Options) (Drawing, error) {
	if err := o.check(); err != nil {
		return Drawing{}, err
	}
	if len(parts) == 0 {
		return Drawing{}, ErrNoParts
	}
	d := Drawing{Title: Clean(title, 80)}
	cells := make([]cell, len(parts))
	sum, widest := 0.0, 0.0
	for i, s := range parts {
		items, _, err := draw(s, o)
		if err != nil {
			return Drawing{}, err
		}
		for k := range items {
			items[k].Part = i
		}
		b := boundsOf(items)
		cells[i] = cell{items: items, box: b}
		sum += float64((b.Width() + o.gap()) * (b.Height() + o.gap()))
		widest = math.Max(widest, b.Width())
		d.Parts = append(d.Parts, Clean(string(s.Piece.Part), 80))
	}
	width := o.Width
	if width == 0 {
		width = math.Sqrt(sum) * 1.3
	}
	d.Items = arrange(cells, math.Max(width, widest), o.gap())
	if !o.Bare {
		top := outline.Point{Y: Grid(boundsOf(d.Items).Max.Y + o.gap())}
		if o.Legend {
			b := boundsOf(d.Items)
			words := legend(d.Items, b.Min.X, top.Y, math.Max(b.Width(), 120), Layer{Kind: Text}, -1)
			d.Items = append(d.Items, moveAll(words, outline.Point{Y: tall(words)})...)
			top.Y = Grid(top.Y + tall(words) + small + heading)
		}
		d.Items = append(d.Items, Item{Shape: Label, Layer: Layer{Kind: Text}, From: top, Part: -1,
			Text: Writing{Value: d.Title + ", all lengths in mm", Height: heading}})
	}
	d.Bounds = boundsOf(d.Items)
	return d, nil
}

// cell is one drawn part.
type cell struct {
	items []Item
	box   outline.Box
}

// arrange sets the cells in rows from left to right and from the top down.
// Every shift is a whole number of grid steps.
func arrange(cells []cell, width, gap float64) []Item {
	type row struct {
		first, last int // cells[first:last]
		height      float64
	}
	var rows []row
	for i, x := 0, 0.0; i < len(cells); {
		r := row{first: i}
		for x = 0; i < len(cells); i++ {
			w := cells[i].box.Width()
			if i > r.first && x+w > width+Step {
				break
			}
			x += w + gap
			r.height = math.Max(r.height, cells[i].box.Height())
		}
		r.last = i
		rows = append(rows, r)
	}
	y := -gap
	for _, r := range rows {
		y += r.height + gap
	}
	var items []Item
	for _, r := range rows {
		y -= r.height
		x := 0.0
		for _, c := range cells[r.first:r.last] {
			items = append(items, moveAll(c.items, outline.Point{X: x - c.box.Min.X, Y: y - c.box.Min.Y})...)
			x += c.box.Width() + gap
		}
		y -= gap
	}
	return items
}

// Subjects are the parts of a plan, in plan order, with their numbers.
func Subjects(plan *box.Plan) []Subject {
	number := map[box.Part]int{}
	for _, g := range plan.Groups() {
		for _, p := range g.Parts {
			number[p] = g.Number
		}
	}
	var s []Subject
	for _, p := range plan.Pieces() {
		s = append(s, Subject{p, number[p.Part]})
	}
	return s
}

// Find is one part of a plan with its number; a made-up part as a whole has none.
// An unknown part is a box.Problem.
func Find(plan *box.Plan, part box.Part) (Subject, error) {
	for _, s := range Subjects(plan) {
		if s.Piece.Part == part {
			return s, nil
		}
	}
	if p, ok := plan.Piece(part); ok {
		return Subject{p, 0}, nil
	}
	return Subject{}, box.Problem{Path: Clean(string(part), 80), Code: "unknown-part", Why: "the plan has no such part"}
}

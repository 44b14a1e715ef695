package picture

import (
	"holt.example/box"
	"holt.example/box/solid"
)

// Point is a place on the page: millimetres from its top left corner, x to the
// right, y down.
type Point struct{ X, Y float64 }

// Picture is a finished drawing as plain values, back to front: Polys, then
// Lines, Circles and Texts. Painters only paint it; tests read it.
type Picture struct {
	Name          string  // of the design
	Note          string  // what kind of picture it is, in words
	Width, Height float64 // of the page, mm
	View          View
	Scale         float64 // mm on the page for a mm across the line of sight
	Pens          float64 // width of pens against those of Class.Pen
	Polys         []Poly
	Lines         []Line
	Circles       []Circle
	Texts         []Text
	Hidden        []box.Part // the parts of which nothing can be seen, or only through a hole

	ax     axes
	origin Point
	shift  map[box.Part]solid.Vec
}

// At is the place on the page of a point of a part, given where it is in the
// closed box.
func (p *Picture) At(part box.Part, v solid.Vec) Point {
	return p.page(p.ax.screen(v.Add(p.shift[part])))
}

// Moved is how far a part has been moved out of its place, in the world.
func (p *Picture) Moved(part box.Part) solid.Vec { return p.shift[part] }

func (p *Picture) page(q pt) Point {
	return Point{p.origin.X + float64(p.Scale*q.x), p.origin.Y - float64(p.Scale*q.y)}
}

// Class is what a line stands for; it decides the pen.
type Class int

// The classes of lines.
const (
	Contour  Class = iota // an edge behind which the part turns away: drawn boldest
	Edge                  // an edge between two faces in sight
	Unseen                // an edge behind something, with Options.Hidden
	Trace                 // the way a part has been moved, in an exploded picture
	Leader                // from a balloon to its part
	Rule                  // frame and title strip
	Engraved              // a line engraved or sawn into a face in sight
)

// String is the word for the class, as used in the SVG.
func (c Class) String() string {
	switch c {
	case Contour:
		return "contour"
	case Edge:
		return "edge"
	case Unseen:
		return "unseen"
	case Trace:
		return "trace"
	case Leader:
		return "leader"
	case Engraved:
		return "engraved"
	}
	return "rule"
}

// Line is a straight line. Part is whose it is, "" for none.
type Line struct {
	Class    Class
	Part     box.Part
	From, To Point
}

// Length is the length on the page, mm.
func (l Line) Length() float64 { return dist(l.From, l.To) }

// Poly is a tinted area: the even-odd inside of its loops.
type Poly struct {
	Part  box.Part
	Tone  Tone
	Loops [][]Point
}

// Mark is what a circle stands for.
type Mark int

// The kinds of circles.
const (
	Balloon Mark = iota // a ring with the item number in it
	Dot                 // where a leader ends: a filled spot on the part
)

// Circle is a balloon or a dot.
type Circle struct {
	Mark   Mark
	Part   box.Part
	Centre Point
	Radius float64 // mm
}

// Align says which point of a text its place is.
type Align int

// The alignments of texts.
const (
	Start Align = iota
	Middle
	End
)

// Text is a line of text on a baseline.
type Text struct {
	At     Point   // on the baseline
	Height float64 // of a capital letter, mm
	Align  Align
	Bold   bool
	S      string
	Full   string // where S had to be cut short: all of it
}

// Box is the smallest upright rectangle that holds the text, as the Go fonts
// set it: from the capitals' top to the descenders' foot.
func (t Text) Box() (lo, hi Point) {
	w := TextWidth(t.S, t.Height, t.Bold)
	x := t.At.X
	switch t.Align {
	case Middle:
		x -= w / 2
	case End:
		x -= w
	}
	return Point{x, t.At.Y - t.Height}, Point{x + w, t.At.Y + float64(0.3*t.Height)}
}

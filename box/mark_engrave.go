package box

import (
	"errors"
	"fmt"

	"holt.example/box/outline"
)

// Engrave draws lines and arcs on a face. They are drawn, listed and cut, with
// the volume they take, and are no part of the solid. A line must stay on its
// part and clear of joints and openings by half its width; lines may cross one
// another, but not the letters of a Text, which then could not be read.
type Engrave struct {
	On    Part           // "" means the front (wall/1 on a polygon)
	Lines []outline.Path // around their own origin, u to the right and v up seen from outside
	At    Anchor         // of that origin
	From  CutSide
	Tool  Tool // zero: a sharp V-cutter of 60 degrees
	// Width of the line at the surface and Depth of its middle: with a V-cutter one
	// follows from the other, so give one (both 0: 2 wide). With a flat cutter the
	// width is its diameter, and Depth 0 means 1.
	Width, Depth MM
	Repeat       Repeat
	Mirror       bool   // the mirror image about the part's centre line too
	Use          Use    // "" means mark
	Name         string // for lists; "" means the use
}

func (Engrave) feature() {}

func (f Engrave) on(s *shell) []onPart { return []onPart{{".On", s.frontOr(f.On)}} }

func (f Engrave) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	checkPaths(s.c, path+".Lines", f.Lines)
	if len(f.Lines) == 0 {
		s.c.addf(path+".Lines", "missing", "say which lines to engrave")
	}
	f.At.check(s.c, path+".At")
	if f.Repeat.check(s.c, path+".Repeat", false) {
		s.c.fewStrokes(path+".Repeat", len(f.Lines), max(f.Repeat.Columns, 1)*max(f.Repeat.Rows, 1))
	}
	s.c.enum(path+".From", int(f.From), int(FromInner), "box.FromOuter")
	use, _ := s.use(path, f.Use, UseMark)
	if f.Name != "" {
		s.c.name(path+".Name", f.Name)
	}
	t, w, d, _ := s.c.groove(path, f.Tool, f.Width, f.Depth, 2)
	if len(s.c.ps) > n || len(by) == 0 {
		return
	}
	p := by[s.frontOr(f.On)]
	if p == nil || !s.depthIn(path+".Depth", d, p) {
		return
	}
	l := line{path: path, source: orUse(f.Name, use), use: use, tool: t, width: w, depth: d, from: f.From}
	if l.strokes = s.linesOf(path, f.Lines, f.At, f.Repeat, f.Mirror, p); len(l.strokes) > 0 {
		p.engraved = append(p.engraved, l)
	}
}

// fewStrokes sees that lines and their copies are not too many in all.
func (c *collector) fewStrokes(path string, lines, copies int) bool {
	return c.within(path, float64(lines)*float64(copies), 0, mostCopies, "", fmt.Sprintf("lines in all, %d copies of %d", copies, lines))
}

func orUse(name string, use Use) string {
	if name == "" {
		return string(use)
	}
	return name
}

// checkPaths sees that lines given by the user are sound.
func checkPaths(c *collector, path string, lines []outline.Path) bool {
	n := len(c.ps)
	for i, l := range lines {
		at := fmt.Sprintf("%s[%d]", path, i)
		if err := l.Check(); err != nil {
			why := err.Error()
			var f *outline.Fault
			if errors.As(err, &f) {
				why = f.Error()
			}
			c.add(Problem{Path: at, Code: "outline", Why: why})
			continue
		}
		e := l.Extents()
		for _, x := range []float64{e.Min.X, e.Min.Y, e.Max.X, e.Max.Y} {
			if !c.within(at, x, -maxLength, maxLength, "mm", "a place on the line") {
				break
			}
		}
	}
	return len(c.ps) == n
}

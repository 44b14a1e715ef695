package box

import (
	"fmt"
	"strings"

	"holt.example/box/outline"
)

// Text writes a line of text on a face in single-stroke capitals and figures
// (see Letters), as for the numbers of a ringing group's boxes. On the inner
// face it reads from within. It may be read from the ground from 25 high; smaller
// letters on an outer face are a finding.
type Text struct {
	On           Part // "" means the front (wall/1 on a polygon)
	Text         string
	Height       MM     // of capitals, 3 to 1000; 0 means 30
	At           Anchor // of the text's middle
	From         CutSide
	Tool         Tool   // zero: a sharp V-cutter of 60 degrees
	Width, Depth MM     // as in Engrave; both 0: a tenth of the height wide (ISO 3098-1, lettering type B)
	Use          Use    // "" means mark
	Name         string // for lists; "" means "text" and the text
}

func (Text) feature() {}

func (f Text) on(s *shell) []onPart { return []onPart{{".On", s.frontOr(f.On)}} }

func (f Text) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	h := float64(f.Height)
	if h == 0 {
		h = 30
	}
	s.c.within(path+".Height", h, 3, 1000, "mm", "height of capitals; 0 is 30")
	f.At.check(s.c, path+".At")
	s.c.enum(path+".From", int(f.From), int(FromInner), "box.FromOuter")
	use, _ := s.use(path, f.Use, UseMark)
	if f.Text == "" {
		s.c.addf(path+".Text", "missing", "there is nothing to write")
	} else {
		s.c.name(path+".Text", f.Text)
	}
	if f.Name != "" {
		s.c.name(path+".Name", f.Name)
	}
	t, w, d, _ := s.c.groove(path, f.Tool, f.Width, f.Depth, h/10)
	if len(s.c.ps) > n {
		return
	}
	strokes, _, unknown := lettering(f.Text, h)
	if s.unknownLetters(path+".Text", unknown) {
		return
	}
	if len(strokes) == 0 {
		s.c.addf(path+".Text", "missing", "there is nothing to write")
		return
	}
	if len(by) == 0 {
		return
	}
	p := by[s.frontOr(f.On)]
	if p == nil || !s.depthIn(path+".Depth", d, p) {
		return
	}
	l := line{path: path, source: f.Name, use: use, tool: t, from: f.From, text: f.Text}
	if l.source == "" {
		l.source = "text " + f.Text
	}
	l.width, l.depth = w, d
	if f.place(s, &l, h, p) {
		l.resize = func(h float64) (line, bool) {
			x, ok := l, false
			if _, x.width, x.depth, ok = s.c.groove(path, f.Tool, f.Width, f.Depth, h/10); !ok || !s.depthIn(path+".Depth", x.depth, p) {
				return x, false
			}
			return x, f.place(s, &x, h, p)
		}
		p.engraved = append(p.engraved, l)
	}
}

// place writes the text with capitals so high.
func (f Text) place(s *shell, l *line, h float64, p *part) bool {
	strokes, _, _ := lettering(f.Text, h)
	if f.From == FromInner {
		strokes = turnedOver(strokes)
	}
	l.turn = f.At.Turn
	l.letters = h
	l.strokes = s.linesOf(l.path, strokes, f.At, Repeat{}, false, p)
	return len(l.strokes) > 0
}

// turnedOver mirrors strokes, so that they read on the inner face.
func turnedOver(strokes []outline.Path) []outline.Path {
	out := make([]outline.Path, len(strokes))
	for i, t := range strokes {
		out[i] = t.Transform(outline.MirrorX())
	}
	return out
}

func (s *shell) unknownLetters(path string, rs []rune) bool {
	if len(rs) == 0 {
		return false
	}
	var b strings.Builder
	for i, r := range rs {
		if i == 10 {
			b.WriteString(" ...")
			break
		}
		if i > 0 {
			b.WriteByte(' ')
		}
		fmt.Fprintf(&b, "%q", r)
	}
	s.c.add(Problem{Path: path, Code: "unknown-letter", Got: b.String(), Why: "there are no strokes for this; there are those of " + Letters()})
	return true
}

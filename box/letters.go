package box

import (
	"strconv"
	"strings"
	"unicode"

	"holt.example/box/outline"
)

// glyph is a letter in single strokes on a grid on which capitals are 6 high:
// our own drawing. A stroke is a list of corners "x,y", each followed by the way
// to the next: nothing for a line, l and r for a quarter circle to the left and
// right, L and R for a half circle, or ":" and a bulge. Strokes are parted by ";".
type glyph struct {
	r     rune
	width float64
	lines string
}

// glyphs is never changed.
var glyphs = [...]glyph{
	{'A', 4, "0,0 2,6 4,0;0.6667,2 3.3333,2"},
	{'B', 4, "0,3 2.5,3R 2.5,0 0,0 0,6 2.5,6R 2.5,3"},
	{'C', 4, "4,4L 0,4 0,2L 4,2"},
	{'D', 4, "0,0 0,6 1,6r 4,3r 1,0 0,0"},
	{'E', 3.5, "3.5,6 0,6 0,0 3.5,0;0,3 2.7,3"},
	{'F', 3.5, "3.5,6 0,6 0,0;0,3 2.7,3"},
	{'G', 4, "4,4L 0,4 0,2L 4,2 4,3 2.5,3"},
	{'H', 4, "0,0 0,6;4,0 4,6;0,3 4,3"},
	{'I', 0, "0,0 0,6"},
	{'J', 3, "3,6 3,1.5R 0,1.5"},
	{'K', 4, "0,0 0,6;4,6 0,2.4;1.4,3.66 4,0"},
	{'L', 3.5, "0,6 0,0 3.5,0"},
	{'M', 5, "0,0 0,6 2.5,1.5 5,6 5,0"},
	{'N', 4, "0,0 0,6 4,0 4,6"},
	{'O', 4, "0,2 0,4R 4,4 4,2R 0,2"},
	{'P', 4, "0,0 0,6 2.5,6R 2.5,3 0,3"},
	{'Q', 4, "0,2 0,4R 4,4 4,2R 0,2;2.4,1.6 4,0"},
	{'R', 4, "0,0 0,6 2.5,6R 2.5,3 0,3;1.8,3 4,0"},
	{'S', 4, "4,4.5l 2.5,6 1.5,6l 0,4.5l 1.5,3 2.5,3r 4,1.5r 2.5,0 1.5,0r 0,1.5"},
	{'T', 4, "0,6 4,6;2,6 2,0"},
	{'U', 4, "0,6 0,2L 4,2 4,6"},
	{'V', 4, "0,6 2,0 4,6"},
	{'W', 6, "0,6 1.5,0 3,5 4.5,0 6,6"},
	{'X', 4, "0,0 4,6;0,6 4,0"},
	{'Y', 4, "0,6 2,3 4,6;2,3 2,0"},
	{'Z', 4, "0,6 4,6 0,0 4,0"},
	{'0', 3.5, "0,1.75 0,4.25R 3.5,4.25 3.5,1.75R 0,1.75;1.75,2.5 1.75,3.5"},
	{'1', 1.5, "0,4.5 1.5,6 1.5,0"},
	{'2', 4, "0,4R 4,4:-0.205 3.4,2.6 0,0 4,0"},
	{'3', 3.8, "0.2,6 3.8,6 1.8,3.6 2,3.6r 3.8,1.8R 0.2,1.8"},
	{'4', 4, "3,0 3,6 0,1.7 4,1.7"},
	{'5', 3.9, "3.6,6 0.3,6 0.1,3.3 2,3.8r 3.9,1.9R 0.1,1.9"},
	{'6', 4, "3.2,6:0.35 0,2L 4,2L 0,2"},
	{'7', 4, "0,6 4,6 1.4,0"},
	{'8', 3.7, "0.3,1.7L 3.7,1.7L 0.3,1.7;0.7,4.7L 3.3,4.7L 0.7,4.7"},
	{'9', 4, "0.8,0:0.35 4,4L 0,4L 4,4"},
	{' ', 2, ""},
	{'-', 2.5, "0,3 2.5,3"},
	{'+', 4, "0,3 4,3;2,1 2,5"},
	{'/', 3, "0,0 3,6"},
	{'.', 0, "0,0 0,0.4"},
	{',', 0.4, "0.4,0.6 0,-0.6"},
	{':', 0, "0,1 0,1.4;0,4 0,4.4"},
	{'\'', 0, "0,6 0,4.8"},
	{'=', 3, "0,2 3,2;0,4 3,4"},
	{'(', 1.2, "1.2,6:0.2 1.2,0"},
	{')', 1.2, "0,6:-0.2 0,0"},
	{'↑', 3, "1.5,0 1.5,6;0,4.5 1.5,6 3,4.5"},
}

// grid is how high capitals are in glyphs, letterGap the way between two.
const (
	grid      = 6.0
	letterGap = 2.0
)

// Letters are the letters and signs that Text can draw; small letters become
// capitals.
func Letters() string {
	var b strings.Builder
	for _, g := range glyphs {
		b.WriteRune(g.r)
	}
	return b.String()
}

func glyphOf(r rune) (glyph, bool) {
	r = unicode.ToUpper(r)
	for _, g := range glyphs {
		if g.r == r {
			return g, true
		}
	}
	return glyph{}, false
}

// strokes reads a glyph.
func (g glyph) strokes() []outline.Path {
	if g.lines == "" {
		return nil
	}
	var out []outline.Path
	for _, l := range strings.Split(g.lines, ";") {
		var p outline.Path
		for _, w := range strings.Fields(l) {
			bulge := 0.0
			if at := strings.IndexByte(w, ':'); at >= 0 {
				bulge, _ = strconv.ParseFloat(w[at+1:], 64)
				w = w[:at]
			}
			const quarter = 0.41421356237309503 // tan 22.5
			switch w[len(w)-1] {
			case 'l':
				bulge = quarter
			case 'r':
				bulge = -quarter
			case 'L':
				bulge = 1
			case 'R':
				bulge = -1
			}
			x, y, _ := strings.Cut(strings.TrimRight(w, "lrLR"), ",")
			vx, _ := strconv.ParseFloat(x, 64)
			vy, _ := strconv.ParseFloat(y, 64)
			p = append(p, outline.Vertex{X: vx, Y: vy, Bulge: bulge})
		}
		out = append(out, p)
	}
	return out
}

// lettering draws a line of text with capitals so high, its middle at 0, 0. It
// gives the letters that it does not know, each once.
func lettering(text string, height float64) (strokes []outline.Path, width float64, unknown []rune) {
	k := height / grid
	x := 0.0
	known := 0
	for _, r := range text {
		g, ok := glyphOf(r)
		if !ok {
			if !strings.ContainsRune(string(unknown), r) {
				unknown = append(unknown, r)
			}
			continue
		}
		for _, p := range g.strokes() {
			strokes = append(strokes, p.Transform(outline.Shift(x, -grid/2).Then(outline.Scale(k))))
		}
		x += g.width + letterGap
		known++
	}
	if known == 0 {
		return nil, 0, unknown
	}
	x -= letterGap
	for i := range strokes {
		strokes[i] = strokes[i].Transform(outline.Shift(-x*k/2, 0))
	}
	return strokes, float64(x * k), unknown
}

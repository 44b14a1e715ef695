package box

import (
	"math"

	"holt.example/box/outline"
)

// Rail opens a field so that a row of balusters stays between its upper and its
// lower rail, pierced through or pocketed. The openings are equal.
type Rail struct {
	On            Part
	At            Anchor // of the middle of the field
	Width, Height MM     // of the field
	Balusters     int    // 1 to 200; 0 means 4
	Baluster      MM     // width of one; 0 means 12
	Waist         MM     // by how much it is slimmer in the middle, in arcs; negative: fuller
	Corner        MM     // radius in the corners of the openings
	Depth         MM     // 0 is pierced
	From          CutSide
	Tool          Tool
	Mirror        bool
	Use           Use    // "" means ornament
	Name          string // for lists; "" means the use
}

func (Rail) feature() {}

func (f Rail) on(*shell) []onPart { return []onPart{{".On", f.On}} }

func (f Rail) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	count, thick := f.Balusters, float64(f.Baluster)
	if count == 0 {
		count = 4
	}
	if thick == 0 {
		thick = 12
	}
	s.c.length(path+".Width", f.Width, "width of a rail's field")
	s.c.length(path+".Height", f.Height, "height of a rail's field")
	s.c.within(path+".Balusters", float64(count), 1, 200, "", "balusters; 0 is 4")
	s.c.within(path+".Baluster", thick, 1, maxLength, "mm", "width of a baluster; 0 is 12")
	s.c.offset(path+".Waist", f.Waist, "how much slimmer a baluster is in the middle")
	s.c.atLeast0(path+".Corner", f.Corner, "radius in the corners of the openings")
	f.At.check(s.c, path+".At")
	s.c.enum(path+".From", int(f.From), int(FromInner), "box.FromOuter")
	use, _ := s.use(path, f.Use, UseOrnament)
	if f.Name != "" {
		s.c.name(path+".Name", f.Name)
	}
	p := by[f.On]
	s.depth(path, f.Depth, p)
	tool := f.Tool.check(s.c, path+".Tool")
	if len(s.c.ps) > n || !tool {
		return
	}
	w, h := float64(f.Width), float64(f.Height)
	gap := (w - float64(float64(count)*thick)) / float64(count+1)
	if !s.c.within(path+".Baluster", thick, 1, math.Floor((w-float64(count+1))/float64(count)*10)/10, "mm", "width of a baluster: openings of 1 stay between them at least") {
		return
	}
	waist, corner := float64(f.Waist), float64(f.Corner)
	s.c.within(path+".Waist", waist, 1-gap, math.Min(thick-1, h/2), "mm", "how much slimmer a baluster is in the middle: 1 of it and of the openings stays")
	s.c.within(path+".Corner", corner, 0, math.Min(gap, h)/2, "mm", "radius in the corners, at most half an opening")
	if waist != 0 && corner != 0 {
		s.c.addf(path+".Corner", "contradiction", "openings with bent sides have sharp corners: leave it 0")
	}
	if len(s.c.ps) > n {
		return
	}
	for i := 0; i <= count; i++ {
		x := -w/2 + float64(float64(i)*(gap+thick))
		o := outline.RoundedRectangle(x, -h/2, x+gap, h/2, corner)
		if waist != 0 {
			// A side bent by half the waist: bulge = sagitta / half chord.
			b := (waist / 2) / (h / 2)
			l, r := b, b
			if i == 0 {
				l = 0
			}
			if i == count {
				r = 0
			}
			o = outline.Contour{{X: x, Y: -h / 2}, {X: x + gap, Y: -h / 2, Bulge: r}, {X: x + gap, Y: h / 2}, {X: x, Y: h / 2, Bulge: l}}
		}
		if i == 0 && !f.Tool.fits(s.c, path+".Tool", o) {
			return
		}
		if p == nil {
			continue
		}
		at := f.At
		if at.Level == LowestAbove { // all openings reach as low
			at.Level, at.Up = CentreAbove, at.Up+MM(float64(h/2)*p.face.frame.V.Z)
		}
		for _, o := range s.copies(path, o, at, Repeat{}, f.Mirror, p) {
			p.feats = append(p.feats, feat{path: path, source: orUse(f.Name, use), use: use, outline: o, depth: float64(f.Depth), from: f.From, tool: f.Tool})
		}
	}
}

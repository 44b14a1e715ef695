package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
)

// DripGroove is a saw kerf or a groove under the lower edge of a roof, past the
// wall: water that creeps back along the underside lets go there. It runs out at
// both ends. Of a level roof it runs along every edge that overhangs.
type DripGroove struct {
	On    []Part // roof parts; nil means all
	Width MM     // of the kerf; 0 means 3
	Depth MM     // 0 means 4: 3 to 7 are usual (nestwatch.org: 1/4 inch)
	Inset MM     // from the lower arris to the groove's middle; 0 means 12
	Sides bool   // along the ends of slopes too
}

func (DripGroove) feature() {}

func (f DripGroove) on(*shell) []onPart { return onParts(".On", f.On) }

func (f DripGroove) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	w, depth, inset := mmOr(f.Width, 3), mmOr(f.Depth, 4), mmOr(f.Inset, 12)
	s.c.within(path+".Width", w, 0.5, 50, "mm", "width of a drip groove; 0 is 3")
	s.c.within(path+".Depth", depth, 0.1, maxThickness, "mm", "depth of a drip groove; 0 is 4")
	s.c.within(path+".Inset", inset, w/2+minLength, maxLength, "mm", "distance of a drip groove from the lower arris; 0 is 12")
	if len(s.c.ps) > n || len(by) == 0 {
		return
	}
	on := f.On
	if on == nil {
		for _, i := range s.roofs() {
			on = append(on, s.faces[i].part)
		}
	}
	made, built := 0, true
	for k, name := range on {
		p := by[name]
		if p == nil {
			continue
		}
		built = built && len(p.convex.Faces) > 0 // not where joints are at fault
		at := path
		if f.On != nil {
			at = fmt.Sprintf("%s.On[%d]", path, k)
		}
		if p.face.kind != roofFace {
			s.c.addf(at, "no-roof", "%s is no roof: nothing drips there", name)
			return
		}
		if !s.depthIn(path+".Depth", depth, p) {
			return
		}
		made += f.groove(s, path, p, w, depth, inset)
	}
	if made == 0 && len(s.c.ps) == n && built {
		s.c.addf(path, "no-overhang", "the roof overhangs nowhere: there is no place for a drip groove")
	}
}

// groove cuts the lines of one roof part and counts them.
func (f DripGroove) groove(s *shell, path string, p *part, w, depth, inset float64) int {
	level := p.face.nh == [2]float64{}
	l := line{path: path, source: "drip groove", use: UseDrip, tool: Tool{Diameter: MM(w)}, width: w, depth: depth, from: FromInner, open: true}
	for i := range p.convex.Faces {
		g := &p.convex.Faces[i]
		if p.from[g.ID] != fromInner {
			continue
		}
		ps := flat(g.Loop, p.face.frame) // seen from outside it runs clockwise
		low := outline.Region{outline.Polygon(ps...).Reverse()}
		for m, id := range g.Next {
			j := p.from[id]
			if j < 0 || j >= s.walls || s.faces[j].up() {
				continue
			}
			wall := &s.faces[j]
			b, a := ps[m], ps[(m+1)%len(ps)] // anticlockwise
			length := math.Hypot(b.X-a.X, b.Y-a.Y)
			if !(length > minLength) {
				continue
			}
			ux, uy := (b.X-a.X)/length, (b.Y-a.Y)/length
			eaves := -ux < -0.7 // outward is (uy, -ux): down the slope
			end := math.Abs(uy) > 0.7
			if !level && !eaves && !(f.Sides && end) || wall.over <= 0 {
				continue
			}
			at := func(x, along float64) outline.Point {
				return outline.Point{X: a.X + float64(along*ux) - float64(x*uy), Y: a.Y + float64(along*uy) + float64(x*ux)}
			}
			past := math.Inf(1)
			for _, q := range []outline.Point{at(inset, 0), at(inset, length)} {
				past = math.Min(past, wall.in.Shift(wall.t).At(p.face.frame.Out(vec(q))))
			}
			if past < w/2+thinWeb {
				s.c.add(Problem{Path: path + ".Inset", Code: "range", Got: num(inset), Lo: w/2 + minLength, Hi: math.Max(0, inset-(w/2+thinWeb-past)), Unit: "mm",
					Why: fmt.Sprintf("the drip groove would lie over %s: it belongs past its outer face, so less inset or more overhang", wall.part)})
				return 0
			}
			l.strokes = append(l.strokes, outline.Line(at(inset, -10*length), at(inset, 11*length)).Within(low)...)
		}
	}
	if len(l.strokes) > 0 {
		p.engraved = append(p.engraved, l)
	}
	return len(l.strokes)
}

// EavesVents are open slots at the top of walls, under the roof: cut from the
// upper edge, in the middle of the wall.
type EavesVents struct {
	On     []Part // walls; nil means the two side walls
	Width  MM     // level
	Height MM     // below the lowest inner top of the wall over the slot
	Right  MM     // of the slot's middle from that of the wall, seen from outside
}

func (EavesVents) feature() {}

func (f EavesVents) on(*shell) []onPart { return onParts(".On", f.On) }

func (f EavesVents) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	s.c.length(path+".Width", f.Width, "width of a slot under the eaves")
	s.c.length(path+".Height", f.Height, "height of a slot under the eaves")
	s.c.offset(path+".Right", f.Right, "place of the slot")
	if len(s.c.ps) > n || len(by) == 0 {
		return
	}
	on := f.On
	if on == nil {
		on = []Part{s.faces[s.walls-1].part, s.faces[1].part}
	}
	for k, name := range on {
		p := by[name]
		if p == nil {
			continue
		}
		at := path
		if f.On != nil {
			at = fmt.Sprintf("%s.On[%d]", path, k)
		}
		if p.face.kind != wallFace || p.face.up() {
			s.c.addf(at, "no-eaves", "%s has no upper edge under the roof", name)
			return
		}
		face := p.cavityFace()
		e := face.Extents()
		u0, u1 := float64(f.Right)-float64(f.Width)/2, float64(f.Right)+float64(f.Width)/2
		if !(u0 >= e.Min.X+minLength && u1 <= e.Max.X-minLength) {
			s.c.add(Problem{Path: path + ".Width", Code: "range", Got: num(float64(f.Width)), Lo: minLength, Hi: math.Max(0, e.Width()-2*minLength), Unit: "mm",
				Why: fmt.Sprintf("width of a slot in %s: wood must stand at both of its ends", name)})
			return
		}
		low := math.Min(topAt(face, u0), topAt(face, u1)) - float64(f.Height)
		if !(low > e.Min.Y+minLength) {
			s.c.add(Problem{Path: path + ".Height", Code: "range", Got: num(float64(f.Height)), Lo: minLength, Hi: low + float64(f.Height) - e.Min.Y - minLength, Unit: "mm",
				Why: fmt.Sprintf("height of a slot in %s", name)})
			return
		}
		top := p.shadow().Extents().Max.Y + 1
		p.feats = append(p.feats, feat{path: path, source: "slot under the eaves", use: UseVent, edge: true, outline: settled(outline.Rectangle(u0, low, u1, top))})
	}
}

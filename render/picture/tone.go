package picture

import (
	"math"
	"sort"
	"strconv"
	"strings"

	"holt.example/box/solid"
)

// tone is the tint of a face, or of a part of it that is indoors.
func (s *scene) tone(f *face, indoors bool) Tone {
	// Light falls over the left shoulder of the viewer, whatever the view.
	light := s.ax.r.Scale(-0.45).Add(s.ax.u.Scale(0.65)).Add(s.ax.d.Scale(0.61)).Unit()
	lit := (1 + f.n.Dot(light)) / 2 // 0 turned away, 1 square to the light
	k := 1.15 - float64(1.25*lit)
	if indoors {
		k += 0.45
	}
	g := s.solids[f.owner].Grain
	// A side of a hexagon stands at exactly 60 degrees to the grain: it is no end
	// grain, whatever its last digits.
	return Tone{
		Shade:    int(math.Max(0, math.Min(math.Round(float64(k*(Shades-1))), Shades-1))),
		EndGrain: g != (solid.Vec{}) && math.Abs(f.n.Dot(g)) > 0.5+1e-6,
	}
}

// darken finds what is indoors: where from a little off the surface no way
// leads out, ahead or to either side. The inside of a wall that runs on past
// the roof is indoors below it and outdoors above; such faces are first cut
// along the flat faces of the shell that touch it, and each of the fields between
// them is one or the other: indoors where most of it is. In an exploded picture
// nothing is indoors.
func (s *scene) darken(all []shard) []shard {
	for _, q := range s.solids {
		if q.Shift != (solid.Vec{}) {
			return all
		}
	}
	ends := s.ends()
	var out []shard
	fields := map[string][]int{} // shards of out, by face and sides of the planes
	var order []string
	beside := map[int32][]int32{}
	for _, h := range all {
		f := s.faces[h.face]
		if f.n.Dot(s.solids[f.owner].Out) > -0.99 {
			out = append(out, h) // only inner faces are ever indoors
			continue
		}
		if _, ok := beside[h.face]; !ok {
			beside[h.face] = s.beside(h.face, ends)
		}
		cut := []shard{h}
		for _, m := range beside[h.face] {
			n := len(cut)
			for k := range n {
				if lo, hi := s.reach(m, cut[k].loop); lo < -flat && hi > flat {
					behind, ahead := s.split(m, cut[k])
					cut[k] = behind
					cut = append(cut, ahead)
				}
			}
		}
		for _, c := range cut {
			k := s.field(c, beside[h.face])
			if _, ok := fields[k]; !ok {
				order = append(order, k)
			}
			fields[k] = append(fields[k], len(out))
			out = append(out, c)
		}
	}
	for _, k := range order {
		in := s.indoors(out, fields[k])
		for _, i := range fields[k] {
			out[i].indoors = in
		}
	}
	return out
}

// ends are the lower and upper corners of each face.
func (s *scene) ends() [][2]solid.Vec {
	out := make([][2]solid.Vec, len(s.faces))
	for i, f := range s.faces {
		lo := f.tris[0][0]
		hi := lo
		for _, t := range f.tris {
			for _, p := range t {
				lo = solid.Vec{X: math.Min(lo.X, p.X), Y: math.Min(lo.Y, p.Y), Z: math.Min(lo.Z, p.Z)}
				hi = solid.Vec{X: math.Max(hi.X, p.X), Y: math.Max(hi.Y, p.Y), Z: math.Max(hi.Z, p.Z)}
			}
		}
		out[i] = [2]solid.Vec{lo, hi}
	}
	return out
}

// beside are the flat faces of the shell's other parts that come up to a face,
// small ones left out: where they meet it, outdoors may begin.
func (s *scene) beside(id int32, ends [][2]solid.Vec) []int32 {
	const near = 1 // mm
	var out []int32
	a := ends[id]
	for i, g := range s.faces {
		b := ends[i]
		if g.owner == s.faces[id].owner || g.round > 0 || g.area < s.faces[id].area/400 || s.solids[g.owner].loose() ||
			b[0].X > a[1].X+near || b[1].X < a[0].X-near || b[0].Y > a[1].Y+near || b[1].Y < a[0].Y-near ||
			b[0].Z > a[1].Z+near || b[1].Z < a[0].Z-near {
			continue
		}
		out = append(out, int32(i))
	}
	return out
}

// loose reports whether a solid is no part of the shell.
func (q *Solid) loose() bool {
	return strings.HasPrefix(string(q.Part), "free/") || strings.HasPrefix(string(q.Part), "inner/")
}

// field names the field of a face that a shard lies in: the face, and the side
// of each plane that it lies on.
func (s *scene) field(h shard, planes []int32) string {
	at := h.middle()
	key := strconv.AppendInt(nil, int64(h.face), 10)
	for _, m := range planes {
		side := byte('+')
		if s.faces[m].height(at) < 0 {
			side = '-'
		}
		key = append(key, side)
	}
	return string(key)
}

// middle is the middle of the shard's corners.
func (h shard) middle() solid.Vec {
	var p solid.Vec
	for _, v := range h.loop {
		p = p.Add(v.Scale(1 / float64(len(h.loop))))
	}
	return p
}

// area of the shard, which is convex.
func (h shard) area() float64 {
	a := 0.0
	for k := 2; k < len(h.loop); k++ {
		a += h.loop[k-1].Sub(h.loop[0]).Cross(h.loop[k].Sub(h.loop[0])).Len() / 2
	}
	return a
}

// indoors asks places all over the largest shards of a field; those with
// another part on them do not count.
func (s *scene) indoors(all []shard, field []int) bool {
	field = append([]int(nil), field...)
	sort.SliceStable(field, func(i, j int) bool { return all[field[i]].area() > all[field[j]].area() })
	in, out := 0.0, 0.0
	for _, i := range field[:min(len(field), 8)] {
		h := all[i]
		n, mid := s.faces[h.face].n, h.middle()
		weight := h.area() / float64(len(h.loop)+1)
		ask := func(p solid.Vec) {
			switch p = p.Add(n); { // a mm off
			case s.within(p, n):
			case s.enclosed(p, n):
				in += weight
			default:
				out += weight
			}
		}
		ask(mid)
		for _, v := range h.loop {
			ask(mid.Lerp(v, 0.6))
		}
	}
	return in > out
}

// within reports whether a place is inside some solid: a way out of it, a little
// askew, meets its surface an odd number of times.
func (s *scene) within(p, n solid.Vec) bool {
	d := n.Add(solid.Vec{X: 0.031, Y: 0.047, Z: 0.059})
	odd := map[int]bool{}
	for _, f := range s.faces {
		if f.met(p, d) {
			odd[f.owner] = !odd[f.owner]
		}
	}
	for _, is := range odd {
		if is {
			return true
		}
	}
	return false
}

// enclosed asks five ways from a place off a face: ahead and to four sides, each
// a little askew so that it does not run along a joint.
func (s *scene) enclosed(p, n solid.Vec) bool {
	a := solid.Vec{Z: 1}.Sub(n.Scale(n.Z))
	if a.Len() < 0.1 {
		a = solid.Vec{X: 1}.Sub(n.Scale(n.X))
	}
	a = a.Unit()
	b := n.Cross(a)
	for _, d := range [5]solid.Vec{
		n.Add(a.Scale(-0.13)).Add(b.Scale(0.07)),
		a.Add(n.Scale(0.3)), a.Scale(-1).Add(n.Scale(0.3)),
		b.Add(n.Scale(0.3)), b.Scale(-1).Add(n.Scale(0.3)),
	} {
		if !s.meets(p, d) {
			return false
		}
	}
	return true
}

// meets reports whether a ray meets any face.
func (s *scene) meets(p, d solid.Vec) bool {
	for _, f := range s.faces {
		if f.met(p, d) {
			return true
		}
	}
	return false
}

// met reports whether a ray meets the face.
func (f *face) met(p, d solid.Vec) bool {
	nd := f.n.Dot(d)
	if nd == 0 {
		return false
	}
	t := -f.height(p) / nd
	if t <= 0 {
		return false
	}
	q := p.Add(d.Scale(t))
	for _, r := range f.tris {
		if f.n.Dot(r[1].Sub(r[0]).Cross(q.Sub(r[0]))) >= 0 &&
			f.n.Dot(r[2].Sub(r[1]).Cross(q.Sub(r[1]))) >= 0 &&
			f.n.Dot(r[0].Sub(r[2]).Cross(q.Sub(r[2]))) >= 0 {
			return true
		}
	}
	return false
}

// polys turns the shards into areas, joining those of one face that follow
// each other.
func (s *scene) polys(p *Picture) []Poly {
	var out []Poly
	all := s.painted()
	for i := 0; i < len(all); {
		j := i
		for j < len(all) && all[j].face == all[i].face && all[j].indoors == all[i].indoors {
			j++
		}
		f := s.faces[all[i].face]
		q := Poly{Part: s.solids[f.owner].Part, Tone: s.tone(f, all[i].indoors)}
		for _, loop := range rimLoops(s.ax, all[i:j]) {
			ps := make([]Point, len(loop))
			for k, c := range loop {
				ps[k] = p.page(c)
			}
			q.Loops = append(q.Loops, ps)
		}
		if len(q.Loops) > 0 {
			out = append(out, q)
		}
		i = j
	}
	return out
}

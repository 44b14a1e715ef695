package picture

import (
	"math"

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
	return Tone{
		Shade:    int(math.Max(0, math.Min(math.Round(float64(k*(Shades-1))), Shades-1))),
		EndGrain: g != (solid.Vec{}) && math.Abs(f.n.Dot(g)) > 0.5,
	}
}

// darken finds what is indoors: where from a little off the surface no way
// leads out, ahead or to either side. The inside of a wall that runs on past
// the roof is indoors below it and outdoors above; such faces are first cut
// along the main planes of the other parts, so that each shard is one or the
// other. In an exploded picture nothing is indoors.
func (s *scene) darken(all []shard) []shard {
	for _, q := range s.solids {
		if q.Shift != (solid.Vec{}) {
			return all
		}
	}
	var main []int32
	for i, f := range s.faces {
		if math.Abs(f.n.Dot(s.solids[f.owner].Out)) > 0.99 {
			main = append(main, int32(i))
		}
	}
	var out []shard
	for _, h := range all {
		f := s.faces[h.face]
		if f.n.Dot(s.solids[f.owner].Out) > -0.99 {
			out = append(out, h) // only inner faces are ever indoors
			continue
		}
		cut := []shard{h}
		for _, m := range main {
			if s.faces[m].owner == f.owner {
				continue
			}
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
			c.indoors = s.indoors(c, f)
			out = append(out, c)
		}
	}
	return out
}

// indoors asks five ways from the middle of a shard: ahead and to four sides,
// each a little askew so that it does not run along a joint.
func (s *scene) indoors(h shard, f *face) bool {
	var p solid.Vec
	for _, v := range h.loop {
		p = p.Add(v.Scale(1 / float64(len(h.loop))))
	}
	p = p.Add(f.n) // a mm off
	a := solid.Vec{Z: 1}.Sub(f.n.Scale(f.n.Z))
	if a.Len() < 0.1 {
		a = solid.Vec{X: 1}.Sub(f.n.Scale(f.n.X))
	}
	a = a.Unit()
	b := f.n.Cross(a)
	for _, d := range [5]solid.Vec{
		f.n.Add(a.Scale(-0.13)).Add(b.Scale(0.07)),
		a.Add(f.n.Scale(0.3)), a.Scale(-1).Add(f.n.Scale(0.3)),
		b.Add(f.n.Scale(0.3)), b.Scale(-1).Add(f.n.Scale(0.3)),
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
		nd := f.n.Dot(d)
		if nd == 0 {
			continue
		}
		t := -f.height(p) / nd
		if t <= 0 {
			continue
		}
		q := p.Add(d.Scale(t))
		for _, r := range f.tris {
			if f.n.Dot(r[1].Sub(r[0]).Cross(q.Sub(r[0]))) >= 0 &&
				f.n.Dot(r[2].Sub(r[1]).Cross(q.Sub(r[1]))) >= 0 &&
				f.n.Dot(r[0].Sub(r[2]).Cross(q.Sub(r[2]))) >= 0 {
				return true
			}
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

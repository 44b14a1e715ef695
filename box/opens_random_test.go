package box_test

import (
	"math"
	"math/rand/v2"
	"sync"
	"testing"

	"holt.example/box"
	"holt.example/box/boxtest/anybox"
	"holt.example/box/solid"
)

// carried is a body carried from one frame to another: by the frames, not by the
// axis that the library turns about.
func carried(b solid.Body, from, to solid.Frame) solid.Body {
	dir := func(v solid.Vec) solid.Vec { return to.Out(from.In(from.O.Add(v))).Sub(to.O) }
	planes := func(hs []solid.Plane) []solid.Plane {
		var out []solid.Plane
		for _, h := range hs {
			n := dir(h.N)
			out = append(out, solid.NewPlane(n, n.Dot(to.Out(from.In(h.N.Scale(h.D))))))
		}
		return out
	}
	c := solid.Body{Base: planes(b.Base)}
	for _, k := range b.Cutters {
		c.Cutters = append(c.Cutters, planes(k))
	}
	for _, p := range b.Prisms {
		p.Frame = solid.Frame{O: to.Out(from.In(p.Frame.O)), U: dir(p.Frame.U), V: dir(p.Frame.V), W: dir(p.Frame.W)}
		c.Prisms = append(c.Prisms, p)
	}
	return c
}

// turnedFrame turns a frame about an axis, by the matrix of a turn written out.
func turnedFrame(f solid.Frame, o, d solid.Vec, deg float64) solid.Frame {
	s, c := math.Sincos(deg * math.Pi / 180)
	k := 1 - c
	rot := func(v solid.Vec) solid.Vec {
		return solid.Vec{
			X: (c+d.X*d.X*k)*v.X + (d.X*d.Y*k-d.Z*s)*v.Y + (d.X*d.Z*k+d.Y*s)*v.Z,
			Y: (d.Y*d.X*k+d.Z*s)*v.X + (c+d.Y*d.Y*k)*v.Y + (d.Y*d.Z*k-d.X*s)*v.Z,
			Z: (d.Z*d.X*k-d.Y*s)*v.X + (d.Z*d.Y*k+d.X*s)*v.Y + (c+d.Z*d.Z*k)*v.Z,
		}
	}
	return solid.Frame{O: o.Add(rot(f.O.Sub(o))), U: rot(f.U), V: rot(f.V), W: rot(f.W)}
}

// shared is the largest volume that a moved part shares with one that stays.
func shared(p *box.Plan, w box.Way, pose func(q box.Piece) solid.Frame) float64 {
	moves := map[box.Part]bool{}
	for _, m := range w.Moves {
		moves[m] = true
	}
	most := 0.0
	for _, q := range p.Pieces() {
		if !moves[q.Part] {
			continue
		}
		b := carried(q.Body, q.Home, pose(q))
		for _, r := range p.Pieces() {
			if !moves[r.Part] {
				most = math.Max(most, solid.Overlap(b, r.Body))
			}
		}
	}
	return most
}

// Random boxes with random openings: what is accepted has no void without an
// owner (Resolve reports one), closed meshes, and opens as far as it says without
// sharing a place with another part, found by carrying the solids by the poses.
// What strikes is free just before the angle stated and shares a place after it.
func TestRandomOpenings(t *testing.T) {
	var mu sync.Mutex
	accepted, struck := map[string]int{}, 0
	t.Run("all", func(t *testing.T) {
		for seed := range uint64(8) {
			t.Run("", func(t *testing.T) {
				t.Parallel()
				r := rand.New(rand.NewPCG(seed, 41))
				pick := func(s []string) string { return s[r.IntN(len(s))] }
				for range 60 {
					k := anybox.Kinds{Footprint: pick(anybox.Footprints), Roof: pick(anybox.Roofs), Laps: pick(anybox.Laps), Corner: pick(anybox.Corners), Floor: pick(anybox.Floors)}
					d := anybox.Design(r, k)
					if _, err := d.Resolve(); err != nil {
						continue
					}
					o, name := anyOpening(r, k)
					d.Opens = []box.Opening{o}
					p, err := d.Resolve()
					if err != nil {
						ps := err.(box.Problems)
						for _, x := range ps {
							switch x.Code {
							case "overlap", "leak", "solid", "outline", "no-contact":
								t.Errorf("%v, %+v: %v", k, o, x)
							}
						}
						if h, ok := o.(box.Hinged); ok && len(ps) == 1 && ps[0].Code == "strikes" && ps[0].Hi > 2 {
							mu.Lock()
							struck++
							mu.Unlock()
							strikesThere(t, d, h, ps[0].Hi)
						}
						continue
					}
					mu.Lock()
					accepted[name]++
					mu.Unlock()
					soundMeshes(t, p)
					w := p.Ways()[0]
					for n := 1; n <= 5; n++ {
						x := math.Min(w.Most, w.Most*float64(n)/5)
						q, err := p.Opened(w.Part, box.Deg(x))
						if !w.Turns {
							q, err = p.Drawn(w.Part, box.MM(x))
						}
						if err != nil {
							t.Fatal(err)
						}
						v := shared(p, w, func(c box.Piece) solid.Frame { m, _ := q.Piece(c.Part); return m.Pose })
						// Planes carried are rounded by 2^-41 of a turn, over 600 mm: 3e-10 mm.
						if v > 1e-2 {
							t.Errorf("%v, %+v: at %v it shares %v mm3", k, o, x, v)
						}
					}
				}
			})
		}
	})
	t.Logf("accepted %v, struck %d", accepted, struck)
	for _, name := range []string{"hinged wall", "hinged roof", "pivoted", "sliding", "removable wall", "removable roof", "inspection"} {
		if accepted[name] < 10 {
			t.Errorf("%s: only %d accepted", name, accepted[name])
		}
	}
	if struck < 10 {
		t.Errorf("only %d strike", struck)
	}
}

// strikesThere: opening to just before the angle is accepted, and a degree beyond
// it the parts share a place.
func strikesThere(t *testing.T, d box.Design, h box.Hinged, x float64) {
	t.Helper()
	h.Angle = box.Deg(x - 0.05)
	d.Opens = []box.Opening{h}
	p, err := d.Resolve()
	if err != nil {
		t.Errorf("%+v: free before it strikes, but: %v", h, err)
		return
	}
	w := p.Ways()[0]
	o := solid.Vec{X: float64(w.On.X), Y: float64(w.On.Y), Z: float64(w.On.Z)}
	v := shared(p, w, func(q box.Piece) solid.Frame { return turnedFrame(q.Home, o, solid.Vec(w.Along), x+1) })
	if !(v > 0) {
		t.Errorf("%+v: nothing is shared a degree after it strikes at %v", h, x)
	}
}

// anyOpening draws an opening that suits a footprint.
func anyOpening(r *rand.Rand, k anybox.Kinds) (box.Opening, string) {
	walls := []box.Part{box.Front, box.Right, box.Back, box.Left}
	if k.Footprint != "rectangle" {
		walls = []box.Part{box.WallN(1), box.WallN(2), box.WallN(3)}
	}
	i := r.IntN(len(walls))
	wall := walls[i]
	near := walls[(i+1)%len(walls)]
	if k.Footprint != "rectangle" && i == len(walls)-1 {
		near = walls[i-1]
	}
	roof := map[string]box.Part{"flat": box.Roof, "pent": box.Roof, "gable front to back": box.RoofLeft, "gable left to right": box.RoofFront}[k.Roof]
	if roof == "" {
		if roof = box.RoofFront; k.Footprint != "rectangle" {
			roof = box.RoofN(1)
		}
	}
	at := map[box.Part]box.Part{box.RoofLeft: box.RoofRight, box.RoofFront: box.RoofBack}[roof]
	if k.Roof == "hip" {
		at = box.RoofRight
		if k.Footprint != "rectangle" {
			at = box.RoofN(2)
		}
	} else if at == "" {
		at = walls[r.IntN(len(walls))]
	}
	hinge := []box.Hinge{nil, box.Leather{Count: 1}, box.Butts{Height: 20}}[r.IntN(3)]
	angle := box.Deg(20 + r.IntN(120))
	switch r.IntN(9) {
	case 0, 1:
		return box.Hinged{Part: wall, At: near, Hinge: hinge, Angle: angle}, "hinged wall"
	case 2:
		return box.Hinged{Part: roof, At: at, Hinge: hinge, Angle: angle}, "hinged roof"
	case 3:
		return box.Pivoted{Part: wall, Angle: box.Deg(20 + r.IntN(60))}, "pivoted"
	case 4:
		return box.Sliding{Part: wall}, "sliding"
	case 5, 6, 7:
		if r.IntN(2) == 0 {
			return box.Removable{Part: wall}, "removable wall"
		}
		return box.Removable{Part: roof}, "removable roof"
	}
	return box.Inspection{On: wall, Width: 40, Height: 40, Sill: 20}, "inspection"
}

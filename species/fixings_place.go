package species

import (
	"math"
	"slices"
	"sort"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/species/timber"
)

// fix works out one seam. Heights a and b above the inner faces of the two parts
// give the place: the axis meets the face of the part held on which the other
// stands, a = 0 inside and a = t outside, where b is half the thickness of the
// other.
func fix(a, b *piece, s box.Seam, with FixWith, structural bool, before []Fixing) (Fixing, bool) {
	c := a.outward.Dot(b.outward)
	sin := math.Sqrt(1 - float64(c*c))
	if !(math.Abs(c) < 0.7) { // beyond 45 degrees the way through Over gets long
		return Fixing{}, false
	}
	tb := float64(b.Thickness)
	e := b.outward.Sub(a.outward.Scale(c)).Scale(1 / sin)
	from, to := vecOf(s.From), vecOf(s.To)
	length := to.Sub(from).Len()
	if !(length > 20) {
		return Fixing{}, false
	}
	along := to.Sub(from).Scale(1 / length)
	f := Fixing{Over: s.Over, Under: s.Under, Joint: s.Joint, Edge: min(box.MM(b.leastThick()), b.Thickness), Structural: structural, sheet: !b.solidWood()}
	f.EndGrain = b.endGrain(a.outward)
	// The seam lies on the face of a that b stands on.
	way, sunk := -1.0, a.channel(b.Part)
	switch h := a.outward.Dot(from) - a.inner; {
	case math.Abs(h) < 1:
	case math.Abs(h-float64(a.Thickness)) < 1:
		way, sunk, f.From = 1, 0, box.FromInner
	default: // it stands against an end of a
		return Fixing{}, false
	}
	// Square to the part held where that stays in the edge, else in line with the
	// part it enters.
	into, pass, keeps := a.outward.Scale(way), float64(a.Thickness), false
	f.Held, f.deep = box.MM(pass-sunk), b.wood(a, f.From)+sunk
	f.With, keeps = choose(f, with.Fasteners, c)
	if !keeps && math.Abs(c) > 1e-6 {
		into = a.outward.Sub(b.outward.Scale(c)).Scale(way / sin)
		pass /= sin
		f.Slant, f.Held, f.deep = true, box.MM(pass-sunk/sin), f.deep/sin
		f.With, _ = choose(f, with.Fasteners, 0)
	}
	f.Into = box.Direction{X: float64(tidy(into.X)), Y: float64(tidy(into.Y)), Z: float64(tidy(into.Z))}
	// The end distance grows until the row is clear of all rows before it.
	d := timber.DistancesFor(f.With.Pilot > 0, f.sheet)
	least := math.Max(d.End*float64(f.With.Diameter), 20)
	for end := math.Min(least, length/2); ; end = math.Min(end+5, length/2) {
		f.End = box.MM(length / 2)
		f.Places, f.Right, f.Up = nil, nil, nil
		run := length - 2*end
		n := 1
		if run > 10 {
			n = 1 + int(math.Max(1, math.Min(mostInRow-1, math.Ceil(run/float64(with.Spacing)-1e-9))))
		}
		if with.count > 0 {
			n = min(with.count, mostInRow)
		}
		for i := 0; i < n; i++ {
			at := length / 2
			if n > 1 {
				at = end + run*float64(i)/float64(n-1)
			}
			p := from.Add(along.Scale(at)).Add(e.Scale(tb / 2 / sin))
			if f.blocked(a, b, p, into, pass, before) {
				continue
			}
			f.End = min(f.End, box.MM(math.Min(at, length-at)))
			head := p.Sub(into.Scale(pass))
			local := a.Home.In(head)
			right := local.X
			if a.Panel.Face == box.FromInner {
				right = -right
			}
			f.Right, f.Up = append(f.Right, tidy(right)), append(f.Up, tidy(local.Y))
			f.Places = append(f.Places, placeOf(head))
		}
		if len(f.Places) == n && n > 0 || end >= length/2-1e-9 {
			break
		}
	}
	return f, len(f.Places) > 0
}

// mostInRow is as many as a box.Fixing has room for.
const mostInRow = 200

// endGrain says that what goes into the part along a direction enters it, more or
// less, along its fibres.
func (p *piece) endGrain(w solid.Vec) bool {
	g := p.Home.U.Scale(p.Panel.Grain[0]).Add(p.Home.V.Scale(p.Panel.Grain[1]))
	return math.Abs(g.Dot(w)) > math.Sqrt2/2
}

// choose picks a fastener: those that keep every rule first.
func choose(f Fixing, from []Fastener, c float64) (x Fastener, good bool) {
	list := slices.Clone(from)
	sort.SliceStable(list, func(i, k int) bool {
		if list[i].Diameter != list[k].Diameter {
			return list[i].Diameter > list[k].Diameter
		}
		return list[i].Length < list[k].Length
	})
	keeps := func(x Fastener) bool {
		try := f
		try.With, try.End = x, box.MM(math.Inf(1))
		return float64(float64(x.Length-f.Held)*math.Abs(c))+float64(x.Diameter)/2+1 <= float64(f.Edge)/2 && len(try.check(false)) == 0
	}
	for _, x := range list {
		if (x.Diameter <= 4 || f.Structural) && keeps(x) {
			return x, true
		}
	}
	best := Fastener{}
	for _, x := range list { // thicker than a small box needs: the thinnest of them
		if keeps(x) && (best.Length == 0 || x.Diameter < best.Diameter) {
			best = x
		}
	}
	if best.Length > 0 {
		return best, true
	}
	// None: the thinnest that is long enough, else the longest there is room for.
	slices.Reverse(list)
	for _, x := range list {
		in := float64(x.Length - f.Held)
		switch {
		case in > f.deep-2:
		case float64(x.Length) < float64(f.multiple()*float64(f.Held))-tiny:
			if best.Length == 0 || in > float64(best.Length-f.Held) && x.Diameter == best.Diameter {
				best = x
			}
		case best.Length == 0 || float64(best.Length) < float64(f.multiple()*float64(f.Held))-tiny || x.Diameter == best.Diameter && x.Length < best.Length:
			best = x
		}
	}
	if best.Length == 0 {
		best = list[0]
	}
	return best, false
}

func vecOf(p box.Place) solid.Vec {
	return solid.Vec{X: float64(p.X), Y: float64(p.Y), Z: float64(p.Z)}
}

func placeOf(v solid.Vec) box.Place { return box.Place{X: tidy(v.X), Y: tidy(v.Y), Z: tidy(v.Z)} }

// tidy drops what is below a ten-thousandth of a millimetre.
func tidy(x float64) box.MM {
	x = math.Round(x*1e4) / 1e4
	if x == 0 {
		return 0 // and never minus zero
	}
	return box.MM(x)
}

package species

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/species/timber"
)

// Fastener is a screw or a nail as sold, in mm.
type Fastener struct {
	Kind             string // "screw" or "nail"
	Diameter, Length box.MM
	Pilot            box.MM // the hole drilled for it; 0 is none
	Stainless        bool   // or of brass or aluminium: what damp wood with tannins leaves alone
}

// String is the fastener as on a label: "screw 3.5 x 40, pilot 2.5".
func (f Fastener) String() string {
	s := f.Kind + " " + num(float64(f.Diameter)) + " x " + num(float64(f.Length))
	if f.Pilot > 0 {
		s += ", pilot " + num(float64(f.Pilot))
	}
	if f.Stainless {
		s += ", stainless"
	}
	return s
}

// MetricScrews are wood screws of the usual metric sizes, each with a pilot hole
// of 70 % of its diameter to the next half millimetre (common practice).
func MetricScrews() []Fastener {
	var out []Fastener
	for _, s := range []struct {
		d       box.MM
		lengths []box.MM
	}{
		{3, []box.MM{20, 25, 30, 35, 40, 45, 50}},
		{3.5, []box.MM{25, 30, 35, 40, 45, 50}},
		{4, []box.MM{30, 35, 40, 45, 50, 60, 70, 80}},
		{4.5, []box.MM{40, 45, 50, 60, 70, 80}},
		{5, []box.MM{40, 50, 60, 70, 80, 90, 100}},
		{6, []box.MM{60, 70, 80, 90, 100, 120}},
	} {
		for _, l := range s.lengths {
			out = append(out, Fastener{Kind: "screw", Diameter: s.d, Length: l, Pilot: box.MM(math.Round(2*0.7*float64(s.d)) / 2)})
		}
	}
	return out
}

// MetricNails are wire nails of the usual metric sizes, each with a pilot hole of
// four fifths of its diameter to a tenth of a millimetre (common practice).
func MetricNails() []Fastener {
	var out []Fastener
	for _, s := range []struct {
		d       box.MM
		lengths []box.MM
	}{{2, []box.MM{30, 40, 45}}, {2.5, []box.MM{40, 50, 60}}, {3, []box.MM{50, 60, 70, 80}}, {4, []box.MM{80, 90, 100}}} {
		for _, l := range s.lengths {
			out = append(out, Fastener{Kind: "nail", Diameter: s.d, Length: l, Pilot: box.MM(math.Round(10*0.8*float64(s.d)) / 10)})
		}
	}
	return out
}

// FixWith says what to fix a box with. Its zero value takes MetricScrews.
type FixWith struct {
	// Fasteners are those at hand; nil means MetricScrews. A seam that asks for
	// nails takes them where there are any, and screws else; and the other way.
	Fasteners []Fastener
	// Spacing is the most between two fasteners in mm; 0 means 100 (common practice).
	Spacing box.MM
	// Load is what the box will hold, in kg, beside its own mass: over 10 kg
	// together the structural distances hold in place of the rule for small boxes.
	Load float64
}

// Fixing is a row of like fasteners through one part into the edge of another.
type Fixing struct {
	Over, Under box.Part // through Over into Under
	Joint       string
	With        Fastener
	// Places are where they enter, on the outer face of Over, and Right and Up the
	// same as a box.Cut on Over counts them; Into is the way they go.
	Places    []box.Place
	Right, Up []box.MM
	Into      box.Direction
	// Held is the wood of Over that they pass, Edge the least thickness of Under,
	// and Off how far they miss the middle of it; End is from the last of them to
	// the end of the seam.
	Held, Edge, Off, End box.MM
	EndGrain             bool    // of Under
	Slant                bool    // not square to Over, but in line with Under
	Structural           bool    // the distances for loads hold
	deep                 float64 // wood of Under along the way
	sheet                bool    // Under has no grain
}

// String says it in one line.
func (f Fixing) String() string {
	grain := "side grain"
	if f.EndGrain {
		grain = "end grain"
	} else if f.sheet {
		grain = "edge"
	}
	if f.Slant {
		grain += ", in line with it,"
	}
	return fmt.Sprintf("%d x %s through %s into the %s of %s", len(f.Places), f.With, f.Over, grain, f.Under)
}

// Cuts are the pilot holes in Over, to be added to a design's Features with With
// so that they are drawn, listed and bored. A fastener without a pilot hole gives
// none, and so does one on the slant, and one through the lip of a rebate, where
// a hole would meet the joint: those are drilled when the parts are together.
func (f Fixing) Cuts() []box.Cut {
	if !(f.With.Pilot > 0) || f.Joint == "rebate" || f.Slant {
		return nil
	}
	var out []box.Cut
	for i := range f.Places {
		out = append(out, box.Cut{On: f.Over, At: box.Anchor{Right: f.Right[i], Up: f.Up[i]}, Shape: box.Round{Diameter: f.With.Pilot}, Use: box.UseOpening, Name: "pilot"})
	}
	return out
}

// Fixings proposes screws or nails for every seam of a plan that says it is held
// by them: of what is at hand the thickest that the edge takes, up to 4 mm where
// that will do in a box under 10 kg, and the shortest that holds, longer into end grain. They stand
// in the middle of the edge, clear of one another and of openings. Where nothing
// at hand suits, the thinnest is taken, and CheckFixings says what is wrong with
// it. At a slope that square screws would leave, they go in line with the part they
// enter. Seams that stay dry, are only glued, or run too far from square get none.
//
// A nil plan, a fastener that is none, and a load that is none are a box.Problem.
func Fixings(plan *box.Plan, with FixWith) ([]Fixing, error) {
	if plan == nil {
		return nil, box.Problem{Path: "Fixings.plan", Code: "nil-plan", Why: "there is no plan to fix together: resolve the design first"}
	}
	if with.Fasteners == nil {
		with.Fasteners = MetricScrews()
	}
	if with.Spacing == 0 {
		with.Spacing = 100
	}
	if err := with.check(); err != nil {
		return nil, err
	}
	l, err := survey(plan, Preset{}, Site{})
	if err != nil {
		return nil, err
	}
	total := with.Load + l.mass()
	var out []Fixing
	for _, s := range plan.Seams() {
		kind := ""
		for _, h := range s.Holds {
			if h.Kind == "screw" || h.Kind == "nail" {
				kind = h.Kind
			}
		}
		a, b := l.piece(s.Over), l.piece(s.Under)
		if kind == "" || a == nil || b == nil {
			continue
		}
		use := with
		if same := slices.DeleteFunc(slices.Clone(with.Fasteners), func(f Fastener) bool { return f.Kind != kind }); len(same) > 0 {
			use.Fasteners = same
		}
		if f, ok := fix(a, b, s, use, total > heavy, out); ok {
			out = append(out, f)
		}
	}
	return out, nil
}

// check looks at the numbers of a fastener.
func (f Fastener) check(path string) error {
	switch {
	case f.Kind != "screw" && f.Kind != "nail":
		return box.Problem{Path: path + ".Kind", Code: "unknown-value", Got: fmt.Sprintf("%.40q", f.Kind), Why: "a fastener is a screw or a nail", Try: "screw"}
	case !(f.Diameter >= 0.5 && f.Diameter <= 12):
		return box.Problem{Path: path + ".Diameter", Code: "range", Got: num(float64(f.Diameter)), Lo: 0.5, Hi: 12, Unit: "mm", Why: "this is no diameter of a screw or a nail"}
	case !(f.Length >= 5 && f.Length <= 400):
		return box.Problem{Path: path + ".Length", Code: "range", Got: num(float64(f.Length)), Lo: 5, Hi: 400, Unit: "mm", Why: "this is no length of a screw or a nail"}
	case !(f.Pilot >= 0 && f.Pilot <= f.Diameter):
		return box.Problem{Path: path + ".Pilot", Code: "range", Got: num(float64(f.Pilot)), Lo: 0, Hi: float64(f.Diameter), Unit: "mm", Why: "a pilot hole is no wider than what goes into it"}
	}
	return nil
}

func (w FixWith) check() error {
	if len(w.Fasteners) == 0 {
		return box.Problem{Path: "FixWith.Fasteners", Code: "required", Why: "the list of fasteners is empty; nil means MetricScrews"}
	}
	for i, f := range w.Fasteners {
		if err := f.check(fmt.Sprintf("FixWith.Fasteners[%d]", i)); err != nil {
			return err
		}
	}
	if !(w.Spacing >= 10 && w.Spacing <= 1000) {
		return box.Problem{Path: "FixWith.Spacing", Code: "range", Got: num(float64(w.Spacing)), Lo: 10, Hi: 1000, Unit: "mm", Why: "fasteners stand closer than this or farther apart"}
	}
	if !(w.Load >= 0 && w.Load <= 1000) {
		return box.Problem{Path: "FixWith.Load", Code: "range", Got: num(w.Load), Lo: 0, Hi: 1000, Unit: "kg", Why: "this is no load for a box"}
	}
	return nil
}

// fix works out one seam. Heights a and b above the inner faces of the two parts
// give the place: the axis meets the inner face of the part held, a = 0, where b
// is half the thickness of the other.
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
	sunk := a.channel(b.Part)
	f := Fixing{Over: s.Over, Under: s.Under, Joint: s.Joint, Edge: min(box.MM(b.leastThick()), b.Thickness), Structural: structural, sheet: !b.solidWood()}
	g := b.Home.U.Scale(b.Panel.Grain[0]).Add(b.Home.V.Scale(b.Panel.Grain[1]))
	f.EndGrain = math.Abs(g.Dot(a.outward)) > math.Sqrt2/2
	// Square to the part held where that stays in the edge, else in line with the
	// part it enters.
	into, pass, keeps := a.outward.Scale(-1), float64(a.Thickness), false
	f.Held, f.deep = box.MM(pass-sunk), b.behind(a)+sunk
	f.With, keeps = choose(f, with.Fasteners, c)
	if !keeps && math.Abs(c) > 1e-6 {
		into = a.outward.Sub(b.outward.Scale(c)).Scale(-1 / sin)
		pass /= sin
		f.Slant, f.Held, f.deep = true, box.MM(pass-sunk/sin), f.deep/sin
		f.With, _ = choose(f, with.Fasteners, 0)
	}
	f.Into = box.Direction{X: float64(tidy(into.X)), Y: float64(tidy(into.Y)), Z: float64(tidy(into.Z))}
	// The end distance grows until the row is clear of all rows before it.
	d := timber.DistancesFor(f.With.Pilot > 0, f.sheet)
	least := math.Max(d.End*float64(f.With.Diameter), 20)
	for end := math.Min(least, length/2); ; end = math.Min(end+5, length/2) {
		f.End = box.MM(end)
		f.Places, f.Right, f.Up = nil, nil, nil
		run := length - 2*end
		n := 1
		if run > 10 {
			n = 1 + max(1, int(math.Ceil(run/float64(with.Spacing)-1e-9)))
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
		return float64(x.Length-f.Held)*math.Abs(c)+float64(x.Diameter)/2+1 <= float64(f.Edge)/2 && len(try.check(false)) == 0
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
		case float64(x.Length) < f.multiple()*float64(f.Held)-tiny:
			if best.Length == 0 || in > float64(best.Length-f.Held) && x.Diameter == best.Diameter {
				best = x
			}
		case best.Length == 0 || float64(best.Length) < f.multiple()*float64(f.Held)-tiny || x.Diameter == best.Diameter && x.Length < best.Length:
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

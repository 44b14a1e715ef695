package species

import (
	"fmt"
	"math"
	"slices"

	"holt.example/box"
	"holt.example/joints"
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
			out = append(out, Fastener{Kind: "screw", Diameter: s.d, Length: l, Pilot: pilotFor("screw", s.d)})
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
			out = append(out, Fastener{Kind: "nail", Diameter: s.d, Length: l, Pilot: pilotFor("nail", s.d)})
		}
	}
	return out
}

// Stainless are the same fasteners of stainless steel.
func Stainless(fasteners []Fastener) []Fastener {
	out := slices.Clone(fasteners)
	for i := range out {
		out[i].Stainless = true
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
	// Glue is the class that Fasten lists for the seams that are glued; 0 means
	// timber.GlueFor the weather.
	Glue timber.Glue

	count int // what a seam says of their number; 0 is nothing
}

// Fixing is a row of like fasteners through one part into the edge of another. One
// made by hand with a size that is none, or of more than ten metres, is a box.Problem
// (range) wherever it is looked at.
type Fixing struct {
	Over, Under box.Part // through Over into Under
	Joint       string
	With        Fastener
	// Places are where they enter, on the outer face of Over, or the inner one if
	// From says so, and Right and Up the same as a box.Cut on Over counts them; Into
	// is the way they go.
	Places    []box.Place
	Right, Up []box.MM
	Into      box.Direction
	From      box.CutSide // FromInner: driven outward, into what stands outside
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

// Row is the fixing as a design carries it, with its holes, at each pair of Right
// and Up: a screw clears the part held by half a millimetre and bites in its pilot
// hole (common practice), a nail has its pilot hole in both parts. A fastener
// without a pilot hole has none.
func (f Fixing) Row() box.Fixing {
	r := box.Fixing{Over: f.Over, Under: f.Under, What: f.With.Kind, Diameter: f.With.Diameter, Length: f.With.Length, From: f.From, Slant: f.Slant}
	if f.With.Stainless {
		r.Metal = "stainless steel"
	}
	if f.With.Pilot > 0 {
		r.Pilot, r.Hole = f.With.Pilot, f.With.Pilot
		if f.With.Kind == "screw" {
			r.Hole = f.With.Diameter + 0.5
		}
	}
	for i := range min(len(f.Right), len(f.Up)) {
		r.At = append(r.At, box.Anchor{Right: f.Right[i], Up: f.Up[i]})
	}
	return r
}

// Cuts are the holes in Over alone, as cuts; those of Row are in both parts.
func (f Fixing) Cuts() []box.Cut {
	r := f.Row()
	if !(r.Hole > 0) || f.Joint == "rebate" || f.Slant {
		return nil
	}
	var out []box.Cut
	for _, at := range r.At {
		out = append(out, box.Cut{On: f.Over, At: at, Shape: box.Round{Diameter: r.Hole}, Use: box.UseFixing, Name: f.With.Kind})
	}
	return out
}

// Fixings are the rows of screws and nails of a plan: those that its design has
// (see box.Fixing), and for every other seam that says it is held by them a row
// that is proposed: of what is at hand the thickest that the edge takes, up to 4 mm
// where that will do in a box under 10 kg, and the shortest that holds, longer into
// end grain. Where the seam itself says a size, a number or a spacing (see
// box.Between), that is taken. They stand in the middle of the edge, clear of one
// another, of joints and of openings, and go from the inside out where the part
// that they enter stands outside. Where nothing at hand suits, the thinnest that
// finds a place is taken, and CheckFixings says what is wrong with it; where none
// does, the seam gets no row, and CheckFixings names it (seam-unfixed). At a slope that square screws
// would leave, they go in line with the part they enter. Where a board lies flat on
// another they are as long as there is room for, and as many as its element lists.
// Seams that stay dry or are only glued get none, and none goes where parts meet too
// far from square.
//
// A nil plan is a box.Problem; fasteners, a spacing, a load and a glue that are none
// are box.Problems, all at once.
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
	structural := with.Load+l.mass() > heavy
	var out []Fixing
	for _, r := range plan.Fixings() {
		out = append(out, l.driven(plan, r, structural))
	}
	have := len(out)
	for _, s := range plan.Seams() {
		a, b := l.whole(plan, s.Over), l.whole(plan, s.Under)
		if a == nil || b == nil || a == b || joined(out[:have], a.Part, b.Part) {
			continue
		}
		for _, h := range s.Holds {
			if h.Kind != "screw" && h.Kind != "nail" {
				continue
			}
			s.Over, s.Under = a.Part, b.Part
			if f, ok := l.propose(plan, a, b, s, h, with.of(h), structural, out); ok {
				out = append(out, f)
			}
			break
		}
	}
	return out, nil
}

// joined says that a row joins two parts already.
func joined(fs []Fixing, a, b box.Part) bool {
	for _, f := range fs {
		if f.Over == a && f.Under == b || f.Over == b && f.Under == a {
			return true
		}
	}
	return false
}

// whole is the part of a name, or that of which it names a strip.
func (l *look) whole(plan *box.Plan, name box.Part) *piece {
	if p, ok := plan.Piece(name); ok && p.Of != "" {
		name = p.Of
	}
	return l.piece(name)
}

// of is what a seam is fixed with that says how it is held.
func (w FixWith) of(h joints.Hold) FixWith {
	if same := slices.DeleteFunc(slices.Clone(w.Fasteners), func(f Fastener) bool { return f.Kind != h.Kind }); len(same) > 0 {
		w.Fasteners = same
	}
	if h.Diameter > 0 || h.Length > 0 {
		said := slices.DeleteFunc(slices.Clone(w.Fasteners), func(f Fastener) bool {
			return h.Diameter > 0 && math.Abs(float64(f.Diameter-h.Diameter)) > tiny || h.Length > 0 && math.Abs(float64(f.Length-h.Length)) > tiny
		})
		if len(said) == 0 && h.Diameter > 0 && h.Length > 0 { // not at hand: bought
			said = []Fastener{{Kind: h.Kind, Diameter: h.Diameter, Length: h.Length, Pilot: pilotFor(h.Kind, h.Diameter)}}
		}
		if len(said) > 0 {
			w.Fasteners = said
		}
	}
	if h.Spacing >= 10 { // as in FixWith
		w.Spacing = h.Spacing
	}
	w.count = h.Count
	return w
}

// pilotFor is the pilot hole of the metric sizes.
func pilotFor(kind string, d box.MM) box.MM {
	if kind == "nail" {
		return box.MM(math.Round(10*0.8*float64(d)) / 10)
	}
	return box.MM(math.Round(2*0.7*float64(d)) / 2)
}

// check looks at the numbers of a fastener.
func (f Fastener) check(path string) error {
	var ps []error
	if f.Kind != "screw" && f.Kind != "nail" {
		ps = append(ps, box.Problem{Path: path + ".Kind", Code: "unknown-value", Got: fmt.Sprintf("%.40q", f.Kind), Why: "a fastener is a screw or a nail", Try: "screw"})
	}
	thick := f.Diameter >= 0.5 && f.Diameter <= 12
	if !thick {
		ps = append(ps, box.Problem{Path: path + ".Diameter", Code: "range", Got: num(float64(f.Diameter)), Lo: 0.5, Hi: 12, Unit: "mm", Why: "this is no diameter of a screw or a nail"})
	}
	if !(f.Length >= 5 && f.Length <= 400) {
		ps = append(ps, box.Problem{Path: path + ".Length", Code: "range", Got: num(float64(f.Length)), Lo: 5, Hi: 400, Unit: "mm", Why: "this is no length of a screw or a nail"})
	}
	if thick && !(f.Pilot >= 0 && f.Pilot <= f.Diameter) {
		ps = append(ps, box.Problem{Path: path + ".Pilot", Code: "range", Got: num(float64(f.Pilot)), Lo: 0, Hi: float64(f.Diameter), Unit: "mm", Why: "a pilot hole is no wider than what goes into it"})
	}
	return together(ps...)
}

// check gathers all that cannot be.
func (w FixWith) check() error {
	var ps []error
	if len(w.Fasteners) == 0 {
		ps = append(ps, box.Problem{Path: "FixWith.Fasteners", Code: "required", Why: "the list of fasteners is empty; nil means MetricScrews"})
	}
	for i, f := range w.Fasteners {
		ps = append(ps, f.check(fmt.Sprintf("FixWith.Fasteners[%d]", i)))
	}
	if !(w.Spacing >= 10 && w.Spacing <= 1000) {
		ps = append(ps, box.Problem{Path: "FixWith.Spacing", Code: "range", Got: num(float64(w.Spacing)), Lo: 10, Hi: 1000, Unit: "mm", Why: "fasteners stand closer than this or farther apart"})
	}
	if w.Glue != 0 && w.Glue.String() == "" {
		ps = append(ps, box.Problem{Path: "FixWith.Glue", Code: "unknown-value", Got: num(float64(w.Glue)), Why: "there is no such class of glue", Try: "timber.D4"})
	}
	if !(w.Load >= 0 && w.Load <= 1000) {
		ps = append(ps, box.Problem{Path: "FixWith.Load", Code: "range", Got: num(w.Load), Lo: 0, Hi: 1000, Unit: "kg", Why: "this is no load for a box"})
	}
	return together(ps...)
}

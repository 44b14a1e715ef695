package species

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/species/timber"
)

// Mounting says by what a box hangs on a tree, a post or a wall of wood. Its zero
// value is a fair guess: a screw of the usual size in every hanging hole, into the
// lightest of woods.
type Mounting struct {
	// With is the screw or nail that goes through each hanging hole, and Proud how far
	// its head stands off the box, in mm. Their zero value is what the plan says (see
	// box.Hanger); where it says nothing, the thickest of MetricScrews that the holes
	// take, and of that the shortest of two and a half times the wood it holds (common
	// practice) that goes seven diameters into the wood behind.
	With  Fastener
	Proud box.MM
	// Into names the wood that it goes into; see timber.Get. "" is as light as the
	// lightest that timber knows, which holds least.
	Into string
	// Load is what the box holds beside its own mass, in kg.
	Load float64
	// Reserve is how many times the load the fixings must bear; 0 means 5: what a
	// test gives is five to six times what the American Wood Council allows.
	Reserve float64
}

// Hung is what the fixings that a box hangs by must bear and what they do bear.
// Loads are in N.
type Hung struct {
	With    Fastener
	On      box.Part    // the part that they go through
	Places  []box.Place // of the hanging holes, on the face away from the box
	In      box.MM      // how deep each goes into the wood behind
	Mass    float64     // kg, with the Load
	Gravity float64     // specific gravity of the wood behind, at 12 % moisture content
	// Pull is what draws each of the upper fixings out, and Withdrawal what draws
	// it in a test (see timber.ScrewWithdrawal).
	Pull, Withdrawal float64
	// Shear is what bears down on each of all fixings, and Lateral what each bears
	// in a test (see timber.ScrewLateral), less in proportion where it does not go
	// deep enough for that.
	Shear, Lateral float64
	Reserve        float64 // asked for
}

// Hang works out what the fixings of a box bear on which it hangs by hanging holes,
// those of box.Hang and of a batten. It hangs on the part whose outer face lies
// farthest out, rests against the wall at the foot of that part, and is drawn from
// it at its upper holes; all holes share the weight. It is statics and the test
// loads of one handbook, no proof of safety. A part whose density is not known
// counts as of the heaviest wood that timber knows.
//
// A nil plan, a plan without hanging holes ("no-mounting"), a wood, a fastener or a
// load that is none are a box.Problem.
func (m Mounting) Hang(plan *box.Plan) (Hung, error) {
	if plan == nil {
		return Hung{}, box.Problem{Path: "Mounting.plan", Code: "nil-plan", Why: "there is no plan to hang: resolve the design first"}
	}
	l, err := survey(plan, Preset{}, Site{})
	if err != nil {
		return Hung{}, err
	}
	return l.hang(m)
}

// hang is Mounting.Hang on what is surveyed already.
func (l *look) hang(m Mounting) (Hung, error) {
	plan := l.plan
	gravity, err := m.check()
	if err != nil {
		return Hung{}, err
	}
	w, err := l.weigh(plan, heaviest())
	if err != nil {
		return Hung{}, err
	}
	on, holes, least := l.hangs()
	if on == nil {
		return Hung{}, box.Problem{Path: "Mounting.plan", Code: "no-mounting", Why: "the plan has no hanging holes", Try: "Features: []box.Feature{box.Hang{}}"}
	}
	h := Hung{With: m.With, On: on.Part, Mass: w.Mass + m.Load, Gravity: gravity, Reserve: m.Reserve}
	if h.Reserve == 0 {
		h.Reserve = 5
	}
	for _, f := range plan.Fittings() {
		if f.Hangs && slices.Contains(f.Where, on.Part) && h.With == (Fastener{}) && f.Width > 0 && f.Length > 0 {
			h.With = Fastener{Kind: "screw", Diameter: f.Width, Length: f.Length, Stainless: keeps(f.What)}
			if strings.Contains(strings.ToLower(f.What), "nail") {
				h.With.Kind = "nail"
			}
			m.Proud = f.Proud
		}
	}
	if h.With == (Fastener{}) {
		h.With = usual(least, on.Thickness+m.Proud)
	}
	h.In = max(0, h.With.Length-on.Thickness-m.Proud)
	wall := on.inner + float64(on.Thickness)
	foot, top := on.min.Z, math.Inf(-1)
	for _, p := range holes {
		h.Places = append(h.Places, placeOf(p))
		top = math.Max(top, p.Z)
	}
	upper := 0
	for _, p := range holes {
		if p.Z > top-1 {
			upper++
		}
	}
	if !(top > foot) {
		return Hung{}, box.Problem{Path: "Mounting.plan", Code: "no-mounting", Why: "the hanging holes are at the foot of the box"}
	}
	weight := float64(h.Mass * Gravity)
	out := wall - on.outward.Dot(vecOf(w.Centre))
	h.Pull = math.Max(0, float64(weight*out)/float64((top-foot)*float64(upper)))
	h.Shear = weight / float64(len(holes))
	return h, h.strength()
}

// check looks at the numbers and gives the specific gravity of the wood behind.
func (m Mounting) check() (gravity float64, err error) {
	var ps []error
	if m.With != (Fastener{}) {
		ps = append(ps, m.With.check("Mounting.With"))
	}
	for _, r := range []struct {
		field     string
		x, lo, hi float64
		unit, why string
	}{
		{"Proud", float64(m.Proud), 0, 100, "mm", "a head stands off by less than this"},
		{"Load", m.Load, 0, 1000, "kg", "this is no load for a box"},
		{"Reserve", m.Reserve, 0, 100, "times", "this is no reserve"},
	} {
		if !(r.x >= r.lo && r.x <= r.hi) {
			ps = append(ps, box.Problem{Path: "Mounting." + r.field, Code: "range", Got: num(r.x), Lo: r.lo, Hi: r.hi, Unit: r.unit, Why: r.why})
		}
	}
	gravity, err = m.gravity()
	return gravity, together(append(ps, err)...)
}

// gravity is the specific gravity of what the box hangs on.
func (m Mounting) gravity() (gravity float64, err error) {
	if m.Into == "" {
		gravity = 1
		for _, w := range timber.Woods() {
			if f, ok := w.Figure(timber.Gravity12); ok {
				gravity = math.Min(gravity, f.Value)
			}
		}
		return gravity, nil
	}
	w, err := timber.Get(m.Into)
	if err != nil {
		return 0, box.Problem{Path: "Mounting.Into", Code: "unknown-value", Got: fmt.Sprintf("%.80q", m.Into), Why: err.Error(), Try: "Scots pine"}
	}
	if g, ok := gravityOf(w); ok {
		return g, nil
	}
	return 0, box.Problem{Path: "Mounting.Into", Code: "no-density", Got: fmt.Sprintf("%.80q", m.Into), Why: "nothing is published of its density"}
}

// gravityOf is the specific gravity of a wood at 12 % moisture content, where
// anything is published of it.
func gravityOf(w timber.Wood) (float64, bool) {
	if f, ok := w.Figure(timber.Gravity12); ok {
		return f.Value, true
	}
	d, ok := w.Density() // Eq. 4-14 of the Wood Handbook, turned round
	return d.Value / 1120, ok
}

// deepEnough is how many diameters a nail or screw goes into wood of a specific
// gravity for the lateral load of a test: nails fourteen, and ten where it is over
// 0.61 (nail-pen-light and nail-pen-dense of the table of practice; fourteen is
// published for under 0.42, and taken for what lies between), screws seven.
func deepEnough(kind string, gravity float64) float64 {
	switch {
	case kind != "nail":
		return 7
	case gravity > 0.61:
		return 10
	}
	return 14
}

// heaviest is the density of the heaviest wood known, in kg/m3.
func heaviest() float64 {
	most := 0.0
	for _, w := range timber.Woods() {
		if d, ok := w.Density(); ok {
			most = math.Max(most, d.Value)
		}
	}
	return most
}

// hangs finds the part with hanging holes that lies farthest out, the holes on its
// outer face, and the least width of them.
func (l *look) hangs() (on *piece, at []solid.Vec, least float64) {
	best := math.Inf(-1)
	for i := range l.pieces {
		p := &l.pieces[i]
		var here []solid.Vec
		narrow := math.Inf(1)
		for _, op := range p.Panel.Ops {
			if op.Source != "hanging hole" || len(op.Region) == 0 {
				continue
			}
			e := op.Region[0].Extents()
			c := e.Centre()
			v := p.Home.Out(solid.Vec{X: c.X, Y: c.Y})
			v = v.Add(p.outward.Scale(p.inner + float64(p.Thickness) - p.outward.Dot(v)))
			here, narrow = append(here, v), math.Min(narrow, math.Min(e.Width(), e.Height()))
		}
		if out := p.inner + float64(p.Thickness); len(here) > 0 && out > best {
			best, on, at, least = out, p, here, narrow
		}
	}
	return on, at, least
}

// usual is the screw for a hole through so much wood.
func usual(hole float64, held box.MM) Fastener {
	list := MetricScrews()
	slices.Reverse(list) // thick and long first
	best := Fastener{}
	for _, s := range list {
		if float64(s.Diameter) > hole+tiny {
			continue
		}
		if best.Length == 0 || s.Diameter == best.Diameter && s.Length >= max(held*5/2, held+box.MM(7*s.Diameter)) {
			best = s
		}
	}
	if best.Length == 0 {
		best = list[len(list)-1]
	}
	best.Stainless = true
	return best
}

// strength fills in what the fixings bear.
func (h *Hung) strength() (err error) {
	in, need := float64(h.In), deepEnough(h.With.Kind, h.Gravity)
	if h.With.Kind == "nail" {
		if h.Withdrawal, err = timber.NailWithdrawal(h.Gravity, h.With.Diameter, h.In); err == nil {
			h.Lateral, err = timber.NailLateral(h.With.Diameter)
		}
	} else {
		// Two thirds of a wood screw are thread (common practice).
		thread := min(h.In, h.With.Length*2/3)
		if h.Withdrawal, err = timber.ScrewWithdrawal(h.Gravity, h.With.Diameter, thread); err == nil {
			h.Lateral, err = timber.ScrewLateral(h.With.Diameter)
		}
	}
	h.Lateral = float64(h.Lateral * math.Min(1, in/float64(need*float64(h.With.Diameter))))
	if err != nil {
		return box.Problem{Path: "Mounting.With", Code: "range", Got: h.With.String(), Why: err.Error()}
	}
	return nil
}

// CheckMounting holds the fixings of a hanging box against its mass: the codes are
// mounting-pull where they may be drawn out, mounting-shear where they may bend
// down, both with the load in N, and nail-penetration or screw-penetration where
// they do not go deep enough into the wood behind. A plan without hanging holes,
// such as that of a box on a strap or a pole, gives none. Errors are those of Hang,
// but for that.
func CheckMounting(plan *box.Plan, m Mounting) ([]box.Finding, error) {
	h, err := m.Hang(plan)
	return h.orNone(err)
}

// checkMounting is CheckMounting on what is surveyed already.
func (l *look) checkMounting(m Mounting) ([]box.Finding, error) {
	h, err := l.hang(m)
	return h.orNone(err)
}

// orNone are the findings, none of what does not hang by holes.
func (h Hung) orNone(err error) ([]box.Finding, error) {
	if p, ok := err.(box.Problem); ok && p.Code == "no-mounting" {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	return h.Findings(), nil
}

// Findings are what CheckMounting says.
func (h Hung) Findings() []box.Finding {
	var out []box.Finding
	at := box.Place{}
	for i, p := range h.Places {
		if i == 0 || p.Z > at.Z {
			at = p
		}
	}
	say := func(code, source string, load, bears float64, what string) {
		need := float64(load * h.Reserve)
		if load > 0 && !(bears >= need-tiny) {
			out = append(out, box.Finding{Code: code, Severity: box.Warning, Part: h.On, Where: at, Got: bears, Lo: need, Hi: math.Inf(1), Unit: "N",
				Why: fmt.Sprintf("%d x %s, %s mm in the wood behind, for %s kg: each bears %s N %s in a test, and %s times %s N are %s N. Take more, longer or thicker ones",
					len(h.Places), h.With, tenth(float64(h.In)), tenth(h.Mass), num(math.Round(bears)), what, num(h.Reserve), tenth(load), num(math.Round(need))),
				Sources: []string{source, "common practice"}})
		}
	}
	say("mounting-pull", "fpl-gtr-282", h.Pull, h.Withdrawal, "against being drawn out")
	say("mounting-shear", "from memory", h.Shear, h.Lateral, "square to its length")
	code, need := "screw-penetration", deepEnough(h.With.Kind, h.Gravity)
	if h.With.Kind == "nail" {
		code = "nail-penetration"
	}
	if d := float64(h.In / h.With.Diameter); d < need-tiny {
		r, _ := RuleOf(code)
		f := r.finding(h.On, at, d)
		f.Lo, f.Hi = need, math.Inf(1)
		f.Why = fmt.Sprintf("%s goes %s mm into the wood behind, %s needed. %s", h.With, tenth(float64(h.In)), tenth(need*float64(h.With.Diameter)), r.Why)
		out = append(out, f)
	}
	return out
}

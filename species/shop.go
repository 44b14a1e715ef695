package species

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
)

// Workshop is what the maker has. Its zero value is "not known": what is not
// stated is not held against a plan.
type Workshop struct {
	// Bits are the drills for round holes, and Cutters the diameters of router
	// cutters, in mm.
	Bits, Cutters []box.MM
	// SawTilt is the most that the saw tilts from square; 0 is not known.
	SawTilt box.Deg
	// Bed is the table of the machine that cuts panels, in mm, either way round;
	// zero is not known.
	Bed [2]box.MM
	// Boards are the widths of the boards at hand, in mm.
	Boards []box.MM
	// HandTools says that there are only hand tools: no compound angles, no
	// stopped housings, sizes on whole millimetres.
	HandTools bool
}

func (w Workshop) empty() bool {
	return len(w.Bits) == 0 && len(w.Cutters) == 0 && w.SawTilt == 0 && w.Bed == [2]box.MM{} && len(w.Boards) == 0 && !w.HandTools
}

// check names everything in a workshop that is no size.
func (w Workshop) check() error {
	var ps []error
	bad := func(path string, got, hi float64, unit string) {
		ps = append(ps, box.Problem{Path: "Workshop." + path, Code: "range", Got: num(got), Lo: 0, Hi: hi, Unit: unit, Why: "this is no size of a tool or a board"})
	}
	for _, l := range []struct {
		path string
		list []box.MM
	}{{"Bits", w.Bits}, {"Cutters", w.Cutters}, {"Boards", w.Boards}} {
		for i, x := range l.list {
			if !(x > 0 && x <= 1e4) {
				bad(fmt.Sprintf("%s[%d]", l.path, i), float64(x), 1e4, "mm")
			}
		}
	}
	if !(w.SawTilt >= 0 && w.SawTilt <= 90) {
		bad("SawTilt", float64(w.SawTilt), 90, "deg")
	}
	if !(w.Bed[0] >= 0 && w.Bed[0] <= 1e5 && w.Bed[1] >= 0 && w.Bed[1] <= 1e5) || (w.Bed[0] == 0) != (w.Bed[1] == 0) {
		bad("Bed", math.Min(float64(w.Bed[0]), float64(w.Bed[1])), 1e5, "mm")
	}
	return together(ps...)
}

// Check lists what of a plan the workshop cannot make, or not without ado; the
// codes begin with "shop-" and "hand-". With hand tools only, the last finding
// counts the set-ups (see Setups). A nil plan and sizes that are none are a
// box.Problem. Review does the same for a Site with a Shop, and knows the animal
// when it names bits.
func (w Workshop) Check(plan *box.Plan) ([]box.Finding, error) {
	if plan == nil {
		return nil, box.Problem{Path: "Workshop.plan", Code: "nil-plan", Why: "there is no plan to make: resolve the design first"}
	}
	if err := w.check(); err != nil {
		return nil, err
	}
	return w.look(plan, Preset{}), nil
}

// stated is the source of what the maker said.
var stated = []string{"the workshop as stated"}

func (w Workshop) look(plan *box.Plan, animal Preset) []box.Finding {
	var out []box.Finding
	for _, p := range plan.Pieces() {
		out = append(out, w.machines(p)...)
		said := map[string]bool{} // of a row of like holes the first will do
		for _, op := range p.Panel.Ops {
			for _, f := range w.tools(p, op, animal) {
				if !said[f.Why] {
					out = append(out, f)
				}
				said[f.Why] = true
			}
		}
		if w.HandTools {
			out = append(out, byHand(p)...)
		}
	}
	if w.HandTools {
		out = append(out, offGrid(plan)...)
		n := Setups(plan)
		words := make([]string, len(n))
		for i, s := range n {
			words[i] = s.String()
		}
		out = append(out, box.Finding{Code: "hand-setups", Severity: box.Advice, Got: float64(len(n)), Lo: math.Inf(-1), Hi: math.Inf(1), Unit: "count",
			Why: fmt.Sprintf("the box takes %s: %s", count(len(n), "set-up"), strings.Join(words, "; ")), Sources: []string{"geometry"}})
	}
	return out
}

// machines holds a part against saw, table and boards.
func (w Workshop) machines(p box.Piece) []box.Finding {
	var out []box.Finding
	add := func(code string, got, hi float64, unit, why string) {
		out = append(out, box.Finding{Code: code, Severity: box.Warning, Part: p.Part, Where: corner(p), Got: got, Lo: 0, Hi: hi, Unit: unit, Why: why, Sources: slices.Clone(stated)})
	}
	tilt := 0.0
	for _, e := range p.Panel.Edges {
		tilt = math.Max(tilt, math.Abs(float64(e.Bevel)))
	}
	if most := float64(w.SawTilt); most > 0 && tilt > most+1e-6 {
		add("shop-tilt", tilt, most, "deg", fmt.Sprintf("an edge of %s is bevelled by %s degrees, and the saw tilts to %s", p.Part, tenth(tilt), num(most)))
	}
	if a, b := float64(w.Bed[0]), float64(w.Bed[1]); a > 0 {
		e := p.Panel.Silhouette.Extents()
		long, short := math.Max(e.Width(), e.Height()), math.Min(e.Width(), e.Height())
		switch {
		case long > math.Max(a, b)+tiny:
			add("shop-bed", long, math.Max(a, b), "mm", fmt.Sprintf("%s is %s mm long, and the table takes %s", p.Part, tenth(long), num(math.Max(a, b))))
		case short > math.Min(a, b)+tiny:
			add("shop-bed", short, math.Min(a, b), "mm", fmt.Sprintf("%s is %s mm wide, and the table takes %s", p.Part, tenth(short), num(math.Min(a, b))))
		}
	}
	if len(w.Boards) > 0 && p.Panel.Grain != [2]float64{} {
		if widest := slices.Max(w.Boards); p.Width > widest+tiny {
			add("shop-board", float64(p.Width), float64(widest), "mm", fmt.Sprintf("%s is %s mm wide across the grain, and the widest board at hand is %s: join boards, or turn the grain", p.Part, tenth(float64(p.Width)), num(float64(widest))))
		}
	}
	return out
}

// corner is the place of a part: the origin of its panel.
func corner(p box.Piece) box.Place {
	return box.Place{X: box.MM(p.Home.O.X), Y: box.MM(p.Home.O.Y), Z: box.MM(p.Home.O.Z)}
}

// bitFits is how near a drill must come to a hole, in mm: half the steps in
// which drills are sold.
const bitFits = 0.05

// tools holds a cut against drills and cutters.
func (w Workshop) tools(p box.Piece, op box.Op, animal Preset) []box.Finding {
	if len(op.Region) == 0 {
		return nil
	}
	if _, d, round := op.Region[0].IsCircle(1e-6); round {
		if len(w.Bits) == 0 || slices.ContainsFunc(w.Bits, func(b box.MM) bool { return math.Abs(float64(b)-d) <= bitFits }) {
			return nil
		}
		f := box.Finding{Code: "shop-bit", Severity: box.Warning, Part: p.Part, Where: corner(p), Got: d, Lo: math.Inf(-1), Hi: math.Inf(1), Unit: "mm", Sources: slices.Clone(stated),
			Why: fmt.Sprintf("there is no bit of %s mm for the %s of %s", tenth(d), op.Use, p.Part)}
		if op.Use == box.UseEntrance && animal.Key != "" {
			f.Why += ": " + offer(animal, w.Bits)
		} else {
			f.Why += ": the nearest is " + num(float64(nearest(w.Bits, box.MM(d))))
		}
		return []box.Finding{f}
	}
	if len(w.Cutters) == 0 || op.Kind == box.OpNotch || op.Side == box.SideEdge || (op.Kind == box.OpRebate && op.Guest != "") {
		return nil // a rebate is open at one side
	}
	e := op.Region[0].Extents()
	narrow, least := math.Min(e.Width(), e.Height()), float64(slices.Min(w.Cutters))
	if narrow >= least-tiny {
		return nil
	}
	return []box.Finding{{Code: "shop-cutter", Severity: box.Warning, Part: p.Part, Where: corner(p), Got: narrow, Lo: least, Hi: math.Inf(1), Unit: "mm", Sources: slices.Clone(stated),
		Why: fmt.Sprintf("a %s of %s is %s mm wide, and the smallest cutter is %s", op.Kind, p.Part, tenth(narrow), num(least))}}
}

func nearest(list []box.MM, x box.MM) box.MM {
	best := list[0]
	for _, b := range list {
		if d, e := math.Abs(float64(b-x)), math.Abs(float64(best-x)); d < e || d == e && b < best {
			best = b
		}
	}
	return best
}

// offer says which of the bits at hand serve an animal, and what they admit.
func offer(animal Preset, bits []box.MM) string {
	good, err := animal.Bits(bits)
	if err != nil {
		return "none at hand serves " + animal.Common
	}
	words := make([]string, len(good))
	for i, b := range good {
		words[i] = num(float64(b.Diameter))
		if len(b.Extra) > 0 {
			words[i] += " (which also admits " + strings.Join(commonNames(b.Extra), ", ") + ")"
		}
	}
	return "of those at hand " + strings.Join(words, " or ") + " serves " + animal.Common
}

// byHand finds compound angles and stopped channels.
func byHand(p box.Piece) []box.Finding {
	var out []box.Finding
	for _, e := range p.Panel.Edges {
		dx, dy := math.Abs(e.To.X-e.From.X), math.Abs(e.To.Y-e.From.Y)
		if math.Abs(float64(e.Bevel)) > 0.01 && math.Min(dx, dy) > 1e-4*math.Max(dx, dy) {
			out = append(out, box.Finding{Code: "hand-compound", Severity: box.Warning, Part: p.Part, Where: corner(p), Got: math.Abs(float64(e.Bevel)), Lo: 0, Hi: 0, Unit: "deg", Sources: []string{"common practice"},
				Why: fmt.Sprintf("an edge of %s is bevelled and runs askew: a compound angle is no work for hand tools; keep the walls upright", p.Part)})
			break
		}
	}
	for _, op := range p.Panel.Ops {
		if stopped(p, op) {
			out = append(out, box.Finding{Code: "hand-stopped", Severity: box.Warning, Part: p.Part, Where: corner(p), Got: 1, Lo: 0, Hi: 0, Unit: "count", Sources: []string{"common practice"},
				Why: fmt.Sprintf("the %s of %s for %s ends inside the board: by hand, let it run through", op.Kind, p.Part, op.Guest)})
		}
	}
	return out
}

// stopped says that a joint's channel has wood beyond one of its ends.
func stopped(p box.Piece, op box.Op) bool {
	if op.Guest == "" || len(op.Region) == 0 || (op.Kind != box.OpHousing && op.Kind != box.OpGroove && op.Kind != box.OpRebate) {
		return false
	}
	e := op.Region[0].Extents()
	c := e.Centre()
	d := outline.Point{X: e.Width()/2 + 0.1}
	if e.Height() > e.Width() {
		d = outline.Point{Y: e.Height()/2 + 0.1}
	}
	for _, s := range []float64{-1, 1} {
		if p.Panel.Machined.Contains(outline.Point{X: c.X + s*d.X, Y: c.Y + s*d.Y}, 1e-6) == outline.Inside {
			return true
		}
	}
	return false
}

// offGrid lists the blanks that are not of whole millimetres.
func offGrid(plan *box.Plan) []box.Finding {
	var words []string
	worst := 0.0
	for _, p := range plan.Pieces() {
		for _, x := range []float64{float64(p.Length), float64(p.Width)} {
			if off := math.Abs(x - math.Round(x)); off > 0.05 {
				worst = math.Max(worst, off)
				words = append(words, fmt.Sprintf("%s %s", p.Part, tenth(x)))
			}
		}
	}
	if words == nil {
		return nil
	}
	return []box.Finding{{Code: "hand-mm", Severity: box.Advice, Got: worst, Lo: 0, Hi: 0.05, Unit: "mm", Sources: []string{"common practice"},
		Why: "hand work keeps to whole millimetres, and these are not: " + strings.Join(words, "; ")}}
}

// Setup is one setting of a saw, a plane or a drill, with the parts it serves.
type Setup struct {
	Kind  string // "saw", "stop", "width", "depth", "drill"
	Value float64
	Unit  string
	Parts []box.Part
}

// String says it in a few words.
func (s Setup) String() string { return s.Kind + " " + num(s.Value) + unit(s.Unit) }

// Setups counts what has to be set to make a plan: each angle of a bevel, each
// length and width of a blank, each depth of a joint's cut and each drill, to a
// tenth. A width that the board has already is not ripped and does not count.
func Setups(plan *box.Plan) []Setup {
	if plan == nil {
		return nil
	}
	var out []Setup
	order := []string{"saw", "stop", "width", "depth", "drill"}
	add := func(kind string, v float64, unit string, part box.Part) {
		v = math.Round(v*10) / 10
		for i := range out {
			if s := &out[i]; s.Kind == kind && s.Value == v {
				if !slices.Contains(s.Parts, part) {
					s.Parts = append(s.Parts, part)
				}
				return
			}
		}
		out = append(out, Setup{Kind: kind, Value: v, Unit: unit, Parts: []box.Part{part}})
	}
	for _, p := range plan.Pieces() {
		if len(p.Panel.Edges) == 0 {
			add("saw", 0, "deg", p.Part)
		}
		for _, e := range p.Panel.Edges {
			add("saw", math.Abs(float64(e.Bevel)), "deg", p.Part)
		}
		add("stop", float64(p.Length), "mm", p.Part)
		if math.Abs(float64(p.Width-p.Board.Width)) > 0.05 {
			add("width", float64(p.Width), "mm", p.Part)
		}
		for _, op := range p.Panel.Ops {
			if op.Guest != "" {
				add("depth", float64(op.To-op.From), "mm", p.Part)
			} else if len(op.Region) > 0 {
				if _, d, ok := op.Region[0].IsCircle(1e-6); ok {
					add("drill", d, "mm", p.Part)
				}
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		a, b := slices.Index(order, out[i].Kind), slices.Index(order, out[j].Kind)
		return a < b || a == b && out[i].Value < out[j].Value
	})
	return out
}

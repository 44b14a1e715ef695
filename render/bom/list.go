package bom

import (
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

// List is a parts list: what to cut, how it is worked, and what proves the box
// right. It is a value and shares nothing with the plan.
type List struct {
	Name    string
	Step    box.MM // of the cut sizes
	Items   []Item // by number
	Inside  Size
	Outside Size // of the walls: width and depth at their lower edge, height to the eaves
	// Overall is what the whole box takes up: roof, overhangs and all that runs
	// on, but not the free parts, which may lie anywhere.
	Overall   Size
	Diagonals box.Diagonals
	Totals    Totals
	Fittings  []Fitting // what is bought or cut beside the boards
	Bill      *Bill     // nil without Options.Bill
	Voids     []box.Void
	Findings  []box.Finding
}

// Size is a width, depth and height in mm.
type Size struct{ Width, Depth, Height box.MM }

// Hand tells parts apart that are the mirror image of each other.
type Hand string

// The hands. A part that has no mirror image in the box has none.
const (
	NoHand    Hand = ""
	LeftHand  Hand = "left"
	RightHand Hand = "right"
)

// Item is one line of the list: a part, or several equal ones. Where words say
// left, right, upper and lower, they mean the panel as one looks at its
// machined face; of work on the other face, as it lies when turned over.
type Item struct {
	Number   int // as in Group.Number
	Quantity int
	Parts    []box.Part
	Material string // "" unknown
	// Nominal thickness as sold, Thickness as measured and cut for, Least and
	// Most as measured where boards differ (else equal to Thickness).
	Nominal, Thickness, Least, Most box.MM
	// Length along the grain and Width across it: the finished blank, exact.
	Length, Width box.MM
	// CutLength and CutWidth are the same, rounded to the list's step jointly
	// with all other parts, so that the rounded parts still go together.
	CutLength, CutWidth box.MM
	// LengthWhy and WidthWhy say in words why a size to cut to differs from the
	// exact one by more than half a step: "0.2 less: so that it goes between the
	// walls as they are rounded". Else "".
	LengthWhy, WidthWhy string
	Grain               string  // "up", "across", "none" or an angle
	Volume              float64 // mm3, of one part
	Mass                float64 // kg, of one part; 0 unknown
	Face                string  // which of its faces is machined: "inside" or "outside", or both, by part, where one of equal parts is turned over
	SecondFace          bool    // there is work on the other face too
	Up                  string  // which edge is up in the box
	FaceEdge            string  // the edge to plane first and to measure from; "" if none is straight, square and along the grain
	Hand                Hand
	MirrorOf            int // the item that is its mirror image, 0 if none
	Edges               []Edge
	Rim                 []Side // of a part without edges: its outline, side by side
	Work                []Work
	Words               []string // how the size came about
	Places              []Place  // of each part, in the order of Parts
	Machined, Far       outline.Region
}

// Edge is one edge of an item.
type Edge struct {
	Name       string     // "lower", "upper right" ...
	Neighbours []box.Part // of each part in the order of Item.Parts; nil where the edge is free
	Joint      string
	Length     box.MM
	Bevel      box.Deg // from square; + means the machined face overhangs
	Run        box.MM  // the same as an offset to gauge, across the thickness; signed like Bevel
	Adds       box.MM  // how far the part reaches past its cavity face
	Why        string
	Arrises    []string // what is done to its arrises, in words: "round the machined arris 3"
	Guest      bool     // the part butts against or enters its neighbour here
	From, To   outline.Point
}

// Place is where a part stands: Home as in box.Piece. A point (u, v, w) of the
// panel is at O + u*U + v*V + w*W in the world. Face is the machined face.
type Place struct {
	Part box.Part
	Home solid.Frame
	Face box.CutSide
}

// Work is one operation on an item.
type Work struct {
	Kind     box.OpKind
	Use      box.Use
	Side     box.OpSide
	Guests   []box.Part // what a joint's cut takes, for each part in the order of Item.Parts; nil for other cuts
	Source   string
	From, To box.MM // depths below the machined face, exact
	Tilt     []box.Deg
	Strokes  []outline.Path // of an engraving
	Removed  float64        // by it, mm3
	Tool     box.Tool       // where one is given
	Region   outline.Region // at the depth From
	Bottom   outline.Region // at the depth To; nil where it equals Region
	// Depth and Width are the section of a joint's cut as it is to be set: the
	// depth rounded down to 0.1 (no lip gets thinner), the width up (the guest
	// goes in). For a round hole Width is the diameter. 0 where not used.
	Depth, Width box.MM
	// In words: what is cut, where, and what else is to know of it.
	What, Where, More string
}

// Words is the operation in one line.
func (w Work) Words() string { return w.What + listed(w.Where) + w.More }

func listed(s string) string {
	if s == "" {
		return ""
	}
	return ", " + s
}

// Totals sums the list up.
type Totals struct {
	Parts  int
	Boards []BoardTotal
	Volume float64 // mm3
	Mass   float64 // kg, of the parts whose mass is known
	Known  int     // parts whose mass is known
}

// BoardTotal sums up the parts cut from boards of one thickness and material.
type BoardTotal struct {
	Material           string
	Nominal, Thickness box.MM
	Parts              int
	Area               float64 // mm2, of the blanks
	Volume             float64 // mm3
}

// New makes the list of a plan. What Checked and the writers refuse is left out
// here: a step out of range counts as 0.1, terms with a slip give no bill, and a
// density that is none leaves the mass unknown.
func New(plan *box.Plan, o Options) List {
	if plan == nil {
		return List{}
	}
	l, _ := newList(plan, o)
	return l
}

// Checked is New with the errors of the writers: there is no plan, Options.Check
// refuses the options, or Terms.Density gives a density that is none.
func Checked(plan *box.Plan, o Options) (List, error) {
	if plan == nil {
		return List{}, errNoPlan
	}
	if err := o.Check(); err != nil {
		return List{}, err
	}
	l, err := newList(plan, o)
	if err != nil {
		return List{}, err
	}
	return l, nil
}

func newList(plan *box.Plan, o Options) (List, error) {
	s := source{
		name: plan.Name(), pieces: plan.Pieces(), groups: plan.Groups(), seams: plan.Seams(),
		voids: plan.Voids(), findings: plan.Findings(), fittings: plan.Fittings(), diag: plan.Diagonals(), explain: plan.Explain,
	}
	s.inside.Width, s.inside.Depth, s.inside.Height = plan.Inside()
	s.outside.Width, s.outside.Depth, s.outside.Height = plan.Outside()
	s.overall = overall(plan)
	s.boards = map[box.Part]box.MM{}
	for _, w := range plan.Wholes() {
		for _, p := range w.Strips {
			s.boards[p] = w.Boards
		}
	}
	l := s.list(o)
	return l, l.reckon(o.Bill, s)
}

// source is what a list needs of a plan.
type source struct {
	name            string
	pieces          []box.Piece
	groups          []box.Group
	seams           []box.Seam
	voids           []box.Void
	findings        []box.Finding
	fittings        []box.Fitting
	inside, outside Size
	overall         Size
	boards          map[box.Part]box.MM // the width of the boards of strips
	diag            box.Diagonals
	explain         func(box.Part) []string
}

func (s source) list(o Options) List {
	step, _ := o.step()
	l := List{
		Name: s.name, Step: box.MM(step), Inside: s.inside, Outside: s.outside, Overall: s.overall,
		Diagonals: s.diag, Voids: s.voids, Findings: s.findings, Fittings: fittingsOf(s.fittings),
	}
	at := make(map[box.Part]int, len(s.pieces))
	for i, p := range s.pieces {
		at[p.Part] = i
	}
	cuts := s.round(step)
	for _, g := range s.groups {
		var members []int
		for _, name := range g.Parts {
			if i, ok := at[name]; ok {
				members = append(members, i)
			}
		}
		if len(members) > 0 {
			l.Items = append(l.Items, s.item(g, members, cuts, step))
		}
	}
	l.hands(s, at)
	l.Totals = l.total()
	return l
}

func (s source) item(g box.Group, members []int, cuts []cutSize, step float64) Item {
	p := s.pieces[members[0]]
	it := Item{
		Number: g.Number, Quantity: len(members), MirrorOf: g.Mirror,
		Material: p.Board.Material, Nominal: p.Board.Thickness, Thickness: p.Thickness,
		Least: p.Thickness, Most: p.Thickness,
		Length: p.Length, Width: p.Width,
		CutLength: box.MM(cuts[members[0]].length), CutWidth: box.MM(cuts[members[0]].width),
		LengthWhy: cuts[members[0]].lengthWhy, WidthWhy: cuts[members[0]].widthWhy,
		Grain: grainWords(p.Panel.Grain), Volume: p.Volume, Mass: p.Mass,
		SecondFace: p.Panel.SecondFace,
		Machined:   copyRegion(p.Panel.Machined), Far: copyRegion(p.Panel.Far),
	}
	if p.Board.Least > 0 {
		it.Least = p.Board.Least
	}
	if p.Board.Most > 0 {
		it.Most = p.Board.Most
	}
	names := edgeNames(p.Panel)
	ends := s.guests(p)
	for k, e := range p.Panel.Edges {
		edge := Edge{
			Name: names[k], Joint: e.Joint, Length: e.Length, Bevel: e.Bevel, Run: e.Run,
			Adds: e.Adds, Why: e.Why, Guest: ends[k], From: e.From, To: e.To, Arrises: arrisWords(e),
		}
		for _, m := range members {
			q := s.pieces[m].Panel.Edges
			if k < len(q) && q[k].Neighbour != "" {
				edge.Neighbours = append(edge.Neighbours, q[k].Neighbour)
			}
		}
		if edge.Joint == "" {
			edge.Joint = s.jointOf(p.Part, e.Neighbour)
		}
		it.Edges = append(it.Edges, edge)
	}
	if len(it.Edges) == 0 {
		it.Rim = rim(p.Panel.Machined)
	}
	it.FaceEdge = faceEdge(p, names)
	for k, op := range p.Panel.Ops {
		w, edge := workOf(p, op, names, step, s.enterer(p, op.Guest))
		for _, m := range members {
			if g := guestOf(p, s.pieces[m], k, edge); g != "" {
				w.Guests = append(w.Guests, g)
			}
		}
		if len(w.Guests) > 0 {
			w.More += ", for " + joinParts(once(w.Guests), " or ")
		}
		it.Work = append(it.Work, w)
	}
	var faces, ups []string
	for _, m := range members {
		q := s.pieces[m]
		it.Parts = append(it.Parts, q.Part)
		it.Places = append(it.Places, Place{q.Part, q.Home, q.Panel.Face})
		faces = append(faces, faceWord(q.Panel.Face))
		ups = append(ups, upWords(q, names))
	}
	it.Face, it.Up = it.byPart(faces), it.byPart(ups)
	if s.explain != nil {
		it.Words = s.explain(p.Part)
	}
	return it
}

// jointOf is the joint of the seam between two parts, "" without one.
func (s source) jointOf(p, q box.Part) string {
	for _, m := range s.seams {
		if m.Over == p && s.is(m.Under, q) || m.Under == p && s.is(m.Over, q) {
			return m.Joint
		}
	}
	return ""
}

// guestOf is what cut k takes in part q, which is equal to p. At an edge it is
// the neighbour there.
func guestOf(p, q box.Piece, k, edge int) box.Part {
	g := p.Panel.Ops[k].Guest
	switch {
	case g == "":
		return ""
	case edge >= 0 && edge < len(q.Panel.Edges) && p.Panel.Edges[edge].Neighbour == g:
		return q.Panel.Edges[edge].Neighbour
	case k < len(q.Panel.Ops):
		return q.Panel.Ops[k].Guest
	}
	return g
}

// byPart is one word if it holds for all parts of the item, else one for each.
func (it Item) byPart(words []string) string {
	same := true
	for i := range words {
		same = same && words[i] == words[0]
	}
	if same && len(words) > 0 {
		return words[0]
	}
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = string(it.Parts[i]) + ": " + w
	}
	return strings.Join(out, "; ")
}

func (l List) total() Totals {
	var t Totals
	for _, it := range l.Items {
		n := float64(it.Quantity)
		t.Parts += it.Quantity
		t.Volume += float64(n * it.Volume)
		if it.Mass > 0 {
			t.Mass += float64(n * it.Mass)
			t.Known += it.Quantity
		}
		k := 0
		for k < len(t.Boards) && !(t.Boards[k].Material == it.Material && t.Boards[k].Nominal == it.Nominal && t.Boards[k].Thickness == it.Thickness) {
			k++
		}
		if k == len(t.Boards) {
			t.Boards = append(t.Boards, BoardTotal{Material: it.Material, Nominal: it.Nominal, Thickness: it.Thickness})
		}
		b := &t.Boards[k]
		b.Parts += it.Quantity
		b.Area += float64(n * float64(it.Length*it.Width))
		b.Volume += float64(n * it.Volume)
	}
	return t
}

func copyRegion(r outline.Region) outline.Region {
	if r == nil {
		return nil
	}
	out := make(outline.Region, len(r))
	for i, c := range r {
		out[i] = append(outline.Contour(nil), c...)
	}
	return out
}

package box

import (
	"fmt"
	"strings"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// Plan is a resolved design: every part solved, placed, checked and drawn
// flat. It is read-only: its methods return copies or values that the caller
// must not change, and it may be used from several goroutines.
type Plan struct {
	name     string
	chord    float64
	pieces   []Piece
	index    map[Part]int
	seams    []Seam
	voids    []Void
	findings []Finding
	fittings []Fitting
	fixings  []FixingRow
	ways     []planWay
	groups   []Group
	inside   [3]MM
	outside  [3]MM
	diag     Diagonals
	ring     []ringCorner
	words    map[Part][]string
	wholes   []Whole
}

// Piece is one part of a plan.
type Piece struct {
	Part      Part
	Of        Part // the made-up part that it is a strip or a loose tongue of, else ""
	Board     Board
	Thickness MM // cut for
	// Home is the panel's frame in the world: u, v and w as in Panel, the
	// origin at the middle of the cavity face's lower edge, on the machined
	// face. Pose equals Home in a closed box.
	Home, Pose solid.Frame
	// Length runs along the grain, Width across it: the blank to cut, the
	// extents of the silhouette. Without grain Length is the longer.
	Length, Width MM
	// Nominal is the size of the cavity face that the part covers: across (u)
	// and up (v). Free parts have none.
	Nominal [2]MM
	Panel   Panel
	Volume  float64 // mm3, of the true shape
	Mass    float64 // kg, 0 without a density
	Body    solid.Body
}

// Panel is the flat form of a part, in the plane of its machined face: u and v
// as the tool sees them (v up), w towards the tool. The part is -t <= w <= 0
// and a depth is a positive number.
type Panel struct {
	Face      CutSide // the machined face
	Thickness MM
	// Machined is the outline at the machined face, the cut line; Far the one at
	// the far face, a marking line; Silhouette the shadow of both, which is laid
	// out and bought. Notches show in them; openings inside them, pockets and
	// rebates are left to Ops.
	Machined, Far, Silhouette outline.Region
	Edges                     []PanelEdge
	Ops                       []Op
	Grain                     [2]float64 // unit vector in u, v; zero where it does not matter
	SecondFace                bool       // some work is on the far face: the part is turned over once
}

// PanelEdge is one straight edge of a panel.
type PanelEdge struct {
	From, To  outline.Point // on the machined face, the part on the left
	Length    MM
	Bevel     Deg    // from square, to 1e-9; + means the machined face overhangs
	Run       MM     // of the bevel across the thickness: what a gauge is set to; signed like Bevel
	Neighbour Part   // "" where the edge is free
	Joint     string // with the neighbour
	Adds      MM     // how far the part reaches past its cavity face here, on that face; negative: falls short
	Why       string
	Arrises   [2]Arris // at the machined face and at the far one
}

// OpKind is the kind of an operation.
type OpKind string

// The kinds of operation.
const (
	OpBore    OpKind = "bore"    // a round hole
	OpOpening OpKind = "opening" // any other through opening
	OpPocket  OpKind = "pocket"
	OpRebate  OpKind = "rebate"
	OpHousing OpKind = "housing" // across the grain
	OpGroove  OpKind = "groove"  // along the grain
	OpNotch   OpKind = "notch"   // through, open to an edge
	OpMark    OpKind = "mark"
	OpEngrave OpKind = "engrave" // along lines: Strokes
)

// OpSide is where an operation reaches the surface.
type OpSide string

// The sides of operations.
const (
	SideMachined OpSide = "machined"
	SideFar      OpSide = "far"
	SideThrough  OpSide = "through"
	SideEdge     OpSide = "edge" // neither face: inside the thickness, from an edge
)

// Op is one operation on a panel.
type Op struct {
	Kind   OpKind
	Use    Use
	Side   OpSide
	Region outline.Region // at the depth From
	Bottom outline.Region // at the depth To, where walls are tilted; nil where it equals Region
	// From and To are depths below the machined face: 0 and 5 for a pocket 5
	// deep, 0 and the thickness for a through cut.
	From, To MM
	Tilt     []Deg // of the walls, per side of the region, from square, to 1e-9; nil when all are 0
	Source   string
	Guest    Part // the part that a joint's cut takes, if any
	InSolid  bool // whether the solid shows it (strokes do not)
	// Strokes are the centre lines of an engraving, which has no Region: cut to
	// the depth To with Tool, Width wide at the surface. Removed is the volume that
	// it takes, mm3, each stroke by itself; the solid does not show it.
	Strokes []outline.Path
	Width   MM
	Removed float64
	Tool    Tool // of cuts and engravings for which one is given
	// InOutline says that the contours of the panel already show this cut: a
	// notch, or an opening that meets the edge.
	InOutline bool
}

// Seam is an edge at which two parts meet.
type Seam struct {
	Over, Under     Part
	Joint           string
	From, To        Place // along the inner edge line
	Theta           Deg   // inside angle, to 1e-9
	Least, Greatest MM    // gap over the measured range of thickness
	Contact         float64
	Holds           []joints.Hold // what keeps it together; nil: nothing, it stays dry and free to move
}

// Glued reports whether glue belongs in the seam.
func (s Seam) Glued() bool {
	for _, h := range s.Holds {
		if h.Kind == "glue" {
			return true
		}
	}
	return false
}

// Void is a place between parts, inside the outer planes, that nothing fills.
type Void struct {
	Owner  string  // e.g. "play front/floor", "entrance front"
	Kind   string  // "feature", "play", "square", "run-out"
	Volume float64 // mm3
	At     Place
}

// Group is a set of equal parts.
type Group struct {
	Number int    // the item number in lists and pictures, from 1
	Parts  []Part // equal: a rotation carries one onto the other
	Mirror int    // number of the group that is its mirror image, 0 if none
}

// Diagonals prove the box square: measured over the walls' lower edge.
type Diagonals struct {
	Outside [2]MM
	Inside  [2]MM
}

// Name is the design's name.
func (p *Plan) Name() string { return p.name }

// Pieces are the parts as they are cut, in plan order: walls, floor, roof, inner,
// free. A made-up part is there as its strips and loose tongues; Parts has it as
// one.
func (p *Plan) Pieces() []Piece { return append([]Piece(nil), p.pieces...) }

// Piece returns one part: a strip of a made-up part, or the whole of it.
func (p *Plan) Piece(name Part) (Piece, bool) {
	if i, ok := p.index[name]; ok {
		return p.pieces[i], true
	}
	for i := range p.wholes {
		if p.wholes[i].Part == name {
			return p.wholes[i].Piece, true
		}
	}
	return Piece{}, false
}

// Seams are the edges at which parts meet.
func (p *Plan) Seams() []Seam { return append([]Seam(nil), p.seams...) }

// Voids are all declared voids, by owner.
func (p *Plan) Voids() []Void { return append([]Void(nil), p.voids...) }

// Findings are what can be made and should be known.
func (p *Plan) Findings() []Finding { return append([]Finding(nil), p.findings...) }

// Groups are the equal parts, numbered as in the list.
func (p *Plan) Groups() []Group { return append([]Group(nil), p.groups...) }

// Inside is the cavity's width, depth and height.
func (p *Plan) Inside() (width, depth, height MM) { return p.inside[0], p.inside[1], p.inside[2] }

// Outside is the width, depth and height between the outer planes: at the
// walls' lower edge, and up to the lowest outer eaves line.
func (p *Plan) Outside() (width, depth, height MM) {
	return p.outside[0], p.outside[1], p.outside[2]
}

// Diagonals are what a tape should read from corner to corner.
func (p *Plan) Diagonals() Diagonals { return p.diag }

// Explain says in words how a part came by its size, a sentence a line. Of a part
// that the plan does not have it says that, and which names come near.
func (p *Plan) Explain(name Part) []string {
	if words, ok := p.words[name]; ok {
		return append([]string(nil), words...)
	}
	if _, ok := p.Piece(name); ok {
		return nil
	}
	var have []string
	for i := range p.pieces {
		have = append(have, string(p.pieces[i].Part))
	}
	for i := range p.wholes {
		have = append(have, string(p.wholes[i].Part))
	}
	line := fmt.Sprintf("The plan has no part %.60q", string(name))
	if n := nearest(string(name), have); n != "" {
		return []string{line + ": " + n + "?"}
	}
	return []string{line + "; it has " + strings.Join(have, ", ") + "."}
}

// Mesh is the closed surface of a part in the world.
func (p *Plan) Mesh(name Part) (*solid.Mesh, error) {
	q, ok := p.Piece(name)
	if !ok {
		return nil, Problem{Path: string(name), Code: "unknown-part", Why: "the plan has no such part"}
	}
	return q.Body.Mesh(p.chord)
}

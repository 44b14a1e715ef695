package flat

import "cmp"

// Kind is what an item is for. Its word is the first part of the layer's name.
type Kind int

// The kinds, in the order in which layers are listed.
const (
	Profile Kind = iota // the machined face: the line to cut along
	Face                // the outline of the far face, a line to mark
	Bore
	Fixing // holes for screws and nails
	Opening
	Pocket
	Rebate
	Housing
	Groove
	Notch
	Mark
	Engrave // along lines
	Grain   // the grain arrow
	Size    // overall sizes
	Text
	Stock       // the edge of a sheet, board or length
	Trim        // what is cut off its edges and ends first
	Blank       // the rectangle that is sawn for a part
	Saw         // the middle of a saw cut
	Offcut      // what is left and worth keeping
	Defect      // what parts keep clear of
	Balloon     // round a part's number
	kinds   int = iota
)

// words is never changed.
var words = [kinds]string{
	"PROFILE", "FACE", "BORE", "FIXING", "OPENING", "POCKET", "REBATE", "HOUSING", "GROOVE",
	"NOTCH", "MARK", "ENGRAVE", "GRAIN", "SIZE", "TEXT",
	"STOCK", "TRIM", "BLANK", "SAW", "OFFCUT", "DEFECT", "BALLOON",
}

// Kinds is the number of kinds: they count from 0.
const Kinds = kinds

// Word is the kind in capitals, as it stands in a layer's name.
func (k Kind) Word() string {
	if k < 0 || int(k) >= kinds {
		return "MARK"
	}
	return words[k]
}

// Cuts reports whether a tool follows the items of this kind.
func (k Kind) Cuts() bool { return k < Grain && k != Face }

// View is the side from which a panel is seen.
type View int

// The views.
const (
	AsMachined View = iota // from the tool, on the machined face
	Turned                 // turned over like a page: mirrored, the far face up
	AtEdge                 // seen as machined, but inside the thickness, reached from an edge
)

// Layer is a set of items that are one job: work of one kind, one depth, one
// view. Depths are in grid steps below the face that is up in its view.
//
// A name is built from left to right of
//
//	TURNED_ or FAR_ or EDGE_   the view: FAR only for the far face's outline in
//	                           the view as machined
//	the kind                   PROFILE BORE FIXING OPENING POCKET REBATE HOUSING
//	                           GROOVE NOTCH MARK ENGRAVE FACE, or GRAIN SIZE TEXT, and on
//	                           stock STOCK TRIM BLANK SAW OFFCUT
//	                           DEFECT BALLOON
//	_FROM                      where the work begins, if not at the face
//	_TO                        its depth in mm: 5.0, 14.6
//	_BOTTOM                    for the outline of its bottom, where walls tilt
//
// as in PROFILE_14.6, FAR_FACE_14.6, HOUSING_5.0, TURNED_POCKET_3.0,
// EDGE_GROOVE_4.0_9.0.
type Layer struct {
	View     View
	Kind     Kind
	From, To int64
	Bottom   bool
}

// at is the layer of a kind of work between two depths in mm.
func at(view View, kind Kind, from, to float64) Layer {
	return Layer{View: view, Kind: kind, From: ticks(from), To: ticks(to)}
}

// Name is the layer's name, in capitals, digits, "_" and the point of the
// depth.
func (l Layer) Name() string {
	var b []byte
	switch {
	case l.View == Turned:
		b = append(b, "TURNED_"...)
	case l.View == AtEdge:
		b = append(b, "EDGE_"...)
	case l.Kind == Face:
		b = append(b, "FAR_"...)
	}
	b = append(b, l.Kind.Word()...)
	if l.From != 0 {
		b = appendTicks(append(b, '_'), l.From, 1)
	}
	if l.To != 0 {
		b = appendTicks(append(b, '_'), l.To, 1)
	}
	if l.Bottom {
		b = append(b, "_BOTTOM"...)
	}
	return string(b)
}

// Depth is how deep the work goes, in mm below the face that is up.
func (l Layer) Depth() float64 { return float64(l.To) / 1e4 }

// Dashed reports whether the layer shows what cannot be seen or is not cut.
func (l Layer) Dashed() bool {
	return l.Kind == Face && l.View != Turned || l.View == AtEdge || l.Bottom || l.Kind == Trim || l.Kind == Offcut || l.Kind == Saw
}

// Compare orders layers: by view, kind, depth and bottoms last.
func (l Layer) Compare(m Layer) int {
	bottom := 0
	if l.Bottom != m.Bottom {
		bottom = 1
		if m.Bottom {
			bottom = -1
		}
	}
	return cmp.Or(
		cmp.Compare(l.View, m.View), cmp.Compare(l.Kind, m.Kind),
		cmp.Compare(l.To, m.To), cmp.Compare(l.From, m.From), bottom)
}

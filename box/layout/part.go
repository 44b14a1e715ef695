package layout

import "holt.example/box/outline"

// Grain is the direction of the grain in a drawing or on a piece of stock.
type Grain int

// The directions of grain. A part or stock without grain (the zero value) lies
// any way round.
const (
	NoGrain Grain = iota
	AlongX
	AlongY
)

// String is the name of the direction.
func (g Grain) String() string {
	switch g {
	case AlongX:
		return "along x"
	case AlongY:
		return "along y"
	}
	return "none"
}

// Part is something wanted, in any number.
type Part struct {
	ID    string // names the part in problems and lists; need not be unique
	Label string // what to write on it; "" takes the ID

	// Outline is the shape of the finished part in its own frame, in mm, seen
	// on the face that is uppermost when cut: anticlockwise outside, clockwise
	// holes. A hole is material that other parts may use.
	Outline outline.Region

	Quantity int // how many; 0 counts as 1

	Thickness float64 // mm, matched to the stock within ThicknessMatch; 0 fits any
	Material  string  // matched to the stock, capitals or not; "" fits any

	Grain Grain // must lie along the stock's grain if both have one

	// Turns lists the turns allowed, in degrees anticlockwise; nil allows the
	// four quarter turns. Turns against the grain are left out. Saw layouts and
	// lengths use quarter turns only.
	Turns []float64

	// TurnOver allows the part to be cut from its other face: mirrored. One
	// rough face forbids it.
	TurnOver bool

	Allowance float64  // mm kept all round, for an oversize blank; 0 or more
	Tolerates []string // kinds of defects that may lie within the part

	// Priority decides what is placed when there is not enough stock: higher
	// goes first. Parts of one priority go by size.
	Priority int

	// Worth is the value of one piece for [Fill]; 0 takes its area.
	Worth float64
}

// ThicknessMatch is the difference, in mm, up to which a part's thickness
// counts as that of the stock. Measured boards differ by about as much over
// their own length (common practice).
const ThicknessMatch = 0.1

// quantity is how many are wanted.
func (p *Part) quantity() int {
	if p.Quantity == 0 {
		return 1
	}
	return p.Quantity
}

// name is the ID, or a stand-in for an empty one.
func (p *Part) name() string {
	if p.ID == "" {
		return "part"
	}
	return p.ID
}

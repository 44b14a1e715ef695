package layout

import "holt.example/box/outline"

// Stock is a kind of sheet, board or length that can be bought, or an offcut
// that is already there. Its frame has the origin at a corner, x along Length
// and y along Width.
type Stock struct {
	Name      string
	Material  string  // matched to the parts, capitals or not; "" fits any
	Length    float64 // mm along x
	Width     float64 // mm along y
	Thickness float64 // mm as measured; 0 fits any
	Grain     Grain   // NoGrain: parts lie any way round

	// End is cut off both ends (left and right, where boards are sawn or split:
	// 25 to 50 is common practice), Edge off both edges (bottom and top), in mm.
	End, Edge float64

	// Price is that of one piece, in any currency. If no stock of a job has a
	// price, the cost is counted in used stock: square metres, or metres of
	// length in Lengths.
	Price float64

	Count int // how many there are; 0 is as many as wanted, and 1 for an offcut

	// Offcut marks a piece from the shed: it costs nothing, whatever its price,
	// and is used before anything is bought if that does not cost more. One more
	// in the shed never raises the cost: unless that is proved least, a job is
	// laid out again with offcuts left out: in Saw and Lengths every choice of up
	// to three kinds, in Free all of them.
	Offcut bool

	// Defects are to be avoided, on every copy of this stock.
	Defects []Defect
}

// Defect is a knot, a split or a bad edge: a rectangle in the frame of the
// stock. In a length only its extent along x counts.
type Defect struct {
	Kind string // compared with Part.Tolerates
	Box  outline.Box
}

// count is how many pieces there are; 0 is no limit.
func (s *Stock) count() int {
	if s.Offcut && s.Count == 0 {
		return 1
	}
	return s.Count
}

// price is what one piece costs.
func (s *Stock) price(priced bool, unit func(*Stock) float64) float64 {
	switch {
	case s.Offcut:
		return 0
	case priced:
		return s.Price
	}
	return unit(s)
}

// Job is what is wanted, what there is, and how hard to look.
type Job struct {
	Parts []Part
	Stock []Stock

	// Seed starts the random choices of the search. Every value is as good as
	// another; the same value gives the same layout.
	Seed uint64

	// Effort is the number of iterations of the search over all streams; what
	// one iteration is depends on the way of cutting and is said there. 0 is a
	// default of its own for each; a negative value takes the first layout
	// constructed.
	Effort int

	// Streams is the number of searches that share the effort and run side by
	// side; the best result counts, the first of equals. It changes the result,
	// the number of processors does not. 0 is 1.
	Streams int
}

// MostParts and MostStreams are the most pieces one job may ask for, and the
// most searches side by side.
const (
	MostParts   = 100_000
	MostStreams = 64
)

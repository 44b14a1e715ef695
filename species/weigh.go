package species

import (
	"fmt"
	"math"
	"strings"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/species/timber"
)

// Weight is what a box weighs and where.
type Weight struct {
	Mass   float64   // kg, without fixings and what lives in it
	Centre box.Place // of mass, the box closed
	Parts  []PartWeight
}

// PartWeight is what a part weighs and where.
type PartWeight struct {
	Part    box.Part
	Mass    float64 // kg
	Centre  box.Place
	Density float64 // kg/m3
	// From is the key of the density's source, "" where the board states it.
	From string
}

// Weigh gives the mass and the centre of mass of every part and of the box. The
// density is that of the board where it states one, else that of the wood its
// material names, at 12 % moisture content. A nil plan, a density that is none
// and a material of unknown density are a box.Problem, which names the woods that may
// be meant; see timber.Get for the names of woods.
func Weigh(plan *box.Plan) (Weight, error) { return new(look).weigh(plan, 0) }

// weigh takes a density for the parts of which none is known, 0 for none. It finds
// woods with the look, which remembers them, and asks nothing else of it.
func (l *look) weigh(plan *box.Plan, unknown float64) (Weight, error) {
	var w Weight
	if plan == nil {
		return w, box.Problem{Path: "Weigh.plan", Code: "nil-plan", Why: "there is no plan to weigh: resolve the design first"}
	}
	var moment solid.Vec
	for _, q := range plan.Pieces() {
		p := PartWeight{Part: q.Part, Density: q.Board.Density}
		if p.Density == 0 {
			wood, err := l.woodNamed(q.Board.Material)
			d, ok := wood.Density()
			if !ok && unknown > 0 {
				d, ok, err = timber.Figure{Value: unknown}, true, nil
			}
			if err != nil || !ok {
				return Weight{}, noDensity(q)
			}
			p.Density, p.From = d.Value, d.Source
		}
		m, err := plan.Mesh(q.Part)
		if err != nil {
			return Weight{}, err
		}
		var c solid.Vec
		c, err = centroid(m)
		if err != nil {
			return Weight{}, err
		}
		p.Mass, err = timber.Mass(q.Volume, p.Density)
		if err != nil {
			return Weight{}, box.Problem{Path: "Boards[" + string(q.Part) + "].Density", Code: "range", Got: num(p.Density), Lo: 1, Hi: 25000, Unit: "kg/m3", Why: err.Error()}
		}
		p.Centre = box.Place{X: box.MM(c.X), Y: box.MM(c.Y), Z: box.MM(c.Z)}
		w.Parts = append(w.Parts, p)
		w.Mass += p.Mass
		moment = moment.Add(c.Scale(p.Mass))
	}
	if w.Mass > 0 {
		c := moment.Scale(1 / w.Mass)
		w.Centre = box.Place{X: box.MM(c.X), Y: box.MM(c.Y), Z: box.MM(c.Z)}
	}
	return w, nil
}

// noDensity says that a part cannot be weighed, and what its material may mean.
func noDensity(q box.Piece) box.Problem {
	p := box.Problem{Path: "Boards[" + string(q.Part) + "].Density", Code: "no-density", Got: fmt.Sprintf("%.80q", q.Board.Material), Lo: 1, Hi: 25000, Unit: "kg/m3",
		Why: fmt.Sprintf("%s has no density, and its material names no wood that is known", q.Part)}
	if near := timber.NamesNear(q.Board.Material); len(near) > 0 {
		p.Try = "the material " + strings.Join(near, ", ") + ", if it is one of these"
	}
	return p
}

// centroid is the centre of the volume of a closed mesh: tetrahedra from its
// first vertex to every triangle, each with its signed volume.
func centroid(m *solid.Mesh) (solid.Vec, error) {
	if len(m.Vertices) == 0 {
		return solid.Vec{}, box.Problem{Path: "Weigh.plan", Code: "no-solid", Why: "a part has no surface"}
	}
	o := m.Vertices[0]
	var sum solid.Vec
	volume := 0.0
	for _, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]].Sub(o), m.Vertices[t[1]].Sub(o), m.Vertices[t[2]].Sub(o)
		v := a.Cross(b).Dot(c) // six times the volume
		volume += v
		sum = sum.Add(a.Add(b).Add(c).Scale(v))
	}
	if !(volume > 0) {
		return solid.Vec{}, box.Problem{Path: "Weigh.plan", Code: "no-solid", Why: "a part encloses nothing"}
	}
	return o.Add(sum.Scale(1 / float64(4*volume))), nil
}

// Gravity is the acceleration of free fall in m/s2, the standard value.
const Gravity = 9.80665

// Pull is the load in N that draws the upper fixing out of the wall, for a box
// hung on it by a height and resting against the wall at its foot: the weight
// turns it about the foot, m g a / h, with a from the wall to the centre of mass
// and h from the foot up to the fixing. wall is the y of the wall's surface,
// behind the box; load is further mass in kg, of nest and animals, at the same
// place. It is geometry only: rate the fixing for several times as much.
//
// NaN comes of a fixing that is not above the foot.
func (w Weight) Pull(wall, fixing, foot box.MM, load float64) float64 {
	h := float64(fixing - foot)
	if !(h > 0) {
		return math.NaN()
	}
	a := float64(wall - w.Centre.Y)
	return float64(float64((w.Mass+load)*Gravity)*a) / h
}

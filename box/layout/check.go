package layout

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"holt.example/box/outline"
)

// The ranges of what a job may say, in mm; those of contours (outline.Limit)
// are wider than any workshop.
const (
	mostSize     = 50_000
	mostCorners  = 20_000
	leastSize    = 1e-3
	sameWidth    = 1e-6 // sizes that differ by less count as equal
	defaultKeep  = 100
	defaultLeast = 300
)

var inf = math.Inf(1)

// checked is a job whose bad parts and stock are left out.
type checked struct {
	job      *Job
	part     []bool // usable
	stock    []bool
	ext      []outline.Box // extents of the parts
	priced   bool
	problems Problems
}

func (c *checked) add(path, code, got string, lo, hi float64, why, try string) {
	unit := ""
	if !math.IsInf(lo, 0) || !math.IsInf(hi, 0) {
		unit = "mm"
	}
	c.problems = append(c.problems, Problem{Path: path, Code: code, Got: got, Lo: lo, Hi: hi, Unit: unit, Why: why, Try: try})
}

// within adds a problem unless lo <= x <= hi.
func (c *checked) within(path string, x, lo, hi float64, why string) bool {
	if x >= lo && x <= hi {
		return true
	}
	c.add(path, CodeRange, num(x), lo, hi, why, "")
	return false
}

// check looks at everything but the rules. It reports false if nothing can be
// laid out at all.
func check(job *Job) (*checked, bool) {
	c := &checked{job: job, part: make([]bool, len(job.Parts)), stock: make([]bool, len(job.Stock)), ext: make([]outline.Box, len(job.Parts))}
	if len(job.Parts) == 0 {
		c.add("Parts", CodeNoParts, "", 0, 0, "nothing is wanted", "")
	}
	if len(job.Stock) == 0 {
		c.add("Stock", CodeNoStock, "", 0, 0, "there is nothing to cut from", "")
	}
	if !(job.Streams >= 0 && job.Streams <= MostStreams) {
		c.add("Streams", CodeRange, fmt.Sprint(job.Streams), 0, MostStreams, "number of streams out of range", "")
		c.problems[len(c.problems)-1].Unit = ""
	}
	if len(c.problems) > 0 {
		return c, false
	}
	total := 0
	for i := range job.Parts {
		if q := job.Parts[i].Quantity; q > 0 {
			if q > MostParts-total {
				c.add(fmt.Sprintf("Parts[%d].Quantity", i), CodeLimit, fmt.Sprint(q), -inf, inf,
					fmt.Sprintf("a job has at most %d pieces", MostParts), "lay out in several jobs")
				return c, false
			}
			total += q
		}
	}
	if len(job.Parts) > MostParts || len(job.Stock) > MostParts {
		c.add("Parts", CodeLimit, fmt.Sprint(len(job.Parts)), -inf, inf, fmt.Sprintf("a job has at most %d parts and kinds of stock", MostParts), "")
		return c, false
	}
	any := false
	for i := range job.Stock {
		c.stock[i] = c.checkStock(i)
		any = any || c.stock[i]
		c.priced = c.priced || c.stock[i] && !job.Stock[i].Offcut && job.Stock[i].Price > 0
	}
	for i := range job.Parts {
		c.part[i] = c.checkPart(i)
	}
	return c, any
}

// leaveOut makes no use of some of the stock.
func (c *checked) leaveOut(skip []bool) {
	for s, no := range skip {
		c.stock[s] = c.stock[s] && !no
	}
}

func (c *checked) checkStock(i int) bool {
	s := &c.job.Stock[i]
	path := fmt.Sprintf("Stock[%d].", i)
	n := len(c.problems)
	c.within(path+"Length", s.Length, leastSize, mostSize, "length out of range")
	c.within(path+"Width", s.Width, leastSize, mostSize, "width out of range")
	c.within(path+"Thickness", s.Thickness, 0, mostSize, "thickness out of range")
	c.within(path+"Price", s.Price, 0, 1e9, "price out of range")
	if len(c.problems) > n && c.problems[len(c.problems)-1].Path == path+"Price" {
		c.problems[len(c.problems)-1].Unit = ""
	}
	if len(c.problems) == n {
		if !(s.End >= 0 && 2*s.End < s.Length) {
			c.add(path+"End", CodeRange, num(s.End), 0, s.Length/2, "trim leaves nothing", "")
		}
		if !(s.Edge >= 0 && 2*s.Edge < s.Width) {
			c.add(path+"Edge", CodeRange, num(s.Edge), 0, s.Width/2, "trim leaves nothing", "")
		}
	}
	if s.Count < 0 {
		c.add(path+"Count", CodeRange, fmt.Sprint(s.Count), -inf, inf, "a negative number", "")
	}
	if s.Grain < NoGrain || s.Grain > AlongY {
		c.add(path+"Grain", CodeRange, fmt.Sprint(int(s.Grain)), -inf, inf, "no such direction", "")
	}
	if len(s.Defects) > 1000 {
		c.add(path+"Defects", CodeLimit, fmt.Sprint(len(s.Defects)), -inf, inf, "at most 1000 defects", "")
	}
	for j, d := range s.Defects {
		b := d.Box
		if !(b.Min.X >= -mostSize && b.Max.X <= mostSize && b.Min.Y >= -mostSize && b.Max.Y <= mostSize && b.Min.X <= b.Max.X && b.Min.Y <= b.Max.Y) {
			c.add(fmt.Sprintf("%sDefects[%d].Box", path, j), CodeRange, "", -inf, inf, "not a rectangle", "")
			break
		}
	}
	return len(c.problems) == n
}

func (c *checked) checkPart(i int) bool {
	p := &c.job.Parts[i]
	path := fmt.Sprintf("Parts[%d].", i)
	n := len(c.problems)
	corners := 0
	for _, k := range p.Outline {
		corners += len(k)
	}
	switch {
	case corners == 0:
		c.add(path+"Outline", CodeOutline, p.ID, -inf, inf, "there is no outline", "")
	case corners > mostCorners:
		c.add(path+"Outline", CodeLimit, p.ID, -inf, inf, fmt.Sprintf("an outline has at most %d vertices", mostCorners), "")
	default:
		if err := p.Outline.Check(); err != nil {
			c.add(path+"Outline", CodeOutline, p.ID, -inf, inf, err.Error(), "")
		} else {
			c.ext[i] = p.Outline.Extents()
			if w, h := c.ext[i].Width(), c.ext[i].Height(); !(w >= leastSize && h >= leastSize && w <= mostSize && h <= mostSize) {
				c.add(path+"Outline", CodeRange, num(w)+" x "+num(h), leastSize, mostSize, "size out of range", "")
			}
		}
	}
	if p.Quantity < 0 {
		c.add(path+"Quantity", CodeRange, fmt.Sprint(p.Quantity), -inf, inf, "a negative number", "")
	}
	c.within(path+"Thickness", p.Thickness, 0, mostSize, "thickness out of range")
	c.within(path+"Allowance", p.Allowance, 0, mostSize, "allowance out of range")
	if !(p.Worth >= 0 && p.Worth <= 1e15) {
		c.add(path+"Worth", CodeRange, num(p.Worth), -inf, inf, "worth out of range", "")
	}
	if p.Grain < NoGrain || p.Grain > AlongY {
		c.add(path+"Grain", CodeRange, fmt.Sprint(int(p.Grain)), -inf, inf, "no such direction", "")
	}
	if len(p.Turns) > 360 {
		c.add(path+"Turns", CodeLimit, fmt.Sprint(len(p.Turns)), -inf, inf, "at most 360 turns", "")
	}
	for _, t := range p.Turns {
		if !(t >= -360 && t <= 360) {
			c.add(path+"Turns", CodeRange, num(t), -360, 360, "turn out of range", "")
			c.problems[len(c.problems)-1].Unit = "deg"
			break
		}
	}
	return len(c.problems) == n
}

// suits says whether stock s is of the material and thickness of part p; the
// code is that of the reason why not.
func suits(p *Part, s *Stock) (code string, ok bool) {
	if p.Material != "" && s.Material != "" && !strings.EqualFold(p.Material, s.Material) {
		return CodeMaterial, false
	}
	if p.Thickness > 0 && s.Thickness > 0 && !(math.Abs(p.Thickness-s.Thickness) <= ThicknessMatch) {
		return CodeThickness, false
	}
	return "", true
}

// pose is a way to lay a part down.
type pose struct {
	turn float64
	over bool
}

// turnMap is the pose as a map about the origin.
func (t pose) turnMap() outline.Affine {
	return Placement{Turn: t.turn, Over: t.over}.Map()
}

// turns lists the turns allowed on the stock, from 0 up, each once.
func turns(p *Part, s *Stock) []float64 {
	list := p.Turns
	if list == nil {
		list = []float64{0, 90, 180, 270}
	}
	out := make([]float64, 0, len(list))
next:
	for _, t := range list {
		t = math.Mod(t, 360)
		if t < 0 {
			t += 360
		}
		if p.Grain != NoGrain && s.Grain != NoGrain {
			want := 0.0 // modulo 180
			if p.Grain != s.Grain {
				want = 90
			}
			if math.Abs(math.Mod(t, 180)-want) > 1e-9 {
				continue
			}
		}
		for _, u := range out {
			if u == t {
				continue next
			}
		}
		out = append(out, t)
	}
	return out
}

// poses lists the turns allowed, face up and then turned over.
func poses(p *Part, s *Stock) []pose {
	var out []pose
	for _, t := range turns(p, s) {
		out = append(out, pose{t, false})
	}
	if p.TurnOver {
		for _, t := range turns(p, s) {
			out = append(out, pose{t, true})
		}
	}
	return out
}

// quarter says whether a turn is by quarters, and whether it is upright: x and
// y change places.
func quarter(t float64) (ok, upright bool) {
	m := math.Mod(t, 90)
	return m == 0, m == 0 && math.Mod(t, 180) != 0
}

// avoids says whether the part must not lie on the defect.
func avoids(p *Part, d *Defect) bool {
	for _, k := range p.Tolerates {
		if k == d.Kind {
			return false
		}
	}
	return true
}

// told lists what the kinds of stock have in a word, each word once.
func (c *checked) told(word func(*Stock) string) string {
	var ws []string
	for i := range c.job.Stock {
		if w := word(&c.job.Stock[i]); !slices.Contains(ws, w) {
			ws = append(ws, w)
		}
	}
	return strings.Join(ws, ", ")
}

// refuse adds the problem of a part of which n pieces cannot be placed.
func (c *checked) refuse(part, n int, code string) {
	p := &c.job.Parts[part]
	why := map[string]string{
		CodeNoStock:  "no stock is fit for use",
		CodeTooLarge: "larger than any stock of its kind, trims and margins taken off",
		CodeGrain:    "it would fit only across the grain",
		CodeTurns:    "it would fit only by a turn that is not allowed",
		CodeBed:      "larger than the bed of the machine within its clamp margin",
		CodeDefect:   "too large to lie clear of the defects",
		CodeLeast:    "it could be cut only by ripping a piece shorter than allowed",
		CodeStages:   "it could be cut only with more stages than allowed",
		CodeNoneLeft: "no stock that fits it is left",
	}[code]
	try := map[string]string{
		CodeBed:      "the saw",
		CodeGrain:    "wider stock",
		CodeNoneLeft: "more stock",
		CodeLeast:    "a hand saw",
	}[code]
	switch code {
	case CodeMaterial:
		why = fmt.Sprintf("it is of %q, and the stock of %s", p.Material, c.told(func(s *Stock) string { return strconv.Quote(s.Material) }))
	case CodeThickness:
		why = fmt.Sprintf("it is %s thick, and the stock %s: thicknesses measured may differ by %s",
			num(p.Thickness), c.told(func(s *Stock) string { return num(s.Thickness) }), num(ThicknessMatch))
		try = "the thickness measured of the stock, and boards of that thickness in the design"
	}
	if q := p.quantity(); n < q || q > 1 {
		why += fmt.Sprintf(" (%d of %d)", n, q)
	}
	e := c.ext[part]
	got := p.name() + " " + num(e.Width()) + " x " + num(e.Height())
	c.add(fmt.Sprintf("Parts[%d]", part), code, got, -inf, inf, why, try)
}

package box

import (
	"fmt"
	"math"
	"reflect"
	"sort"
	"strconv"
	"strings"
)

// The limits of what can be designed (DEVELOPERS.md says why).
const (
	minLength    = 1.0
	maxLength    = 10000.0
	minThickness = 0.5
	maxThickness = 1000.0
	minPitch     = 1.0
	maxPitch     = 75.0
	maxLean      = 60.0
	maxBevel     = 60.0
	maxName      = 200
)

// collector gathers problems; nothing stops at the first.
type collector struct {
	ps   []Problem
	seen map[string]bool
}

func (c *collector) add(p Problem) {
	key := p.Path + "\x00" + p.Code + "\x00" + p.Why
	if c.seen == nil {
		c.seen = map[string]bool{}
	}
	if c.seen[key] {
		return
	}
	c.seen[key] = true
	c.ps = append(c.ps, p)
}

func (c *collector) addf(path, code, format string, args ...any) {
	c.add(Problem{Path: path, Code: code, Why: fmt.Sprintf(format, args...)})
}

// within checks a number in any unit; NaN is never within.
func (c *collector) within(path string, x, lo, hi float64, unit, why string) bool {
	if x >= lo && x <= hi {
		return true
	}
	c.add(Problem{Path: path, Code: "range", Got: num(x), Lo: lo, Hi: hi, Unit: unit, Why: why})
	return false
}

// isPointer reports whether a value is a pointer: designs hold plain values, but a
// pointer to one has its methods too.
func isPointer(x any) bool { return x != nil && reflect.TypeOf(x).Kind() == reflect.Pointer }

// strange reports a value of a type that is none of those that will do; most often
// a pointer to one.
func (c *collector) strange(path string, x any, what string) {
	a := "a "
	if strings.ContainsRune("aeiou", rune(what[0])) {
		a = "an "
	}
	p := Problem{Path: path, Code: "unknown-value", Why: fmt.Sprintf("%T is not %s%s", x, a, what)}
	if t := reflect.TypeOf(x); t != nil && t.Kind() == reflect.Pointer && t.Elem().PkgPath() == reflect.TypeFor[Design]().PkgPath() {
		p.Try = fmt.Sprintf("%s{...}, without &", t.Elem())
	}
	c.add(p)
}

// inches asks whether a size was meant in inches.
func inches(x float64) string { return "box.Inch(" + num(x) + "), if these are inches" }

func (c *collector) length(path string, x MM, why string) bool {
	return c.within(path, float64(x), minLength, maxLength, "mm", why)
}

// atLeast0 checks a size that may be zero.
func (c *collector) atLeast0(path string, x MM, why string) bool {
	return c.within(path, float64(x), 0, maxLength, "mm", why)
}

func (c *collector) offset(path string, x MM, why string) bool {
	return c.within(path, float64(x), -maxLength, maxLength, "mm", why)
}

// err returns the problems sorted by path, or a nil error.
func (c *collector) err() error {
	if len(c.ps) == 0 {
		return nil
	}
	ps := append([]Problem(nil), c.ps...)
	sort.SliceStable(ps, func(i, j int) bool {
		if ps[i].Path != ps[j].Path {
			return ps[i].Path < ps[j].Path
		}
		return ps[i].Code < ps[j].Code
	})
	return Problems(ps)
}

// name checks a name that stands in lists and becomes part of file names. Any
// printable text will do; writers escape it.
func (c *collector) name(path, s string) {
	switch {
	case s == "":
		c.addf(path, "no-name", "a name is needed: it stands in lists, files and drawings")
	case len(s) > maxName:
		c.add(Problem{Path: path, Code: "long-name", Got: strconv.Itoa(len(s)) + " bytes", Hi: maxName, Lo: 1, Unit: "bytes", Why: "a name this long fits no list"})
	default:
		for _, r := range s {
			if r < ' ' || r == 0x7f || (r >= 0x80 && r < 0xa0) || r == 0xfffd {
				c.add(Problem{Path: path, Code: "control-character", Got: strconv.QuoteToASCII(s), Why: "a name has no control characters and is valid UTF-8"})
				return
			}
		}
	}
}

func (c *collector) board(path string, b Board, required bool) {
	if b == (Board{}) && !required {
		return
	}
	c.within(path+".Thickness", float64(b.Thickness), minThickness, maxThickness, "mm", "thickness of the board")
	opt := func(field string, x MM) {
		if x != 0 {
			c.within(path+"."+field, float64(x), minThickness, maxThickness, "mm", "measured thickness")
		}
	}
	opt("Measured", b.Measured)
	opt("Least", b.Least)
	opt("Most", b.Most)
	if b.Least != 0 && b.Most != 0 && b.Least > b.Most {
		c.add(Problem{Path: path + ".Least", Code: "order", Got: num(float64(b.Least)), Lo: minThickness, Hi: float64(b.Most), Unit: "mm", Why: "the least thickness is above the most"})
	}
	if b.Measured != 0 && !(b.Least != 0 && b.Most != 0 && b.Least > b.Most) {
		if b.Least != 0 && b.Measured < b.Least || b.Most != 0 && b.Measured > b.Most {
			c.add(Problem{Path: path + ".Measured", Code: "order", Got: num(float64(b.Measured)), Lo: float64(b.Least), Hi: float64(b.Most), Unit: "mm", Why: "the measured thickness lies between the least and the most"})
		}
	}
	if b.Width != 0 {
		c.length(path+".Width", b.Width, "width of the board")
	}
	c.within(path+".Density", b.Density, 0, 3000, "kg/m3", "density of the timber; 0 leaves the mass out")
	if b.Material != "" {
		c.name(path+".Material", b.Material)
	}
	if b.Grain < GrainAuto || b.Grain > GrainNone {
		c.add(Problem{Path: path + ".Grain", Code: "unknown-value", Got: strconv.Itoa(int(b.Grain)), Why: "no such grain direction", Try: "box.GrainAuto"})
	}
}

// most is the thickness that parts are cut for.
func (b Board) most() float64 {
	for _, x := range []MM{b.Most, b.Measured, b.Thickness} {
		if x != 0 {
			return math.Max(float64(x), float64(b.Least))
		}
	}
	return 0
}

// decides is the field that the thickness comes from.
func (b Board) decides() string {
	for _, x := range []struct {
		field string
		x     MM
	}{{".Most", b.Most}, {".Measured", b.Measured}, {".Thickness", b.Thickness}} {
		if x.x == 0 {
			continue
		}
		if b.Least > x.x {
			break
		}
		return x.field
	}
	return ".Least"
}

// least is the thickness that lips are reckoned with.
func (b Board) least() float64 {
	for _, x := range []MM{b.Least, b.Measured, b.Thickness} {
		if x != 0 {
			return math.Min(float64(x), b.most())
		}
	}
	return 0
}

// enum checks a value of a small set 0..hi.
func (c *collector) enum(path string, x, hi int, try string) {
	if x < 0 || x > hi {
		c.add(Problem{Path: path, Code: "unknown-value", Got: strconv.Itoa(x), Lo: 0, Hi: float64(hi), Why: "no such choice", Try: try})
	}
}

// has reports whether the same number is refused already, for the same range.
func (c *collector) has(p Problem) bool {
	for _, q := range c.ps {
		if q.Path == p.Path && q.Code == p.Code && q.Got == p.Got && q.Unit == p.Unit && sameBits(q.Lo, p.Lo) && sameBits(q.Hi, p.Hi) {
			return true
		}
	}
	return false
}

func sameBits(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }

// under reports whether there are problems at a path or below it.
func (c *collector) under(path string) bool {
	for _, p := range c.ps {
		if strings.HasPrefix(p.Path, path) {
			return true
		}
	}
	return false
}

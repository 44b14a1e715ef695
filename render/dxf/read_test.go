package dxf

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"holt.example/box/outline"
	"holt.example/render/internal/flat"
)

// tag is a group code and its value.
type tag struct {
	code  int
	value string
}

// entity is a run of tags from one code 0 to the next.
type entity []tag

func (e entity) kind() string { return e[0].value }

// get is the first value of a code, "" if there is none.
func (e entity) get(code int) string {
	for _, t := range e {
		if t.code == code {
			return t.value
		}
	}
	return ""
}

func (e entity) num(t *testing.T, code int) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(e.get(code), 64)
	if err != nil {
		t.Fatalf("%s: code %d: %v", e.kind(), code, err)
	}
	return x
}

// drawing is a file as this test understands it: its entities by section.
type drawing struct {
	sections map[string][]entity
	header   map[string]string // first value of each variable
	comments []string
}

// parse reads tags and complains of everything that is not as the format has
// it.
func parse(t *testing.T, b []byte) drawing {
	t.Helper()
	for i, c := range b {
		if c > 0x7E || c < 0x20 && c != '\r' && c != '\n' {
			t.Fatalf("byte %d is %#x: want printable ASCII", i, c)
		}
	}
	lines := strings.Split(string(b), newline)
	if lines[len(lines)-1] != "" || len(lines)%2 != 1 {
		t.Fatalf("%d lines: want pairs and a newline at the end", len(lines)-1)
	}
	d := drawing{sections: map[string][]entity{}, header: map[string]string{}}
	var section, variable string
	var now *entity
	for i := 0; i+1 < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil || strings.ContainsAny(lines[i+1], "\r\n") {
			t.Fatalf("line %d: %q, %q: %v", i+1, lines[i], lines[i+1], err)
		}
		g := tag{code, lines[i+1]}
		number(t, g)
		switch {
		case code == 999:
			d.comments = append(d.comments, g.value)
		case code == 0 && g.value == "SECTION":
			i += 2
			section = lines[i+1]
			if _, twice := d.sections[section]; twice {
				t.Fatalf("section %s twice", section)
			}
			d.sections[section] = nil
		case code == 0 && g.value == "ENDSEC":
			section, now = "", nil
		case code == 0 && g.value == "EOF":
			if i+3 != len(lines) {
				t.Fatal("there is something after EOF")
			}
			return d
		case section == "HEADER" && code == 9:
			variable = g.value
		case section == "HEADER":
			if _, ok := d.header[variable]; !ok {
				d.header[variable] = g.value
			}
		case section == "":
			t.Fatalf("%v between the sections", g)
		case code == 0:
			d.sections[section] = append(d.sections[section], entity{g})
			now = &d.sections[section][len(d.sections[section])-1]
		default:
			*now = append(*now, g)
		}
	}
	t.Fatal("no EOF")
	return d
}

// number checks the form of a value by its code: reals have a point, at most
// four decimals (bulges twelve), no exponent and no negative zero.
func number(t *testing.T, g tag) {
	t.Helper()
	real := g.code >= 10 && g.code < 60 || g.code >= 140 && g.code < 150
	if !real {
		if g.code >= 60 && g.code < 80 || g.code >= 280 && g.code < 290 || g.code == 90 || g.code == 370 {
			if _, err := strconv.Atoi(g.value); err != nil {
				t.Fatalf("%v: want a whole number", g)
			}
		}
		return
	}
	most := 4
	if g.code == 42 {
		most = 12
	}
	whole, decimals, ok := strings.Cut(strings.TrimPrefix(g.value, "-"), ".")
	if !ok || whole == "" || decimals == "" || len(decimals) > most || strings.Trim(whole+decimals, "0123456789") != "" {
		t.Fatalf("%v: want a plain number with a point and at most %d decimals", g, most)
	}
	if strings.HasPrefix(g.value, "-") && strings.Trim(g.value, "-0.") == "" {
		t.Fatalf("%v: negative zero", g)
	}
}

// shapes are the closed contours and the circles of a drawing by layer.
type shapes struct {
	contours map[string]outline.Region
	circles  map[string][]flat.Circle
	lines    map[string]int
	texts    map[string][]string
}

// shapes reads the entities of both dialects.
func (d drawing) shapes(t *testing.T) shapes {
	t.Helper()
	s := shapes{map[string]outline.Region{}, map[string][]flat.Circle{}, map[string]int{}, map[string][]string{}}
	es := d.sections["ENTITIES"]
	for i := 0; i < len(es); i++ {
		e := es[i]
		layer := e.get(8)
		switch e.kind() {
		case "LWPOLYLINE":
			if e.get(70) != "1" {
				t.Errorf("a polyline on %s is not closed", layer)
			}
			var c outline.Contour
			for _, g := range e {
				x, _ := strconv.ParseFloat(g.value, 64)
				switch g.code {
				case 10:
					c = append(c, outline.Vertex{X: x})
				case 20:
					c[len(c)-1].Y = x
				case 42:
					c[len(c)-1].Bulge = x
				}
			}
			if n, _ := strconv.Atoi(e.get(90)); n != len(c) {
				t.Errorf("a polyline says %d corners and has %d", n, len(c))
			}
			s.contours[layer] = append(s.contours[layer], c)
		case "POLYLINE":
			if e.get(70) != "1" || e.get(66) != "1" {
				t.Errorf("a polyline on %s is not closed, or says that no vertices follow", layer)
			}
			var c outline.Contour
			for i++; es[i].kind() == "VERTEX"; i++ {
				v := outline.Vertex{X: es[i].num(t, 10), Y: es[i].num(t, 20)}
				if es[i].get(42) != "" {
					v.Bulge = es[i].num(t, 42)
				}
				if es[i].get(8) != layer {
					t.Errorf("a vertex is not on its polyline's layer %s", layer)
				}
				c = append(c, v)
			}
			if es[i].kind() != "SEQEND" || es[i].get(8) != layer {
				t.Errorf("a polyline on %s ends with %v", layer, es[i])
			}
			s.contours[layer] = append(s.contours[layer], c)
		case "CIRCLE":
			s.circles[layer] = append(s.circles[layer], flat.Circle{X: e.num(t, 10), Y: e.num(t, 20), R: e.num(t, 40)})
		case "LINE":
			s.lines[layer]++
		case "TEXT":
			s.texts[layer] = append(s.texts[layer], unescape(e.get(1)))
		default:
			t.Errorf("an entity %s", e.kind())
		}
	}
	for layer, r := range s.contours {
		for _, c := range r {
			if c[0].At() == c[len(c)-1].At() {
				t.Errorf("a contour on %s repeats its first corner", layer)
			}
		}
	}
	return s
}

// unescape reads the value of a TEXT back: the other way round than escape.
func unescape(s string) string {
	var b strings.Builder
	for len(s) > 0 {
		switch {
		case strings.HasPrefix(s, "%%d"):
			b.WriteRune('°')
			s = s[3:]
		case strings.HasPrefix(s, "^ "):
			b.WriteByte('^')
			s = s[2:]
		case strings.HasPrefix(s, `\U+`) && len(s) >= 7:
			r, err := strconv.ParseUint(s[3:7], 16, 32)
			if err != nil {
				b.WriteString(s[:3])
				s = s[3:]
				continue
			}
			b.WriteRune(rune(r))
			s = s[7:]
		default:
			b.WriteByte(s[0])
			s = s[1:]
		}
	}
	return b.String()
}

// layers are the names in the layer table.
func (d drawing) layers() []string {
	var ls []string
	for _, e := range d.sections["TABLES"] {
		if e.kind() == "LAYER" {
			ls = append(ls, e.get(2))
		}
	}
	return ls
}

// checkStructure fails unless the tables, handles and owners hang together.
func checkStructure(t *testing.T, d drawing, v Version) {
	t.Helper()
	declared := d.layers()
	used := map[string]bool{}
	for _, e := range d.sections["ENTITIES"] {
		used[e.get(8)] = true
		if l := e.get(8); l == "0" || !slices.Contains(declared, l) {
			t.Errorf("%s on the layer %q, declared %q", e.kind(), l, declared)
		}
	}
	for _, l := range declared {
		if l != "0" && !used[l] {
			t.Errorf("the layer %s is empty", l)
		}
	}
	if v == R12 {
		for _, l := range declared {
			if len(l) > longestOld || strings.Trim(l, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789$-_") != "" {
				t.Errorf("R12 does not allow the layer name %q", l)
			}
		}
		return
	}
	handles := map[string]bool{"0": true}
	top := uint64(0)
	each := func(f func(section string, e entity)) {
		for _, s := range []string{"TABLES", "BLOCKS", "ENTITIES", "OBJECTS"} {
			for _, e := range d.sections[s] {
				if e.kind() != "ENDTAB" {
					f(s, e)
				}
			}
		}
	}
	each(func(s string, e entity) {
		h := e.get(5)
		if e.kind() == "DIMSTYLE" {
			h = e.get(105)
		}
		n, err := strconv.ParseUint(h, 16, 64)
		if err != nil || handles[h] {
			t.Errorf("%s %s: the handle %q is none or used twice", s, e.kind(), h)
		}
		handles[h] = true
		top = max(top, n)
	})
	each(func(s string, e entity) {
		for _, g := range e {
			if c := g.code; (c == 330 || c == 340 || c == 350 || c == 390) && !handles[g.value] {
				t.Errorf("%s %s: %v points nowhere", s, e.kind(), g)
			}
		}
	})
	if seed, err := strconv.ParseUint(d.header["$HANDSEED"], 16, 64); err != nil || seed <= top {
		t.Errorf("the next handle is said to be %s, %X is used", d.header["$HANDSEED"], top)
	}
	if d.header["$INSUNITS"] != "4" || d.header["$MEASUREMENT"] != "1" {
		t.Errorf("units %s, measurement %s: want 4 and 1", d.header["$INSUNITS"], d.header["$MEASUREMENT"])
	}
}

// near reports whether two regions are the same but for the grid: corner by
// corner, from any start.
func near(a, b outline.Contour) bool {
	if len(a) != len(b) {
		return false
	}
	for s := range b {
		same := true
		for i := range a {
			p, q := a[i], b[(i+s)%len(b)]
			same = same && math.Abs(p.X-q.X) <= flat.Step/2+1e-9 && math.Abs(p.Y-q.Y) <= flat.Step/2+1e-9 && math.Abs(p.Bulge-q.Bulge) <= 1e-12
		}
		if same {
			return true
		}
	}
	return false
}

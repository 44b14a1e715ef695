package layout

import "math"

// column is a variable of the linear program: a pattern, or the surplus or
// slack of a row. Its entries are sparse.
type column struct {
	cost  float64
	row   []int
	val   []float64
	pat   *pattern      // of a board,
	sheet *sheetPattern // or of a sheet; nil for the others
}

// program is min c x with rows A x >= d (demand) or <= d (stock), kept as a
// dense inverse of the basis; its columns come from outside.
type program struct {
	m     int
	d     []float64
	inv   []float64 // m x m
	basis []*column
	x     []float64
	y     []float64 // the dual prices
	u     []float64
	pool  []*column // every column known
	in    map[*column]bool
	moves int
}

const lpEps = 1e-9

// newProgram starts from artificial columns on the demand rows and the slacks
// of the stock rows.
func newProgram(d []float64, demand int, big float64) *program {
	m := len(d)
	p := &program{m: m, d: append([]float64(nil), d...), inv: make([]float64, m*m), x: append([]float64(nil), d...),
		y: make([]float64, m), u: make([]float64, m), in: map[*column]bool{}}
	for i := 0; i < m; i++ {
		p.inv[i*m+i] = 1
		c := &column{row: []int{i}, val: []float64{1}}
		if i < demand {
			c.cost = big
			s := &column{row: []int{i}, val: []float64{-1}}
			p.pool = append(p.pool, s)
		} else {
			p.pool = append(p.pool, c)
		}
		p.basis = append(p.basis, c)
		p.in[c] = true
	}
	return p
}

func (p *program) duals() {
	m := p.m
	clear(p.y)
	for i, b := range p.basis {
		if b.cost == 0 {
			continue
		}
		row := p.inv[i*m : i*m+m]
		for j, v := range row {
			p.y[j] += float64(b.cost * v)
		}
	}
}

func (p *program) reduced(c *column) float64 {
	r := c.cost
	for k, i := range c.row {
		r -= float64(p.y[i] * c.val[k])
	}
	return r
}

// fromPool is the known column that helps most, or nil.
func (p *program) fromPool() *column {
	var best *column
	least := -1e-7
	for _, c := range p.pool {
		if p.in[c] {
			continue
		}
		if r := p.reduced(c); r < least {
			least, best = r, c
		}
	}
	return best
}

// enter brings a column into the basis. It reports false if it cannot.
func (p *program) enter(c *column) bool {
	m := p.m
	clear(p.u)
	for k, j := range c.row {
		v := c.val[k]
		for i := 0; i < m; i++ {
			p.u[i] += float64(p.inv[i*m+j] * v)
		}
	}
	out, ratio := -1, math.Inf(1)
	for i, u := range p.u {
		if u <= lpEps {
			continue
		}
		r := max(p.x[i], 0) / u
		if r < ratio-1e-12 || r <= ratio+1e-12 && out >= 0 && u > p.u[out] {
			out, ratio = i, r
		}
	}
	if out < 0 {
		return false
	}
	p.pivot(out, c)
	return true
}

// pivot puts c, whose image is u, in the place of row out.
func (p *program) pivot(out int, c *column) {
	m := p.m
	p.moves++
	row := p.inv[out*m : out*m+m]
	f := 1 / p.u[out]
	for j := range row {
		row[j] = float64(row[j] * f)
	}
	p.x[out] = float64(p.x[out] * f)
	for i := 0; i < m; i++ {
		u := p.u[i]
		if i == out || u == 0 {
			continue
		}
		r := p.inv[i*m : i*m+m]
		for j, v := range row {
			if v != 0 {
				r[j] -= float64(u * v)
			}
		}
		p.x[i] -= float64(u * p.x[out])
	}
	delete(p.in, p.basis[out])
	p.in[c] = true
	p.basis[out] = c
}

// setRight changes the right side and returns to a feasible basis by the dual
// simplex over the known columns. It reports false if there is none.
func (p *program) setRight(d []float64) bool {
	m := p.m
	copy(p.d, d)
	for i := 0; i < m; i++ {
		s := 0.0
		for j, v := range p.inv[i*m : i*m+m] {
			s += float64(v * d[j])
		}
		p.x[i] = s
	}
	p.duals()
	for round := 0; round < 20*m+200; round++ {
		out, least := -1, -1e-8
		for i, v := range p.x {
			if v < least {
				out, least = i, v
			}
		}
		if out < 0 {
			return true
		}
		row := p.inv[out*m : out*m+m]
		var best *column
		ratio, piv := math.Inf(1), 0.0
		for _, c := range p.pool {
			if p.in[c] {
				continue
			}
			a := 0.0
			for k, j := range c.row {
				a += float64(row[j] * c.val[k])
			}
			if a >= -lpEps {
				continue
			}
			if r := max(p.reduced(c), 0) / -a; r < ratio-1e-12 || r <= ratio+1e-12 && -a > piv {
				best, ratio, piv = c, r, -a
			}
		}
		if best == nil {
			return false
		}
		clear(p.u)
		for k, j := range best.row {
			for i := 0; i < m; i++ {
				p.u[i] += float64(p.inv[i*m+j] * best.val[k])
			}
		}
		p.pivot(out, best)
		p.duals()
	}
	return false
}

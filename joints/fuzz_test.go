package joints

import (
	"encoding/binary"
	"math"
	"testing"
)

// numbers reads anything from bytes: small whole numbers, halves, and now and
// then any float64 at all, NaN and infinities included.
type numbers struct{ data []byte }

func (n *numbers) byte() byte {
	if len(n.data) == 0 {
		return 0
	}
	b := n.data[0]
	n.data = n.data[1:]
	return b
}

func (n *numbers) number() float64 {
	switch b := n.byte(); {
	case b < 200:
		return float64(b) / 4
	case b < 230:
		return -float64(b-200) / 2
	case b < 240:
		return [...]float64{math.Inf(1), math.Inf(-1), nan, 1e308, -1e308, 5e-324, 1e9, 1e-9, 90, 180}[b-230]
	}
	var raw [8]byte
	n.data = n.data[copy(raw[:], n.data):]
	return math.Float64frombits(binary.LittleEndian.Uint64(raw[:]))
}

func (n *numbers) corner() Corner {
	mm := func() MM { return MM(n.number()) }
	return Corner{TA: mm(), TB: mm(), LeastA: mm(), LeastB: mm(), Theta: Deg(n.number() * 4), Length: mm(), RunOn: mm(), ReachA: mm(), ReachB: mm()}
}

func (n *numbers) joint() Joint {
	mm := func() MM { return MM(n.number()) }
	b := n.byte()
	switch b % 5 {
	case 0:
		return Butt{LapSquare: b&8 != 0, EndSquare: b&16 != 0}
	case 1:
		return Mitre{}
	case 2:
		return Rebate{Depth: mm(), Width: mm()}
	case 3:
		return Housing{Depth: mm(), Play: mm(), Tight: b&8 != 0, Swell: mm(), Stop: mm(), StopFrom: mm(), StopTo: mm()}
	}
	return Comb{Fingers: int(int8(n.byte())), Play: mm(), First: Owner(n.byte() % 4)}
}

func (n *numbers) lines() []Line {
	ls := make([]Line, n.byte()%5)
	for i := range ls {
		ls[i] = Line{A: n.number(), B: n.number(), K: n.number()}
	}
	return ls
}

func (n *numbers) zones() []Zone {
	zs := make([]Zone, n.byte()%5)
	for i := range zs {
		zs[i] = Zone{Lines: n.lines(), From: MM(n.number()), To: MM(n.number())}
	}
	return zs
}

// No corner, joint or section makes anything panic, every refusal is a Fault,
// and what a joint makes passes Check.
func FuzzJoints(f *testing.F) {
	f.Add([]byte{60, 60, 0, 0, 232, 200, 0, 0, 0, 0})
	f.Add([]byte{60, 48, 56, 44, 25, 199, 80, 0, 0, 3, 20, 1, 0, 0, 40, 0, 0})
	f.Add([]byte{60, 48, 0, 0, 20, 199, 0, 0, 0, 4, 5, 1, 0})
	f.Add([]byte{60, 48, 0, 0, 30, 199, 0, 0, 0, 8})
	f.Fuzz(func(t *testing.T, data []byte) {
		n := &numbers{data}
		c := n.corner()
		j := n.joint()
		s, err := j.Section(c)
		switch {
		case err == nil:
			if err := Check(c, s); err != nil {
				t.Fatalf("%#v at %+v: %v", j, c, err)
			}
		case len(Faults(err)) == 0 || err.Error() == "":
			t.Fatalf("%#v at %+v: no fault in %v", j, c, err)
		}
		// Anything at all, at a corner that exists or not.
		s.Name = "fuzz"
		s.A.Keep, s.B.Keep = n.lines(), n.lines()
		s.A.Lose, s.B.Lose, s.Void = n.zones(), n.zones(), n.zones()
		if n.byte()%2 == 0 {
			c = at(15, 12, 100, 20)
		}
		s = c.Measure(s)
		if err := Check(c, s); err != nil && (len(Faults(err)) == 0 || err.Error() == "") {
			t.Fatalf("no fault in %v", err)
		}
		c.Words(s)
	})
}

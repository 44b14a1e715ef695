package cite

import "testing"

func TestSourceString(t *testing.T) {
	for _, c := range []struct {
		s    Source
		want string
	}{
		{Source{Key: "a", Title: "T", Publisher: "P", Year: 1914}, "P: T, 1914"},
		{Source{Key: "a", Title: "T"}, "T"},
		{Source{Key: "a", Basis: Memory}, "a (from memory)"},
	} {
		if got := c.s.String(); got != c.want {
			t.Errorf("%+v: got %q, want %q", c.s, got, c.want)
		}
	}
	for b, want := range map[Basis]string{Read: "read", Computed: "computed", Practice: "common practice", Memory: "from memory", 9: "unknown basis"} {
		if b.String() != want {
			t.Errorf("basis %d: got %q, want %q", int(b), b, want)
		}
	}
}

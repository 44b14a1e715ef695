package render

import (
	"path/filepath"
	"strings"
	"testing"
)

func TestFileNames(t *testing.T) {
	for _, tt := range []struct{ part, want string }{
		{"front", "front"},
		{"roof/left", "roof-left"},
		{"wall/12", "wall-12"},
		{"free/Perch_2.b", "free-Perch_2.b"},
		{"../../etc/passwd", "etc-passwd"},
		{`..\..\x`, "x"},
		{"a:b*c?d\"e<f>g|h", "a-b-c-d-e-f-g-h"},
		{"", "part"}, {"...", "part"}, {"///", "part"}, {"-rf", "rf"}, {".hidden", "hidden"}, {"end. ", "end"},
		{"CON", "part-CON"}, {"nul.txt", "part-nul.txt"}, {"Lpt1", "part-Lpt1"}, {"com0", "part-com0"}, {"con1", "con1"}, {"com10", "com10"}, {"console", "console"},
		{"inner/Größe", "inner-Gr--e"},
		{"a\x00b\nc", "a-b-c"},
		{"\xff", "part"},
		{strings.Repeat("x", 300), strings.Repeat("x", 64)},
		{strings.Repeat("x", 63) + ".y", strings.Repeat("x", 63)},
	} {
		if got := fileName(tt.part); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.part, got, tt.want)
		}
	}
}

// Names are apart also where upper and lower case are one.
func TestFileNamesAreApart(t *testing.T) {
	long := strings.Repeat("x", 100)
	parts := []string{"free/a", "free/A", "free-a", "free/a-2", "free a", long + "1", long + "2", "", "/", "part"}
	got := fileNames(parts)
	want := []string{"free-a", "free-A-2", "free-a-3", "free-a-2-2", "free-a-4", long[:64], long[:64] + "-2", "part", "part-2", "part-3"}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%q: %q, want %q", parts[i], got[i], want[i])
		}
	}
}

func FuzzFileName(f *testing.F) {
	for _, s := range []string{"front", "../x", "CON", "a\x00", "ü", ".", "com1."} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		n := fileName(s)
		if n == "" || len(n) > longest+len("part-") || !filepath.IsLocal(n+".stl") || filepath.Base(n) != n || reserved(n) ||
			strings.Trim(n, ".-") != n || strings.Trim(n, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-") != "" {
			t.Errorf("%q became %q", s, n)
		}
	})
}

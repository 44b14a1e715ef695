package render

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/render/bom"
)

// TestStaleFilesAreNamed: a plan with other parts leaves the old drawings, and
// says so; a file of the user's own beside them is none of ours.
func TestStaleFilesAreNamed(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	first, err := save(dir, texts("a.txt", "a", "parts/left.svg", "l", "parts/right.svg", "r", "parts/right.dxf", "r"))
	if err != nil || first.Stale != nil {
		t.Fatal(err, first.Stale)
	}
	for _, name := range []string{"notes.txt", "parts/notes.md"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("mine"), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	w, err := save(dir, texts("a.txt", "a", "parts/left.svg", "l", "parts/left.dxf", "l"))
	if want := []string{"parts/right.dxf", "parts/right.svg"}; err != nil || !slices.Equal(w.Stale, want) {
		t.Errorf("%v, %q, want %q", err, w.Stale, want)
	}
	if _, err := os.Stat(filepath.Join(dir, "parts", "right.svg")); err != nil {
		t.Error("a stale file was removed:", err)
	}
}

// TestStaleListsAreNamed: a box that needs nothing bought any more leaves the lists
// of what the old one needed, and says so; other lists at the top are the user's.
func TestStaleListsAreNamed(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	d, o := pent(), small()
	d.Fittings = []box.Fitting{{What: "strap", Count: 1}}
	o.BOM.Bill = &bom.Terms{}
	w, err := Folder(dir, resolve(t, d), o)
	if err != nil || w.Stale != nil {
		t.Fatal(err, w.Stale)
	}
	if err := os.WriteFile(filepath.Join(dir, "mine.csv"), []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	if w, err = Folder(dir, resolve(t, pent()), small()); err != nil || !slices.Equal(w.Stale, []string{"bill.csv", "fittings.csv"}) {
		t.Error(err, w.Stale)
	}
	// A batch never writes a bill: one that stands there is no stale file of its.
	if w, err := save(dir, texts("fittings.csv", "f")); err != nil || w.Stale != nil {
		t.Error(err, w.Stale)
	}
}

// TestStaleKindsAreByFolder: of the folders "a" and "a.csv" each has its own kinds:
// "a" has lists, and "a.csv" no files without an extension, though the two words
// together read the same.
func TestStaleKindsAreByFolder(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	if _, err := save(dir, texts("a/x.csv", "x", "a.csv/y.md", "y", "a.csv/mine", "mine")); err != nil {
		t.Fatal(err)
	}
	if w, err := save(dir, texts("a/x.csv", "x", "a.csv/y.md", "y")); err != nil || w.Stale != nil {
		t.Error(err, w.Stale)
	}
}

// TestWholesAreDrawn: a made-up front has drawings of its strips and of itself,
// whose opening is one; there is no solid of it, since nothing of that shape is
// ever in one piece before it is glued.
func TestWholesAreDrawn(t *testing.T) {
	d := pent()
	d.MadeUp = []box.MadeUp{{Of: box.Front, Width: 80}}
	files, err := Files(resolve(t, d), small())
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]string{}
	for _, f := range files {
		got[f.Name] = string(f.Data)
	}
	for _, name := range []string{"parts/front.svg", "parts/front.dxf", "parts/front-1.svg", "parts/front-1.stl", "parts/front-2.svg"} {
		if got[name] == "" {
			t.Errorf("no %s", name)
		}
	}
	if got["parts/front.stl"] != "" {
		t.Error("there is a solid of the whole front")
	}
	if whole, strip := got["parts/front.svg"], got["parts/front-1.svg"]; !strings.Contains(whole, "bore") || strings.Contains(strip, "bore") {
		t.Error("the entrance is bored into the whole front, and is a notch of a strip")
	}
}

func TestFolderNeedsAName(t *testing.T) {
	t.Chdir(t.TempDir())
	if _, err := save("", texts("a.txt", "a")); err == nil {
		t.Error("no folder was named, and there was no error")
	}
	if found, _ := os.ReadDir("."); len(found) > 0 {
		t.Error("written into the current folder:", found)
	}
}

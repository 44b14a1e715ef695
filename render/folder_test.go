package render

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"holt.example/box"
	"holt.example/joints"
)

// pent is the orchard's box: a pent roof and a long back to hang it by.
func pent() box.Design {
	return box.Design{
		Name:     "orchard pent",
		Board:    box.Board{Thickness: 15, Measured: 14.6},
		Size:     box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
		Walls:    []box.Wall{{On: box.Back, Above: 80, Below: 60}},
		Corners:  box.Corners{Joint: joints.Rebate{}, Laps: box.FrontBack},
		Floor:    box.FloorBetween{Raise: 20},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}},
	}
}

func resolve(t testing.TB, d box.Design) *box.Plan {
	t.Helper()
	p, err := d.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// small options, so that the tests paint small pictures.
func small() Options {
	var o Options
	o.Picture.DPI = 30
	return o
}

// tree reads all files below a folder.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, _ := filepath.Rel(dir, path)
		name = filepath.ToSlash(name)
		if d.IsDir() {
			out[name+"/"] = ""
			return nil
		}
		b, err := os.ReadFile(path)
		out[name] = string(b)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func same(t *testing.T, what string, got, want map[string]string) {
	t.Helper()
	for n, b := range want {
		if g, ok := got[n]; !ok || g != b {
			t.Errorf("%s: %s is %.40q (there: %v), was %.40q", what, n, g, ok, b)
		}
	}
	for n := range got {
		if _, ok := want[n]; !ok {
			t.Errorf("%s: %s was not there before", what, n)
		}
	}
}

func TestFolder(t *testing.T) {
	plan := resolve(t, pent())
	dir := filepath.Join(t.TempDir(), "a", "b", "out")
	files, err := Files(plan, small())
	if err != nil {
		t.Fatal(err)
	}
	for run := range 2 { // into a new folder, then into the old one
		w, err := Folder(dir+string(filepath.Separator), plan, small())
		if err != nil {
			t.Fatal(err)
		}
		got := tree(t, dir)
		if len(w.Files) != len(files) || len(got) != len(files)+2 { // and two folders
			t.Fatalf("run %d: %d files listed, %d there, want %d", run, len(w.Files), len(got)-2, len(files))
		}
		total := int64(0)
		for i, f := range files {
			if w.Files[i] != (FileSize{f.Name, int64(len(f.Data))}) || got[f.Name] != string(f.Data) || len(f.Data) == 0 {
				t.Errorf("run %d: %+v of %d bytes, want %s of %d", run, w.Files[i], len(got[f.Name]), f.Name, len(f.Data))
			}
			total += int64(len(f.Data))
		}
		if w.Bytes() != total || w.Dir != dir {
			t.Errorf("%d bytes in %s, want %d in %s", w.Bytes(), w.Dir, total, dir)
		}
	}
}

func TestFilesInOrder(t *testing.T) {
	want := []string{
		"assembly.stl", "assembled.svg", "assembled.png", "exploded.svg", "exploded.png", "bom.csv", "bom.json", "bom.md", "plan.md", "parts.svg", "parts.dxf",
	}
	for _, p := range []string{"front", "back", "left", "right", "floor", "roof"} {
		want = append(want, "parts/"+p+".stl", "parts/"+p+".svg", "parts/"+p+".dxf")
	}
	files, err := Files(resolve(t, pent()), small())
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, f := range files {
		got = append(got, f.Name)
	}
	if strings.Join(got, " ") != strings.Join(want, " ") {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	// What stands at the beginning of each kind of file.
	for _, f := range files {
		ok := true
		switch filepath.Ext(f.Name) {
		case ".png":
			ok = bytes.HasPrefix(f.Data, []byte("\x89PNG\r\n"))
		case ".svg":
			ok = bytes.Contains(f.Data[:min(200, len(f.Data))], []byte("<svg "))
		case ".json":
			ok = f.Data[0] == '{'
		case ".dxf":
			ok = bytes.Contains(f.Data[:min(200, len(f.Data))], []byte("SECTION"))
		case ".stl":
			// 80 bytes, the count of triangles, 50 bytes each.
			n := int(f.Data[80]) | int(f.Data[81])<<8 | int(f.Data[82])<<16
			ok = len(f.Data) == 84+50*n && n >= 12
		}
		if !ok {
			t.Errorf("%s begins with %.60q", f.Name, f.Data)
		}
	}
	if bytes.Equal(files[1].Data, files[3].Data) || bytes.Equal(files[2].Data, files[4].Data) {
		t.Error("assembled and exploded are the same picture")
	}
	again, err := Files(resolve(t, pent()), small())
	if err != nil {
		t.Fatal(err)
	}
	for i := range files {
		if !bytes.Equal(files[i].Data, again[i].Data) {
			t.Errorf("%s has other bytes the second time", files[i].Name)
		}
	}
}

// texts are entries of plain text.
func texts(pairs ...string) []entry {
	var es []entry
	for i := 0; i < len(pairs); i += 2 {
		es = append(es, entry{pairs[i], func(w io.Writer) error { _, err := io.WriteString(w, pairs[i+1]); return err }})
	}
	return es
}

var errBroken = errors.New("broken")

// before lays down a folder as it was before.
func before(t *testing.T) (dir string, was map[string]string) {
	dir = filepath.Join(t.TempDir(), "out")
	for name, text := range map[string]string{"a.txt": "old a", "b.txt": "old b", "mine.txt": "mine"} {
		if err := errors.Join(os.MkdirAll(dir, 0o777), os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666)); err != nil {
			t.Fatal(err)
		}
	}
	return dir, tree(t, dir)
}

func TestReplacesOnlyItsOwn(t *testing.T) {
	dir, was := before(t)
	if _, err := save(dir, texts("a.txt", "new a", "parts/c.txt", "new c")); err != nil {
		t.Fatal(err)
	}
	was["a.txt"], was["parts/"], was["parts/c.txt"] = "new a", "", "new c"
	same(t, "after", tree(t, dir), was)
}

func TestFailingWriterLeavesAllAsItWas(t *testing.T) {
	dir, was := before(t)
	es := texts("a.txt", "new a", "parts/c.txt", "new c", "b.txt", "new b")
	for i := range es {
		broken := append([]entry(nil), es...)
		broken[i].write = func(w io.Writer) error {
			_, _ = io.WriteString(w, "half")
			return errBroken
		}
		_, err := save(dir, broken)
		if !errors.Is(err, errBroken) || !strings.Contains(err.Error(), es[i].name) {
			t.Errorf("%s fails: %v", es[i].name, err)
		}
		same(t, es[i].name, tree(t, dir), was)
		fresh := filepath.Join(filepath.Dir(dir), "deep", "new")
		if _, err := save(fresh, broken); !errors.Is(err, errBroken) {
			t.Errorf("%s fails in a new folder: %v", es[i].name, err)
		}
		if _, err := os.Stat(filepath.Dir(fresh)); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("%s fails and leaves a folder: %v", es[i].name, err)
		}
	}
}

// A folder stands where a file is to go, so that a move fails after others were
// made.
func TestFailingMoveIsUndone(t *testing.T) {
	for _, links := range []bool{true, false} {
		dir, _ := before(t)
		if err := os.MkdirAll(filepath.Join(dir, "z.txt", "full"), 0o777); err != nil {
			t.Fatal(err)
		}
		was := tree(t, dir)
		files, err := fill(texts("a.txt", "new a", "new.txt", "new", "parts/deep/c.txt", "new c", "b.txt", "new b", "z.txt", "new z", "after.txt", "x"))
		if err != nil {
			t.Fatal(err)
		}
		if links {
			err = update(dir, files)
		} else {
			// On a disk without second names.
			temp := t.TempDir()
			m := mover{dir: dir, fresh: filepath.Join(temp, "new"), old: filepath.Join(temp, "old"), link: func(string, string) error { return errBroken }}
			if err := errors.Join(writeAll(m.fresh, files), os.Mkdir(m.old, 0o777)); err != nil {
				t.Fatal(err)
			}
			for i, f := range files {
				if err = m.move(i, filepath.FromSlash(f.Name)); err != nil {
					break
				}
			}
			if len(m.done) != 6 { // four files, two folders
				t.Errorf("%d steps were made, want 6", len(m.done))
			}
			if e := m.undo(); e != nil {
				t.Error(e)
			}
		}
		if !errors.Is(err, errFolder) {
			t.Errorf("links %v: %v", links, err)
		}
		same(t, fmt.Sprint("links ", links), tree(t, dir), was)
	}
}

func TestPlacesThatCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	plan := resolve(t, pent())
	was := tree(t, dir)
	for _, path := range []string{file, filepath.Join(file, "below"), filepath.Join(file, "far", "below"), filepath.Join(dir, "nul\x00byte")} {
		if w, err := Folder(path, plan, small()); err == nil || len(w.Files) > 0 {
			t.Errorf("%q: %v, %v", path, w, err)
		}
	}
	same(t, "after", tree(t, dir), was)
	if _, err := Folder(file, plan, small()); !errors.Is(err, errNotFolder) {
		t.Errorf("a file in the place of the folder: %v", err)
	}
}

// A disk that refuses one name: what was made on the way is gone again.
func TestFailingCreateLeavesNothing(t *testing.T) {
	top := t.TempDir()
	if _, err := save(filepath.Join(top, "a", "b", "out"), texts("ok.txt", "x", strings.Repeat("n", 300), "x")); err == nil {
		t.Fatal("a name of 300 bytes was taken")
	}
	same(t, "after", tree(t, top), map[string]string{"./": ""})
}

// A folder that appears while its files are being made is written into.
func TestCreateMeetsAFolder(t *testing.T) {
	dir, was := before(t)
	if err := create(dir, []File{{"a.txt", []byte("new a")}}); err != nil {
		t.Fatal(err)
	}
	was["a.txt"] = "new a"
	same(t, "after", tree(t, dir), was)
	same(t, "beside", tree(t, filepath.Dir(dir)), func() map[string]string {
		m := map[string]string{"./": "", "out/": ""}
		for n, b := range was {
			if n != "./" {
				m["out/"+n] = b
			}
		}
		return m
	}())
}

// If even the way back fails, the caller hears of it.
func TestUndoSaysWhatFails(t *testing.T) {
	dir, _ := before(t)
	m := mover{dir: dir, done: []moved{{file: filepath.Join(dir, "a.txt"), saved: filepath.Join(dir, "gone")}}}
	if err := m.undo(); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("undo: %v", err)
	}
}

func TestNoPlan(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	if _, err := Folder(dir, nil, Options{}); err == nil {
		t.Error("Folder without a plan")
	}
	if _, err := os.Stat(dir); err == nil {
		t.Error("a folder was made for no plan")
	}
	if _, err := Files(nil, Options{}); err == nil {
		t.Error("Files without a plan")
	}
}

// Wrong options of any format are found before anything is written.
func TestWrongOptions(t *testing.T) {
	plan := resolve(t, pent())
	for i, change := range []func(*Options){
		func(o *Options) { o.BOM.Step = -1 },
		func(o *Options) { o.Picture.Width = 1 },
		func(o *Options) { o.Picture.DPI = 1e9 },
	} {
		o := small()
		change(&o)
		dir := filepath.Join(t.TempDir(), "out")
		if _, err := Folder(dir, plan, o); err == nil {
			t.Errorf("options %d were taken", i)
		}
		if _, err := os.Stat(dir); err == nil {
			t.Errorf("options %d: a folder was made", i)
		}
	}
}

// Several write at once; every file is whole and is one of theirs.
func TestAtOnce(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	var wg sync.WaitGroup
	errs := make([]error, 4)
	for i := range errs {
		wg.Go(func() {
			text := strings.Repeat(fmt.Sprint(i), 1000)
			_, errs[i] = save(dir, texts("a.txt", text, "parts/b.txt", text, "c.txt", text))
		})
	}
	wg.Wait()
	if err := errors.Join(errs...); err != nil {
		t.Fatal(err)
	}
	got := tree(t, dir)
	if len(got) != 5 {
		t.Errorf("there are %d things, want 3 files in 2 folders: %v", len(got), got)
	}
	for n, b := range got {
		if !strings.HasSuffix(n, "/") && (len(b) != 1000 || b != strings.Repeat(b[:1], 1000)) {
			t.Errorf("%s holds %d bytes, %.20q", n, len(b), b)
		}
	}
}

package render

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"

	"holt.example/box"
)

// Written says what was written.
type Written struct {
	Dir   string
	Files []FileSize // in the order of Files
	// Stale are files of an earlier plan that are still in the folder, with
	// slashes, in alphabetical order: those in its subfolders that are of the kinds
	// written there now, and lists that only some plans have and this one lacks:
	// fittings.csv and bill.csv. They are left alone; whoever cuts or buys from the
	// folder should remove them.
	Stale []string
}

// FileSize is the name of a file, with slashes, below the folder, and its size
// in bytes.
type FileSize struct {
	Name string
	Size int64
}

// Bytes is the size of all files together.
func (w Written) Bytes() int64 {
	n := int64(0)
	for _, f := range w.Files {
		n += f.Size
	}
	return n
}

// Folder writes all files of a plan into a folder, which is made if need be.
//
// Either all files are written or none: they are made in memory first, written
// into a hidden folder on the same disk, and then moved into place one by one;
// if a move fails, those before it are undone. What was there before is
// replaced file by file; other files in the folder are left alone, also those
// of an earlier plan with other parts, which Written.Stale names. (A crash of
// the machine in the middle of the moves can leave old files beside new ones,
// never half a file.)
func Folder(dir string, plan *box.Plan, o Options) (Written, error) {
	if plan == nil {
		return Written{}, errNoPlan
	}
	return save(dir, entries(plan, o), fittingsFile, billFile)
}

// save writes entries into a folder, all or none. Files at its top that bear a name
// in sometimes and are none of the entries are stale.
func save(dir string, es []entry, sometimes ...string) (Written, error) {
	if dir == "" {
		return Written{}, errNoFolder
	}
	files, err := fill(es)
	if err != nil {
		return Written{}, err
	}
	dir = filepath.Clean(dir)
	info, err := os.Stat(dir)
	switch {
	case err == nil && !info.IsDir():
		return Written{}, fmt.Errorf("render: %w", &fs.PathError{Op: "write into", Path: dir, Err: errNotFolder})
	case err == nil:
		err = update(dir, files)
	case errors.Is(err, fs.ErrNotExist):
		err = create(dir, files)
	}
	if err != nil {
		return Written{}, fmt.Errorf("render: %w", err)
	}
	w := Written{Dir: dir}
	for _, f := range files {
		w.Files = append(w.Files, FileSize{f.Name, int64(len(f.Data))})
	}
	w.Stale = stale(dir, files, sometimes)
	return w, nil
}

var (
	errNoFolder  = errors.New(`render: the folder needs a name ("." is the current one)`)
	errNotFolder = errors.New("not a folder")
)

// stale lists what looks as if it was written here before and is no part of
// files. A folder that cannot be read has none.
func stale(dir string, files []File, sometimes []string) []string {
	type kind struct{ folder, ext string }
	now, kinds := map[string]bool{}, map[kind]bool{}
	var folders, out []string
	for _, f := range files {
		now[f.Name] = true
		folder := path.Dir(f.Name)
		if folder == "." {
			continue // the user's own files may stand beside ours
		}
		if !slices.Contains(folders, folder) {
			folders = append(folders, folder)
		}
		kinds[kind{folder, path.Ext(f.Name)}] = true
	}
	for _, name := range sometimes {
		if info, err := os.Stat(filepath.Join(dir, name)); err == nil && !info.IsDir() && !now[name] {
			out = append(out, name)
		}
	}
	for _, folder := range folders {
		found, _ := os.ReadDir(filepath.Join(dir, filepath.FromSlash(folder)))
		for _, e := range found {
			name := path.Join(folder, e.Name())
			if !e.IsDir() && !now[name] && kinds[kind{folder, path.Ext(name)}] {
				out = append(out, name)
			}
		}
	}
	slices.Sort(out)
	return out
}

// create makes a folder that was not there: complete under another name first.
func create(dir string, files []File) (err error) {
	made, err := makeAll(filepath.Dir(dir))
	defer func() {
		if err != nil {
			for i := len(made) - 1; i >= 0; i-- {
				_ = os.Remove(made[i]) // only what is still empty
			}
		}
	}()
	if err != nil {
		return err
	}
	temp, err := os.MkdirTemp(filepath.Dir(dir), ".render-*")
	if err != nil {
		return err
	}
	defer os.RemoveAll(temp)
	fresh := filepath.Join(temp, "new")
	if err := writeAll(fresh, files); err != nil {
		return err
	}
	if err := os.Rename(fresh, dir); err != nil {
		// Someone else may have made it meanwhile.
		if info, e := os.Stat(dir); e == nil && info.IsDir() {
			return update(dir, files)
		}
		return err
	}
	return nil
}

// makeAll makes a folder and those above it, and says which it made.
func makeAll(dir string) (made []string, err error) {
	var missing []string
	for {
		_, err := os.Stat(dir)
		if err == nil {
			break
		}
		if !errors.Is(err, fs.ErrNotExist) {
			return nil, err
		}
		missing = append(missing, dir)
		up := filepath.Dir(dir)
		if up == dir {
			break
		}
		dir = up
	}
	for i := len(missing) - 1; i >= 0; i-- {
		if err := os.Mkdir(missing[i], 0o777); err != nil && !errors.Is(err, fs.ErrExist) {
			return made, err
		}
		made = append(made, missing[i])
	}
	return made, nil
}

// writeAll writes files into a new folder.
func writeAll(dir string, files []File) error {
	if err := os.Mkdir(dir, 0o777); err != nil {
		return err
	}
	for _, f := range files {
		target := filepath.Join(dir, filepath.FromSlash(f.Name))
		if err := os.MkdirAll(filepath.Dir(target), 0o777); err != nil {
			return err
		}
		if err := os.WriteFile(target, f.Data, 0o666); err != nil {
			return err
		}
	}
	return nil
}

// update writes into a folder that is there. The hidden folder is inside it,
// because only there it is sure to be on the same disk.
func update(dir string, files []File) error {
	temp, err := os.MkdirTemp(dir, ".render-*")
	if err != nil {
		return err
	}
	keep := false
	defer func() {
		if !keep {
			os.RemoveAll(temp)
		}
	}()
	m := mover{dir: dir, fresh: filepath.Join(temp, "new"), old: filepath.Join(temp, "old"), link: os.Link}
	if err := errors.Join(writeAll(m.fresh, files), os.Mkdir(m.old, 0o777)); err != nil {
		return err
	}
	for i, f := range files {
		if err := m.move(i, filepath.FromSlash(f.Name)); err != nil {
			if back := m.undo(); back != nil {
				keep = true
				err = errors.Join(err, fmt.Errorf("the old files are in %s: %w", m.old, back))
			}
			return err
		}
	}
	return nil
}

// mover moves files into place and back.
type mover struct {
	dir, fresh, old string
	link            func(from, to string) error // os.Link
	done            []moved
}

// moved is a step that can be undone: a file put into place, with what was
// there before in saved; or, with file "", a folder made.
type moved struct{ file, saved, folder string }

// move puts one file into place.
func (m *mover) move(i int, name string) error {
	target := filepath.Join(m.dir, name)
	if folder := filepath.Dir(target); folder != m.dir {
		made, err := makeAll(folder)
		for _, f := range made {
			m.done = append(m.done, moved{folder: f})
		}
		if err != nil {
			return err
		}
	}
	step := moved{file: target}
	info, err := os.Lstat(target)
	switch {
	case err == nil && info.IsDir():
		return &fs.PathError{Op: "replace", Path: target, Err: errFolder}
	case err == nil:
		step.saved = filepath.Join(m.old, fmt.Sprint(i))
		// A second name keeps the old file without it ever being missing; where
		// the disk knows no such names it is moved aside.
		if m.link(target, step.saved) != nil {
			if err := os.Rename(target, step.saved); err != nil {
				return err
			}
		}
	case !errors.Is(err, fs.ErrNotExist):
		return err
	}
	// From here on there is something to undo.
	m.done = append(m.done, step)
	return os.Rename(filepath.Join(m.fresh, name), target)
}

var errFolder = errors.New("is a folder")

// undo takes back all moves, the last one first.
func (m *mover) undo() error {
	var errs []error
	for i := len(m.done) - 1; i >= 0; i-- {
		s := m.done[i]
		switch {
		case s.folder != "":
			_ = os.Remove(s.folder) // only if it is still empty
		case s.saved != "":
			errs = append(errs, os.Rename(s.saved, s.file))
		default:
			if err := os.Remove(s.file); err != nil && !errors.Is(err, fs.ErrNotExist) {
				errs = append(errs, err)
			}
		}
	}
	return errors.Join(errs...)
}

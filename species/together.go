package species

import (
	"errors"
	"sort"

	"holt.example/box"
)

// together is every problem among some errors, sorted by path as those of Resolve; nil
// where there is none. What is no problem comes first and alone.
func together(errs ...error) error {
	var all box.Problems
	for _, err := range errs {
		var ps box.Problems
		var p box.Problem
		switch {
		case err == nil:
		case errors.As(err, &ps):
			all = append(all, ps...)
		case errors.As(err, &p):
			all = append(all, p)
		default:
			return err
		}
	}
	if len(all) == 0 {
		return nil
	}
	sort.SliceStable(all, func(i, k int) bool { return all[i].Path < all[k].Path })
	return all
}

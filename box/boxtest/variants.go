package boxtest

import (
	"errors"
	"fmt"
	"testing"

	"holt.example/box"
)

// Each runs a test for every variant, by its key: go test -run
// 'TestCatalogue/board=15,roof=pent' runs one of them. A test that leaves f nil
// asserts that every variant resolves to a Sound plan.
func Each(t *testing.T, v box.Variants, f func(t *testing.T, d box.Design)) {
	t.Helper()
	if err := v.Check(); err != nil {
		t.Errorf("the variants are not sound:\n%v", err)
		return
	}
	for key, d := range v.All() {
		t.Run(string(key), func(t *testing.T) {
			if f != nil {
				f(t, d)
			} else if p := Resolve(t, d); p != nil {
				Sound(t, p)
			}
		})
	}
}

// CheckEach resolves every variant and makes the checks on its plan; without
// any, CheckSound. The error joins all that was found, each with the variant's
// key before it.
func CheckEach(v box.Variants, checks ...func(*box.Plan) error) error {
	if err := v.Check(); err != nil {
		return err
	}
	if len(checks) == 0 {
		checks = []func(*box.Plan) error{CheckSound}
	}
	var errs []error
	for key, d := range v.All() {
		p, err := d.Resolve()
		if err != nil {
			errs = append(errs, fmt.Errorf("%s: %w", key, err))
			continue
		}
		for _, check := range checks {
			if err := check(p); err != nil {
				errs = append(errs, fmt.Errorf("%s: %w", key, err))
			}
		}
	}
	return errors.Join(errs...)
}

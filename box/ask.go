package box

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"holt.example/joints"
)

// section asks a joint for its section and checks the answer.
func (s *shell) section(j joint, path string, c joints.Corner) (sec joints.Section, ok bool) {
	defer func() {
		if r := recover(); r != nil {
			s.c.add(Problem{Path: path, Code: "joint-panic", Got: fmt.Sprintf("%.200v", r), Why: "the joint's Section panicked"})
			ok = false
		}
	}()
	sec, err := j.Section(c)
	if err == nil {
		err = joints.Check(c, sec)
	}
	if err == nil {
		return sec, true
	}
	s.faults(path, err)
	return joints.Section{}, false
}

// runOnPath is the field of the design that says how far a part runs on past
// the joint at path.
func (s *shell) runOnPath(path string) string {
	switch form, joint := strings.CutSuffix(path, ".Joint"); {
	case strings.HasPrefix(path, "Opens["):
		return path + ".Beyond"
	case !joint:
	case form == "Floor.FloorBetween":
		return form + ".Raise"
	case strings.HasPrefix(form, "Floor."), strings.HasPrefix(form, "Roof."):
		return form + ".Over"
	}
	return path
}

// faults turns the faults of a joint into problems with its path.
func (s *shell) faults(path string, err error) {
	var f *joints.Fault
	switch many, ok := err.(interface{ Unwrap() []error }); {
	case ok && len(many.Unwrap()) > 0:
		for _, e := range many.Unwrap() {
			s.faults(path, e)
		}
	case errors.As(err, &f):
		switch f.Field {
		case "":
		case "Swell": // of a sliding part, which does not state it
			switch f, ok := s.d.Floor.(FloorBetween); {
			case strings.HasPrefix(path, "Opens["):
			case ok && f.Play > 0 && path == "Floor.FloorBetween.Joint":
				path = "Floor.FloorBetween.Play"
			default:
				path += ".Swell"
			}
		case "RunOn":
			path = s.runOnPath(path)
		default:
			path += "." + f.Field
		}
		got := ""
		if !math.IsNaN(f.Got) {
			got = num(f.Got)
		}
		p := Problem{Path: path, Code: "joint", Got: got, Lo: f.Lo, Hi: f.Hi, Unit: f.Unit, Why: f.Why}
		if f.Field != "" && s.c.has(p) {
			return // one number in the design, and as bad on the next edge
		}
		s.c.add(p)
	default:
		s.c.add(Problem{Path: path, Code: "joint", Why: fmt.Sprintf("%.300s", err.Error())})
	}
}

package species

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"

	"holt.example/box"
	"holt.example/species/cite"
)

// WriteCare writes the care sheet of an animal's box in Markdown: where and how
// high to hang it and which way it faces, what to do before it goes up, when and
// how it is cleaned, the law, safety, and the sources used. It says what is
// published; where nothing is, it says so. The site adds what is known of the
// place, and may be zero. A preset that is empty or of no region, and a site that
// cannot be, are a box.Problem, and nothing is written; any other error is the
// writer's.
func WriteCare(w io.Writer, animal Preset, site Site) error {
	if err := animal.check("WriteCare.animal"); err != nil {
		return err
	}
	if err := site.check(); err != nil {
		return asCare(err)
	}
	s := sheetOf{Writer: bufio.NewWriter(w), animal: animal, keys: animal.Sources}
	fmt.Fprintf(s, "# Care of a box for %s\n\n", escape(animal.Common))
	if len(animal.Scientific) > 0 {
		fmt.Fprintf(s, "For %s, %s. The law of the place comes first.\n", escape(strings.Join(animal.Scientific, ", ")), regionWord(animal.Region))
	}
	s.hang(site)
	s.head("Before it goes up")
	s.rules("inside-bare", "outside-finish", "bat-colour", "bedding", "open-secure", "hole-plate", "dormouse-back", "alien", "points")
	s.clean()
	s.head("What the sources add")
	for _, c := range animal.Cautions {
		s.say(c.Text, c.Basis)
	}
	s.head("Law")
	s.rules("legal-bat", "legal-dormouse", "legal-barn-owl", "legal-nest-uk", "legal-nest-us", "legal-nest-eu")
	s.rules("licence-bat", "law-local")
	s.head("Safety")
	if s.animal.Form != Tunnel {
		s.rules("safety-ladder", "safety-mass")
	}
	s.rules("safety-dust", "sharp-cut")
	s.rules("safety-owner", "safety-children")
	writeUsed(s.Writer, sourcesOf(s.keys))
	return s.Flush()
}

// asCare is what is wrong with a site, by the path of WriteCare.
func asCare(err error) error {
	own := func(p box.Problem) box.Problem {
		if rest, ok := strings.CutPrefix(p.Path, "Review."); ok {
			p.Path = "WriteCare." + rest
		}
		return p
	}
	switch e := err.(type) {
	case box.Problem:
		return own(e)
	case box.Problems:
		e = slices.Clone(e)
		for i := range e {
			e[i] = own(e[i])
		}
		return e
	}
	return err
}

// sheetOf is a care sheet being written.
type sheetOf struct {
	*bufio.Writer
	animal Preset
	keys   []string // of the sources cited
}

func (s *sheetOf) head(title string) { fmt.Fprintf(s, "\n## %s\n\n", title) }

func (s *sheetOf) say(text string, basis cite.Basis) {
	if basis == cite.Read {
		fmt.Fprintf(s, "- %s\n", escape(text))
		return
	}
	fmt.Fprintf(s, "- %s (%s)\n", escape(text), basis)
}

// rules writes those of the codes that apply to the animal.
func (s *sheetOf) rules(codes ...string) {
	for _, code := range codes {
		r, err := RuleOf(code)
		if err != nil || !r.Scope.For(s.animal) {
			continue
		}
		text := r.asks()
		text = strings.ToUpper(text[:1]) + text[1:]
		fmt.Fprintf(s, "- %s. %s (%s)\n", escape(text), escape(r.Why), escape(strings.Join(r.Cites(), ", ")))
		s.keys = append(s.keys, r.Sources...)
	}
}

func (s *sheetOf) hang(site Site) {
	s.head("Where it goes")
	if m := s.animal.Mount; m.Empty() {
		s.say("The sources used give no height for it.", cite.Read)
	} else {
		s.say("Height above ground: "+m.String()+" m.", cite.Read)
		if site.Above > 0 && !m.Has(site.Above) {
			s.say("At "+num(site.Above)+" m this one is outside that.", cite.Read)
		}
	}
	switch {
	case s.animal.Group == Bat:
		s.say("Into the sun for several hours a day, with a free drop below; out of artificial light.", cite.Practice)
	case s.animal.Form == Tunnel:
		s.say("On the ground in a quiet, dry place, the entrance out of the wind.", cite.Practice)
		return
	case s.animal.Group == Insect:
		s.say("In the sun, dry, out of the wind, and so firm that it does not swing.", cite.Practice)
	default:
		s.rules("aspect", "tilt-forward")
	}
	s.rules("back-batten", "bat-height", "height-small")
	if site.Place == OnPole || site.Place == AnyPlace {
		s.rules("predator-guard")
	}
	if site.Place == OnTree || site.Place == AnyPlace {
		s.rules("tree-fixing", "bat-tree")
	}
}

func (s *sheetOf) clean() {
	s.head("Cleaning")
	switch {
	case s.animal.Group == Bat:
		s.say("It is not cleaned: droppings fall out below. Do not open it.", cite.Practice)
		s.rules("open-bat")
		return
	case s.animal.Group == Insect:
		s.say("Bees winter in it: leave it where it is until the spring brood has flown.", cite.Practice)
		s.rules("bee-renew")
		return
	case s.animal.Key == dormouse:
		s.say("Whoever holds a licence to look in cleans it too; all others leave it alone.", cite.Practice)
	case len(s.animal.CleanMonths) == 0:
		s.say("The sources used name no months; wait until the breeding season is over and the box is empty.", cite.Practice)
	default:
		s.say("Months: "+monthWords(s.animal.CleanMonths)+".", cite.Read)
	}
	s.rules("clean-stop", "clean-dust")
	s.say("Hot water and a brush will do; no sprays and no disinfectant. Let it dry before you close it, and clear the drains.", cite.Practice)
	s.rules("open-bird")
}

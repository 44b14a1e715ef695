package joints

import "strings"

// Words tells a section in sentences, a line each: what each part does, what
// is cut from it, what stays empty, the gap, and what holds it.
func (c Corner) Words(s Section) []string {
	lines := []string{c.nameA() + " " + s.A.Why, c.nameB() + " " + s.B.Why}
	seen := map[string]bool{}
	zones := func(before string, zs []Zone) {
		for _, z := range zs {
			if line := before + z.Why; z.Why != "" && !seen[line] {
				seen[line] = true
				lines = append(lines, line)
			}
		}
	}
	zones("cut from "+c.nameA()+": ", s.A.Lose)
	zones("cut from "+c.nameB()+": ", s.B.Lose)
	zones("left empty: ", s.Void)
	switch {
	case s.Greatest > s.Least:
		lines = append(lines, "gap "+say(float64(s.Least))+" to "+say(float64(s.Greatest)))
	case s.Greatest > 0:
		lines = append(lines, "gap "+say(float64(s.Greatest)))
	}
	for _, h := range s.Holds {
		line := "held by " + h.Kind
		if h.Note != "" {
			line += " " + h.Note
		}
		lines = append(lines, line)
	}
	return lines
}

// Said is the name of a joint as a sentence has it, with its article: "a rebate
// joint", "an edge-glued joint". A name that ends in "joint" already gets the article
// alone; of no name it says "a joint".
func Said(name string) string {
	name = strings.TrimSpace(name)
	article := "a "
	if name != "" && strings.ContainsRune("aeiouAEIOU", rune(name[0])) {
		article = "an "
	}
	switch {
	case name == "":
		return "a joint"
	case strings.HasSuffix(strings.ToLower(name), "joint"):
		return article + name
	}
	return article + name + " joint"
}

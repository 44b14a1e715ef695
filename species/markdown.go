package species

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"holt.example/box"
	"holt.example/species/cite"
)

// WriteMarkdown writes presets as a catalogue in Markdown: one table a region,
// then for each preset what its sources add, how its values were chosen, and
// the range in print, and last the sources used. It writes nothing else: no
// date, no counters. An error is the writer's.
func WriteMarkdown(w io.Writer, presets []Preset) error {
	b := bufio.NewWriter(w)
	for _, region := range Regions() {
		var list []Preset
		for _, p := range presets {
			if p.Region == region {
				list = append(list, p)
			}
		}
		if len(list) == 0 {
			continue
		}
		fmt.Fprintf(b, "## %s\n\n", regionWord(region))
		b.WriteString("| Key | Animal | Form | Cavity, mm | Entrance, mm | Above floor, mm | Hole allowed, mm | Wall from, mm | Height, m | Cleaning |\n")
		b.WriteString("|---|---|---|---|---|---|---|---|---|---|\n")
		for _, p := range list {
			cells := []string{"`" + p.Key + "`", escape(p.Common) + " (" + escape(strings.Join(p.Scientific, ", ")) + ")", string(p.Form), p.cavityWords(), p.Entry.words(), p.Entry.aboveWords(),
				dash(p.Hole), size(p.WallLeast), dash(p.Mount), monthWords(p.CleanMonths)}
			b.WriteString("| " + strings.Join(cells, " | ") + " |\n")
		}
		b.WriteString("\n")
		for _, p := range list {
			p.writeDetail(b)
		}
	}
	writeSources(b, presets)
	return b.Flush()
}

func (p Preset) writeDetail(b *bufio.Writer) {
	fmt.Fprintf(b, "### %s: %s\n\n", p.Key, escape(p.Common))
	for _, c := range p.Cautions {
		if c.Basis == cite.Memory {
			fmt.Fprintf(b, "- %s *(From memory.)*\n", escape(c.Text))
		} else {
			fmt.Fprintf(b, "- %s\n", escape(c.Text))
		}
	}
	if p.Grip == Ladder {
		b.WriteString("- Rough wood, grooves, cleats or mesh below the entrance, to climb out.\n")
	}
	fmt.Fprintf(b, "- Chosen: %s\n", escape(strings.Join(p.Chosen, " ")))
	var in []string
	for _, r := range p.InPrint {
		s := size(r.Lo)
		if r.Hi != r.Lo {
			s += " to " + size(r.Hi)
		}
		in = append(in, fmt.Sprintf("%s %s (%s)", r.Of, s, count(r.Sources, "source")))
	}
	fmt.Fprintf(b, "- In print, mm: %s.\n", strings.Join(in, "; "))
	fmt.Fprintf(b, "- Sources: %s.\n\n", strings.Join(p.Sources, ", "))
}

func writeSources(b *bufio.Writer, presets []Preset) {
	used := map[string]bool{}
	for _, p := range presets {
		for _, k := range p.Sources {
			used[k] = true
		}
	}
	if len(used) == 0 {
		return
	}
	b.WriteString("## Sources\n\n")
	for _, s := range sources {
		if used[s.Key] {
			fmt.Fprintf(b, "- `%s`: %s\n", s.Key, escape(s.String()))
		}
	}
}

func regionWord(r Region) string {
	switch r {
	case Europe:
		return "Europe"
	case NorthAmerica:
		return "North America"
	}
	return string(r)
}

// cavityWords writes width x depth x height; "?" stands for what is not
// published.
func (p Preset) cavityWords() string {
	in := p.Inside
	if in == (box.Cavity{}) {
		return "-"
	}
	words := []string{}
	for _, x := range []box.MM{in.Width, in.Depth, in.Height} {
		if x == 0 {
			words = append(words, "?")
		} else {
			words = append(words, num(float64(x)))
		}
	}
	return strings.Join(words, " x ")
}

func (e Entry) words() string {
	s := string(e.Shape)
	switch {
	case e.Width == 0:
	case e.Shape == RoundEntry:
		s += " " + num(float64(e.Width))
	case e.Height == 0:
		s += " " + num(float64(e.Width)) + " wide"
	default:
		s += " " + num(float64(e.Width)) + " x " + num(float64(e.Height))
	}
	return s
}

func (e Entry) aboveWords() string {
	switch e.Datum {
	case NoDatum:
		return "-"
	case Centre:
		low, _ := e.Lowest()
		return num(float64(low)) + " (" + num(float64(e.Above)) + " to the centre)"
	}
	return num(float64(e.Above))
}

func size(x box.MM) string {
	if x == 0 {
		return "-"
	}
	return num(float64(x))
}

func dash(s Span) string {
	if s.Empty() {
		return "-"
	}
	return s.String()
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

// monthWords writes a run of months as "September to January".
func monthWords(m []int) string {
	names := [...]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}
	var known []int
	for _, x := range m {
		if x >= 1 && x <= 12 {
			known = append(known, x)
		}
	}
	if len(known) == 0 {
		return "-"
	}
	run := true
	for i := 1; i < len(known); i++ {
		run = run && known[i] == known[i-1]%12+1
	}
	if run && len(known) > 1 {
		return names[known[0]-1] + " to " + names[known[len(known)-1]-1]
	}
	words := make([]string, len(known))
	for i, x := range known {
		words[i] = names[x-1]
	}
	return strings.Join(words, ", ")
}

// escape makes text fit for one line, and harmless in a cell or line of Markdown.
func escape(s string) string {
	var b strings.Builder
	for _, r := range plain(s) {
		if strings.ContainsRune("\\`*_|[]<>#&", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

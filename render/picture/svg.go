package picture

import (
	"bytes"
	"fmt"
	"io"
	"strconv"
	"strings"

	"holt.example/box"
)

// num writes a number with up to four decimals, no exponent and no "-0".
func num(x float64) string {
	s := strconv.FormatFloat(x, 'f', 4, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}

// escape makes text safe in XML, in content and in attributes. Characters that
// XML 1.0 does not allow become U+FFFD.
func escape(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '&':
			b.WriteString("&amp;")
		case r == '<':
			b.WriteString("&lt;")
		case r == '>':
			b.WriteString("&gt;")
		case r == '"':
			b.WriteString("&quot;")
		case r == '\'':
			b.WriteString("&#39;")
		case r == '\t' || r == '\n' || r == '\r':
			b.WriteByte(' ')
		case r < 0x20 || r >= 0x7f && r < 0xa0 || r == 0xfffe || r == 0xffff:
			b.WriteRune('\ufffd')
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

func (c Colour) hex() string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// WriteSVG draws a plan and writes it as SVG.
func WriteSVG(w io.Writer, plan *box.Plan, o Options) error {
	p, err := New(plan, o)
	if err != nil {
		return err
	}
	return p.WriteSVG(w)
}

// WriteSVG writes the picture as a self-contained SVG in millimetres: text as
// text, in whatever plain font the reader has.
func (p *Picture) WriteSVG(w io.Writer) error {
	var b bytes.Buffer
	wd, ht := num(p.Width), num(p.Height)
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" role="img" aria-labelledby="t d">`+"\n", wd, ht, wd, ht)
	fmt.Fprintf(&b, "<title id=\"t\">%s</title>\n<desc id=\"d\">%s</desc>\n", escape(p.Name), escape(p.Note))
	fmt.Fprintf(&b, "<rect width=\"%s\" height=\"%s\" fill=\"%s\"/>\n", wd, ht, Paper.hex())
	p.svgPolys(&b)
	p.svgStrokes(&b)
	for _, c := range p.Circles {
		switch c.Mark {
		case Balloon:
			fmt.Fprintf(&b, `<circle cx="%s" cy="%s" r="%s" fill="%s" stroke="%s" stroke-width="%s"/>`+"\n",
				num(c.Centre.X), num(c.Centre.Y), num(c.Radius), Paper.hex(), Ink.hex(), num(p.Pen(Rule).Width))
		case Dot:
			fmt.Fprintf(&b, `<circle cx="%s" cy="%s" r="%s" fill="%s"/>`+"\n",
				num(c.Centre.X), num(c.Centre.Y), num(c.Radius), Ink.hex())
		}
	}
	fmt.Fprintf(&b, "<g font-family=\"Go, Helvetica, Arial, sans-serif\" fill=\"%s\">\n", Ink.hex())
	for _, t := range p.Texts {
		fmt.Fprintf(&b, `<text x="%s" y="%s" font-size="%s"`, num(t.At.X), num(t.At.Y), num(FontSize(t.Height)))
		switch t.Align {
		case Middle:
			b.WriteString(` text-anchor="middle"`)
		case End:
			b.WriteString(` text-anchor="end"`)
		}
		if t.Bold {
			b.WriteString(` font-weight="bold"`)
		}
		b.WriteByte('>')
		if t.Full != "" {
			fmt.Fprintf(&b, "<title>%s</title>", escape(t.Full))
		}
		fmt.Fprintf(&b, "%s</text>\n", escape(t.S))
	}
	b.WriteString("</g>\n</svg>\n")
	_, err := w.Write(b.Bytes())
	return err
}

func (p *Picture) svgPolys(b *bytes.Buffer) {
	if len(p.Polys) == 0 {
		return
	}
	// Each area is also stroked in its own colour: otherwise the paper shines
	// through between neighbours. The lines on top hide the widening.
	b.WriteString("<g fill-rule=\"evenodd\" stroke-width=\"0.15\" stroke-linejoin=\"round\">\n")
	for _, q := range p.Polys {
		hex := q.Tone.Colour().hex()
		fmt.Fprintf(b, `<path fill="%s" stroke="%s" d="`, hex, hex)
		for _, loop := range q.Loops {
			path(b, loop, true)
		}
		b.WriteString("\"/>\n")
	}
	b.WriteString("</g>\n")
}

func (p *Picture) svgStrokes(b *bytes.Buffer) {
	open := false
	var class Class
	for _, s := range p.Strokes() {
		if !open || s.Class != class {
			if open {
				b.WriteString("\"/>\n")
			}
			open, class = true, s.Class
			pen := p.Pen(class)
			fmt.Fprintf(b, `<path class="%s" fill="none" stroke="%s" stroke-width="%s" stroke-linecap="round" stroke-linejoin="round"`,
				class, pen.Colour.hex(), num(pen.Width))
			for i, d := range pen.Dash {
				if i == 0 {
					b.WriteString(` stroke-dasharray="`)
				} else {
					b.WriteByte(' ')
				}
				b.WriteString(num(d))
				if i == len(pen.Dash)-1 {
					b.WriteByte('"')
				}
			}
			b.WriteString(" d=\"")
		}
		path(b, s.Points, s.Closed)
	}
	if open {
		b.WriteString("\"/>\n")
	}
}

func path(b *bytes.Buffer, ps []Point, closed bool) {
	for i, q := range ps {
		switch i {
		case 0:
			b.WriteByte('M')
		case 1:
			b.WriteByte('L')
		default:
			b.WriteByte(' ')
		}
		b.WriteString(num(q.X))
		b.WriteByte(' ')
		b.WriteString(num(q.Y))
	}
	if closed {
		b.WriteByte('Z')
	}
}

package shop

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"bide/plan/shop/toml"
)

// drawnDay is a day file as people may write one: its text, and its jobs' blocks.
// Every comment in it is another.
type drawnDay struct {
	r        *rand.Rand
	b        strings.Builder
	comments int
	eol      string
	packed   bool // no empty lines between the jobs
}

func (d *drawnDay) pick(words ...string) string { return words[d.r.IntN(len(words))] }

func (d *drawnDay) pickPair(pairs ...[2]string) [2]string { return pairs[d.r.IntN(len(pairs))] }

func (d *drawnDay) comment(kind string) string {
	d.comments++
	return fmt.Sprintf("# %s %d", kind, d.comments)
}

func (d *drawnDay) line(text string) { d.b.WriteString(text + d.eol) }

// drawDay draws a day of some jobs, in mm or in.
func drawDay(r *rand.Rand) string {
	d := &drawnDay{r: r, eol: []string{"\n", "\r\n"}[r.IntN(2)]}
	d.b.WriteString(d.pick("", toml.ByteOrderMark))
	unit := d.pick("mm", "in")
	d.line(d.comment("head"))
	d.line("units = '" + unit + "'")
	d.line("start = 2026-11-25T06:00:00" + d.pick("", " "+d.comment("start")))
	if r.IntN(2) == 0 {
		d.line("end   = 2026-11-25 14:00:00")
	}
	d.packed = r.IntN(4) == 0
	n := 1 + r.IntN(7)
	for i := range n {
		if !d.packed {
			d.line(d.pick("", "   ", "\t"))
		}
		if r.IntN(4) == 0 {
			d.line("")
			d.line(d.comment("apart"))
			d.line("")
		}
		d.job(i, n, unit)
	}
	text := d.b.String()
	switch r.IntN(4) {
	case 0:
		text = strings.TrimRight(text, "\r\n")
	case 1:
		text += d.eol + d.comment("end")
	}
	return text
}

// job draws one job; its keys in any order.
func (d *drawnDay) job(i, n int, unit string) {
	r := d.r
	for range r.IntN(3) {
		d.line(d.comment("above"))
	}
	d.line(d.pick("[[job]]", "[[ job ]]", `[["job"]] `, "[[job]] "+d.comment("header")))
	entry := d.pick("3 x 1-1/2", "2 x 40 mm", "2x1/2in", "1 1/4")
	many := "[" + d.eol + "  '" + entry + "', " + d.comment("slit") + d.eol + "  '38.5mm'," + d.eol + "]"
	slits := d.pick("['"+entry+"']", `["`+entry+`", '12.7 mm']`, many)
	pairs := [][2]string{
		{"id", fmt.Sprintf("'J%d'", i)},
		{"material", d.pick("'felt'", `"paper tape"`)},
		{"web", d.pick("'10 in'", "'250 mm'", `"254,0 mm"`)},
		{"slits", slits},
		{"length_m", d.pick("1000", "1_500.5", "2e3")},
	}
	optional := [][2]string{
		{"trim", d.pick("'6 mm'", "'1/8'", "0")}, {"shift", d.pick("'free'", "'centred'")}, {"arrange", d.pick("'any'", "'listed'", "'entries'")},
		{"speed", d.pick("40", "55.5", "120.0")}, {"due", "2026-11-25T11:00:00"}, {"state", d.pick("'waiting'", "'done'", "'hold'")},
		{"fixed", fmt.Sprint(i + 1)}, {"after", fmt.Sprintf("['J%d']", (i+1)%n)},
		{"core", d.pick("'89 mm'", "'3-1/2 in'")}, d.pickPair([2]string{"roll_m", d.pick("50", "72.5")}, [2]string{"roll_diameter", d.pick("'150 mm'", "'8 in'")}),
		{"customer", d.pick("'hall 2'", `"depot \"7\""`)}, {"note", "'cut first'"},
		{"chosen_shift", d.pick("0", "'1/64 in'", "-0.025", "'0.000001 mm'")}, // or a stale one
	}
	if slits != many {
		optional = append(optional, [2]string{"chosen_slits", d.pick(slits, slits, "['"+entry+"']")})
	}
	for _, p := range optional {
		if r.IntN(3) == 0 && (p[0] != "after" || i < n-1) {
			pairs = append(pairs, p)
		}
	}
	r.Shuffle(len(pairs), func(i, k int) { pairs[i], pairs[k] = pairs[k], pairs[i] })
	indent, style := d.pick("", "", "  ", "\t"), r.IntN(3)
	for _, p := range pairs {
		if r.IntN(8) == 0 {
			d.line(d.pick("", indent+d.comment("between")))
		}
		key := [3]string{p[0] + " = ", fmt.Sprintf("%-8s = ", p[0]), p[0] + "="}[style]
		d.line(indent + key + p[1] + d.pick("", "", "  ", "  "+d.comment("line")))
	}
	if !d.packed && r.IntN(2) == 0 { // in a packed file it would be above the next
		d.line(d.comment("below"))
	}
}

// blocksOf cuts a drawn day into its jobs by lines alone: from the comments above a
// header to the last line that is a key or directly follows one.
func blocksOf(text string) map[string]string {
	out := map[string]string{}
	var block []string
	id, before := "", ""
	flush := func() {
		if id != "" {
			out[id] = strings.Join(block, "\n")
		}
		block, id = nil, ""
	}
	for _, line := range strings.Split(strings.TrimPrefix(text, toml.ByteOrderMark), "\n") {
		bareLine := strings.TrimSpace(line)
		switch {
		case strings.HasPrefix(bareLine, "# above") || strings.HasPrefix(bareLine, "[["):
			if !strings.HasPrefix(before, "# above") {
				flush()
			}
		case strings.HasPrefix(bareLine, "# apart") || strings.HasPrefix(bareLine, "# end"):
			flush()
		case strings.HasPrefix(bareLine, "id"):
			_, after, _ := strings.Cut(bareLine, "'")
			id, _, _ = strings.Cut(after, "'")
		}
		block, before = append(block, line), bareLine
	}
	flush()
	for id, block := range out {
		out[id] = strings.TrimSpace(block)
	}
	return out
}

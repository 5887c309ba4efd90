package sheet_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"bide/plan"
	"bide/plan/sheet"
)

// node is an element of a page, read as strict XML, or a text in it, without a name.
type node struct {
	name  string
	attrs map[string]string
	parts []*node
	own   string
}

// pages are those of the days that were asked for.
var pages = map[*plan.DayPlan]*node{}

// page reads what HTML writes of a day; one that is asked for again is not written again.
func page(t *testing.T, p planned) *node {
	t.Helper()
	if pages[p.plan] == nil {
		pages[p.plan] = parsed(t, p)
	}
	return pages[p.plan]
}

// parsed reads it with a decoder that forgives nothing, to its end.
func parsed(t *testing.T, p planned) *node {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(written(t, sheet.HTML, p)))
	root := &node{}
	open := []*node{root}
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%s: %v", p.name, err)
		}
		top := open[len(open)-1]
		switch token := token.(type) {
		case xml.StartElement:
			n := &node{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				n.attrs[a.Name.Local] = a.Value
			}
			top.parts = append(top.parts, n)
			open = append(open, n)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			top.parts = append(top.parts, &node{own: string(token)})
		}
	}
	return root
}

// all are the elements of a name at or below the node, in order.
func (n *node) all(name string) (out []*node) {
	if n.name == name || name == "" && n.name != "" {
		out = append(out, n)
	}
	for _, c := range n.parts {
		out = append(out, c.all(name)...)
	}
	return out
}

// children are the elements right below.
func (n *node) children() (out []*node) {
	for _, c := range n.parts {
		if c.name != "" {
			out = append(out, c)
		}
	}
	return out
}

// text is all of it, in order.
func (n *node) text() string {
	var b strings.Builder
	n.tell(&b)
	return b.String()
}

func (n *node) tell(b *strings.Builder) {
	b.WriteString(n.own)
	for _, c := range n.parts {
		c.tell(b)
	}
}

// class are those of a name that have a class.
func (n *node) class(name, class string) (out []*node) {
	for _, c := range n.all(name) {
		if slices.Contains(strings.Fields(c.attrs["class"]), class) {
			out = append(out, c)
		}
	}
	return out
}

// section is the part with an id; nil where there is none.
func (n *node) section(id string) *node {
	for _, s := range n.all("section") {
		if s.attrs["id"] == id {
			return s
		}
	}
	return nil
}

// words are a node's text on one line.
func (n *node) words() string { return strings.Join(strings.Fields(n.text()), " ") }

// rows are the cells of a table's body.
func (n *node) rows() (out [][]string) {
	for _, r := range n.all("tbody")[0].all("tr") {
		var cells []string
		for _, c := range r.children() {
			cells = append(cells, c.words())
		}
		out = append(out, cells)
	}
	return out
}

// A page is well-formed, needs nothing from elsewhere, runs nothing, and is built for
// those who hear it: headings in steps of one, tables with heads, pictures with words.
func TestHTMLIsOnePageForAll(t *testing.T) {
	for _, p := range days(t) {
		root, ids, level := page(t, p), map[string]bool{}, 0
		for _, n := range root.all("") {
			if slices.Contains([]string{"script", "link", "img", "iframe", "object", "embed", "base", "form", "a"}, n.name) {
				t.Errorf("%s: there is a %s", p.name, n.name)
			}
			for a, v := range n.attrs {
				if a == "src" || a == "href" || a == "style" || strings.HasPrefix(a, "on") {
					t.Errorf("%s: %s has %s=%q", p.name, n.name, a, v)
				}
			}
			if id := n.attrs["id"]; id != "" {
				if ids[id] {
					t.Errorf("%s: the id %s is there twice", p.name, id)
				}
				ids[id] = true
			}
			if len(n.name) == 2 && n.name[0] == 'h' && n.name[1] >= '1' && n.name[1] <= '6' {
				now := int(n.name[1] - '0')
				if now > level+1 || now == 1 && level > 0 || n.words() == "" {
					t.Errorf("%s: %s %q comes below a heading of level %d", p.name, n.name, n.words(), level)
				}
				level = now
			}
		}
		for _, style := range root.all("style") {
			if strings.Contains(style.text(), "url(") || strings.Contains(style.text(), "@import") {
				t.Errorf("%s: a style reaches out", p.name)
			}
		}
		for _, n := range root.all("table") {
			for _, th := range n.all("th") {
				if th.attrs["scope"] == "" || th.words() == "" {
					t.Errorf("%s: a head of a table has the scope %q and says %q", p.name, th.attrs["scope"], th.words())
				}
			}
			if len(n.all("thead")) != 1 || len(n.all("tbody")) != 1 || len(n.all("caption")) != 1 && n.attrs["class"] != "moves" {
				t.Errorf("%s: a table without head, body or caption: %.80s", p.name, n.words())
			}
			heads := n.all("thead")[0].all("tr")
			wide := len(heads[len(heads)-1].children())
			for _, row := range n.rows() {
				if len(row) != wide {
					t.Errorf("%s: a row of %d cells below %d heads", p.name, len(row), wide)
				}
			}
		}
		for _, n := range root.all("svg") {
			if n.attrs["role"] != "img" || n.attrs["aria-label"] == "" {
				t.Errorf("%s: a picture without words", p.name)
			}
		}
		labelled := map[*node]bool{}
		for _, l := range root.all("label") {
			for _, n := range l.children() {
				labelled[n] = l.words() != ""
			}
		}
		for _, n := range root.all("input") {
			if n.attrs["type"] != "checkbox" || n.attrs["aria-label"] == "" && !labelled[n] {
				t.Errorf("%s: a box that says nothing: %v", p.name, n.attrs)
			}
		}
	}
}

// The numbered moves are those of the plan, in its order and in both units, each with a
// box to fill in.
func TestHTMLListsEveryMove(t *testing.T) {
	for _, p := range days(t) {
		u, other := p.opts.Unit, plan.Inches
		if u == plan.Inches {
			other = plan.Millimetres
		}
		root := page(t, p)
		for i, s := range p.plan.Steps() {
			sec := root.section(fmt.Sprintf("changeover-%d", i+1))
			if sec == nil {
				t.Fatalf("%s: changeover %d isn't there", p.name, i+1)
			}
			var rows [][]string
			if tables := sec.class("table", "moves"); len(tables) > 0 {
				rows = tables[0].rows()
				if n := len(tables[0].all("input")); n != len(rows) {
					t.Errorf("%s, changeover %d: %d boxes for %d moves", p.name, i+1, n, len(rows))
				}
			}
			if len(rows) != len(s.Changeover.Moves) {
				t.Errorf("%s, changeover %d: %d moves, want %d", p.name, i+1, len(rows), len(s.Changeover.Moves))
				continue
			}
			for k, m := range s.Changeover.Moves {
				if g := rows[k]; !tells(g[1:], k+1, m, u, other) || g[8] != m.Why.Text(u) {
					t.Errorf("%s, changeover %d: move %d is %v, want %+v", p.name, i+1, k+1, g, m)
				}
			}
		}
	}
}

// Each holder stands once in the tables: by its cut, parked or resting; the moved have a
// star.
func TestHTMLTellsWhereEveryHolderStands(t *testing.T) {
	for _, p := range days(t) {
		root := page(t, p)
		for i, s := range p.plan.Steps() {
			sec := root.section(fmt.Sprintf("changeover-%d", i+1))
			seen := map[string]int{}
			for _, n := range sec.class("table", "side") {
				for _, r := range n.rows() {
					switch at := shortest(r[1]); len(r) {
					case 2: // holder, place
						seen[r[0]+" at "+at]++
					case 5: // cut, place, holder at, off by, holder
						if !addsUp(r[1], r[3], r[2]) {
							t.Errorf("%s, changeover %d: %v doesn't add up", p.name, i+1, r)
						}
						seen[r[4]+" at "+shortest(r[2])+" cuts "+r[0]]++
					default:
						seen[r[2]+" at "+at+" cuts "+r[0]]++
					}
				}
			}
			for k, h := range s.Changeover.Holders {
				want := strconv.Itoa(k + 1)
				if h.At != s.Changeover.From[k] {
					want += "*"
				}
				want += " at " + shown(p.opts.Unit, h.At)
				if h.Use == plan.Cutting {
					want += fmt.Sprintf(" cuts %d", h.Cut)
				}
				if seen[want] != 1 {
					t.Errorf("%s, changeover %d: %q is there %d times", p.name, i+1, want, seen[want])
				}
			}
			if len(seen) != len(s.Changeover.Holders) {
				t.Errorf("%s, changeover %d: %d holders told of, want %d", p.name, i+1, len(seen), len(s.Changeover.Holders))
			}
		}
	}
}

// The tables of the day and of the knife have the numbers of the plan document.
func TestHTMLHasTheDocumentsNumbers(t *testing.T) {
	p := demoDay(t)
	var doc struct {
		Totals struct {
			Repositions int
			Setup       float64 `json:"setup_s"`
		}
		Jobs []struct {
			ID, Material string
			Cuts         []float64
			Changeover   struct {
				Repositions int
				Setup       float64 `json:"setup_s"`
			}
			Settings struct {
				Bevel float64 `json:"bevel_deg"`
				Tip   float64 `json:"tip_mm"`
				Set   float64 `json:"set_bar"`
				Force float64 `json:"force_n"`
				Guess bool    `json:"cut_through_guessed"`
				Anvil struct {
					Bend float64 `json:"bend_mm"`
				}
			}
		}
	}
	if err := json.Unmarshal(written(t, sheet.JSON, p), &doc); err != nil {
		t.Fatal(err)
	}
	root := page(t, p)
	jobs, settings := root.section("day").all("table")[0].rows(), root.section("knife").all("table")[0].rows()
	for i, j := range doc.Jobs {
		r := jobs[i]
		want := []string{strconv.Itoa(i + 1), j.ID, j.Material, strconv.Itoa(len(j.Cuts)), strconv.Itoa(j.Changeover.Repositions), fmt.Sprintf("%.1f", j.Changeover.Setup/60)}
		if got := append(slices.Clone(r[:3]), r[4:7]...); !slices.Equal(got, want) {
			t.Errorf("job %d is %v, want %v", i+1, got, want)
		}
		k, guess := j.Settings, ""
		if k.Guess {
			guess = "g"
		}
		want = []string{j.ID, fmt.Sprint(k.Bevel), fmt.Sprint(k.Tip), fmt.Sprintf("%.2f", k.Set), guess, fmt.Sprintf("%.0f", k.Force),
			fmt.Sprintf("%.1f", k.Force*float64(len(j.Cuts))/1000), fmt.Sprintf("%.3f", k.Anvil.Bend)}
		r = settings[i]
		if got := []string{r[1], r[4], r[5], r[7], r[8], r[9], r[10], r[11]}; !slices.Equal(got, want) {
			t.Errorf("settings %d are %v, want %v", i+1, got, want)
		}
	}
	all := fmt.Sprintf("%d moves, %.1f min of setup", doc.Totals.Repositions, doc.Totals.Setup/60)
	if text := root.section("day").words(); !strings.Contains(text, all) || len(jobs) != len(doc.Jobs) || len(settings) != len(doc.Jobs) {
		t.Errorf("%d and %d rows for %d jobs, or no %q in %s", len(jobs), len(settings), len(doc.Jobs), all, text)
	}
}

// hostileNames try to break out of a page's text, its attributes, its style, its markup.
var hostileNames = []string{
	`<script>alert(1)</script>`, `"><img src=x onerror=alert(1)>`, `' onload='alert(1)`, `</style><b>`, `</title>`, `]]>`, `<![CDATA[`,
	`<!-- `, `-->`, `&lt;b&gt;`, `&nbsp; &#0; &`, `{{.}}`, "`${1}`", "a\x00b\x1b[31m\u202eevil\u2028\x85", "\xff\xfe", "\ufffe\uffff\ufeff", "+ = @ %", "紙 weiß",
}

// Whatever names a shop has, they come out as they are, and as text.
func TestHTMLEscapesNames(t *testing.T) {
	for seed, name := range hostileNames {
		b, s := evenBeam(20, plan.Span{From: -300 * plan.Millimetre, To: 1900 * plan.Millimetre})
		b.Name, s.Job = name, name+"0"
		j := drawnJob(rand.New(rand.NewPCG(7, 7)), 0, plan.Millimetres)
		j.ID, j.Material, j.Entries = name+"1", name+long("m", 200), j.Entries[:1]
		j.Entries[0].Count = 3
		refused := j
		refused.ID, refused.Web = name+"2", 9000*plan.Millimetre
		p := must(t, fmt.Sprintf("hostile name %d", seed), plan.Millimetres, b, s, &plan.Day{Start: sixOClock, Jobs: []plan.Job{j, refused}})
		p.opts.Notes, p.opts.Demo = []string{name + "3"}, true
		if len(p.plan.Steps()) != 1 || len(p.plan.Refused()) != 1 {
			t.Fatalf("%q: %d planned, %d refused", name, len(p.plan.Steps()), len(p.plan.Refused()))
		}
		root := parsed(t, p) // script and the like, and attributes of the names' own, would be seen below
		clean := asShown(name)
		for what, got := range map[string]string{
			"the heading": root.all("h1")[0].text(), "the job": root.section("day").all("table")[0].all("td")[0].text(),
			"the title": root.all("title")[0].text(), "the note": root.section("day").all("li")[0].text(),
		} {
			if !strings.HasPrefix(got, clean) {
				t.Errorf("%q: %s is %q", name, what, got)
			}
		}
		if n := len(root.all("script")) + len(root.all("img")) + len(root.all("b")); n > 0 {
			t.Errorf("%q: %d elements of the name's own", name, n)
		}
		for _, r := range root.text() {
			if r != '\n' && (unicode.IsControl(r) || unicode.In(r, unicode.Bidi_Control, unicode.Zl, unicode.Zp)) {
				t.Errorf("%q: the page holds %U", name, r)
			}
		}
	}
}

// asShown is a name with a question mark for each letter that must not be printed.
func asShown(name string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune("\x00\x1b\x85\u202e\u2028\ufffe\uffff\ufeff\ufffd", r) {
			return '?'
		}
		return r
	}, strings.ToValidUTF8(name, "?"))
}

// In each changeover the cautions come before all else, what frees the run and the line
// to sign after it, and the same words as on the text sheet stand between.
func TestHTMLHasTheCautionsFirst(t *testing.T) {
	for _, p := range days(t) {
		root := page(t, p)
		if first := root.all("p"); !strings.Contains(first[1].words(), "permit nothing") {
			t.Errorf("%s: the page begins with %q", p.name, first[1].words())
		}
		for i, s := range p.plan.Steps() {
			text := root.section(fmt.Sprintf("changeover-%d", i+1)).words()
			at := -1
			for _, part := range []string{"BEFORE A HAND GOES NEAR THE BEAM. Local codes", "secured against falling", "Locked out as", "zero pressure proved", "gaps close", "Material", "Setup", "Moves", "Before releasing the run",
				"Sharps: " + strconv.Itoa(s.Setup.Swaps) + " to swap", "knives may drop", "Set by"} {
				now := strings.Index(text, part)
				if now <= at {
					t.Errorf("%s, changeover %d: %q is at %d, what comes before it at %d", p.name, i+1, part, now, at)
				}
				at = now
			}
			if powered := strings.Contains(text, "made from the control station, guards closed and everyone clear"); powered != (len(s.Changeover.Moves) > 0 && p.plan.Beam.Drive.Kind != plan.ByHand) {
				t.Errorf("%s, changeover %d: the positioner's power is said to be needed: %v", p.name, i+1, powered)
			}
		}
	}
}

// The page has every word of the text sheet's facts, line by line, and no job that isn't
// wanted.
func TestHTMLSaysWhatTheTextSays(t *testing.T) {
	for _, p := range days(t) {
		root := page(t, p)
		for i := range p.plan.Steps() {
			have := root.section(fmt.Sprintf("changeover-%d", i+1)).words()
			for _, fact := range factsOf(sheetOf(t, p, i)) {
				if !strings.Contains(have, fact) {
					t.Errorf("%s, changeover %d: no %q", p.name, i+1, fact)
				}
			}
		}
	}
	p := demoDay(t)
	p.opts.Only = p.plan.Steps()[4].Job.ID
	root := parsed(t, p)
	if root.section("changeover-5") == nil || len(root.class("section", "leaf")) != 2 || root.section("day") != nil {
		t.Error("of one job wanted there is more, or less, than the knife and its changeover")
	}
}

// factsOf are the labelled texts at the head of a changeover's sheet, each on one line.
// Left out are names, which are broken to fit, and slits and causes, whose columns differ.
func factsOf(lines []string) (facts []string) {
	var label string
	for _, line := range lines {
		if line == "" {
			break
		}
		first := strings.TrimSpace(line[:11])
		if first != "" {
			label = first
		}
		switch text := strings.Join(strings.Fields(line[11:]), " "); {
		case label == "Job" || label == "Material" || (label == "Slits" || label == "Setup") && first == "":
		case first != "":
			facts = append(facts, text)
		default:
			facts[len(facts)-1] += " " + text
		}
	}
	return facts
}

// The picture is to scale: with the scale read off its own numbers each holder was where
// the strokes of the upper row are, and the web lies between its edges.
func TestHTMLDrawsToScale(t *testing.T) {
	for _, p := range days(t) {
		root := page(t, p)
		for i, s := range p.plan.Steps() {
			svg := root.section(fmt.Sprintf("changeover-%d", i+1)).all("svg")[0]
			x, ok := scaleOf(t, p.opts.Unit, svg)
			if !ok {
				continue
			}
			near := func(what, got string, at plan.Length) {
				v, _ := strconv.ParseFloat(got, 64)
				if diff := v - x(at); diff > 0.11 || diff < -0.11 {
					t.Errorf("%s, changeover %d: %s is drawn at %s, want %.1f", p.name, i+1, what, got, x(at))
				}
			}
			was := strings.Split(svg.all("path")[1].attrs["d"], "M")[1:]
			if len(was) != len(s.Changeover.From) {
				t.Fatalf("%s, changeover %d: %d holders are drawn, want %d", p.name, i+1, len(was), len(s.Changeover.From))
			}
			for k, stroke := range was {
				near("a holder", strings.Fields(stroke)[0], s.Changeover.From[k])
			}
			web := strings.FieldsFunc(svg.class("path", "thick")[0].attrs["d"], func(r rune) bool { return strings.ContainsRune("MHVZ ", r) })
			near("the web", web[0], s.Layout.Web.From)
			near("the web", web[2], s.Layout.Web.To)
			full := 0
			for _, path := range svg.class("path", "full") {
				full += strings.Count(path.attrs["d"], "M")
			}
			if full != len(s.Layout.Cuts) {
				t.Errorf("%s, changeover %d: %d holders are drawn cutting, want %d", p.name, i+1, full, len(s.Layout.Cuts))
			}
		}
	}
}

// scaleOf is the scale of a picture, off the first and the last of its numbers.
func scaleOf(t *testing.T, u plan.Unit, svg *node) (func(plan.Length) float64, bool) {
	t.Helper()
	var at []plan.Length
	var x []float64
	for _, n := range svg.class("text", "middle") {
		if n.attrs["y"] == "14.0" {
			l, err := plan.ParseLength(n.words(), u)
			v, err2 := strconv.ParseFloat(n.attrs["x"], 64)
			if err != nil || err2 != nil {
				t.Fatal(err, err2)
			}
			at, x = append(at, l), append(x, v)
		}
	}
	if len(at) < 3 || len(at) > 13 {
		t.Errorf("there are %d numbers on a scale", len(at))
	}
	last := len(at) - 1
	if last < 1 {
		return nil, false
	}
	return func(l plan.Length) float64 {
		return x[0] + (x[last]-x[0])*float64(l-at[0])/float64(at[last]-at[0])
	}, true
}

// The document and each part of the page say of the demo that it is no shop of anyone's.
func TestDemoIsSaidToBeOne(t *testing.T) {
	const note = "DEMO: an invented day, not your beam"
	day := demoDay(t)
	day.opts.Demo = true
	if got := string(written(t, sheet.JSON, day)); !strings.Contains(got, `"`+note+`"`) {
		t.Error("the document of the demo doesn't say so")
	}
	html := string(written(t, sheet.HTML, day))
	if parts := strings.Split(html, "<section")[1:]; len(parts) < 3 || strings.Count(html, note) != len(parts) {
		t.Errorf("the page of the demo says so %d times, in %d parts", strings.Count(html, note), len(parts))
	}
}

package sheet_test

import (
	"fmt"
	"math/big"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"bide/plan"
	"bide/plan/sheet"
)

// pagesOf are the lines of a text sheet by page.
func pagesOf(text string) (pages [][]string) {
	for _, p := range strings.Split(text, "\f\n") {
		pages = append(pages, strings.Split(strings.TrimSuffix(p, "\n"), "\n"))
	}
	return pages
}

// Every line fits the paper, and nothing but line ends and form feeds controls it.
func TestTextFitsThePaper(t *testing.T) {
	for _, p := range days(t) {
		t.Run(p.name, func(t *testing.T) {
			text := string(written(t, sheet.Text, p))
			for n, page := range pagesOf(text) {
				if len(page) > 60 {
					t.Errorf("page %d has %d lines", n+1, len(page))
				}
				for _, line := range page {
					if utf8.RuneCountInString(line) > 80 || strings.HasSuffix(line, " ") {
						t.Errorf("page %d: %q is too long or ends in blanks", n+1, line)
					}
				}
			}
			for _, r := range text {
				if r != '\n' && r != '\f' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)) {
					t.Fatalf("the sheet holds %U", r)
				}
				if r > 127 && p.name != "hostile" {
					t.Fatalf("the sheet holds %q, which is not ASCII", r)
				}
			}
		})
	}
}

// Each page says whose it is, of what day, which page of how many and what it is
// about; each changeover begins on a page of its own and says where it goes on.
func TestTextHeadsEveryPage(t *testing.T) {
	for _, p := range days(t) {
		pages := pagesOf(string(written(t, sheet.Text, p)))
		begun := 0
		for n, page := range pages {
			if !strings.HasSuffix(page[0], fmt.Sprintf("    page %d of %d", n+1, len(pages))) || !strings.Contains(page[0], "Wed 2026-11-25") {
				t.Errorf("%s: page %d is headed %q", p.name, n+1, page[0])
			}
			title := fmt.Sprintf("CHANGEOVER %d of %d", begun, len(p.plan.Steps()))
			switch first := !strings.Contains(page[1], ", continued"); {
			case strings.HasPrefix(page[1], "THE KNIFE"):
				if begun > 0 || p.opts.Knife == nil {
					t.Errorf("%s: page %d is %q", p.name, n+1, page[1])
				}
			case n == 0:
				if !strings.HasPrefix(page[1], "THE DAY") {
					t.Errorf("%s: the first page is %q", p.name, page[1])
				}
			case first:
				begun++
			case begun > 0 && !strings.HasPrefix(page[1], title):
				t.Errorf("%s: page %d is %q, want %q", p.name, n+1, page[1], title)
			}
		}
		if begun != len(p.plan.Steps()) {
			t.Errorf("%s: %d changeovers begin, want %d", p.name, begun, len(p.plan.Steps()))
		}
	}
}

var (
	moveLine   = regexp.MustCompile(`^\[ \] +(\d+) +(\d+) +(-?[\d.]+) +(-?[\d.]+) +([-+][\d.]+) (drive|oper\.) +(-?[\d.]+)  \S`)
	cutCell    = regexp.MustCompile(`(\d+) +(-?[\d.]+) +(\d+)([* ]|$)`)
	besideCell = regexp.MustCompile(`(\d+) +(-?[\d.]+) +(-?[\d.]+) +([-+]?[\d.]+) +(\d+)([* ]|$)`) // place, holder at, off by
	idleCell   = regexp.MustCompile(`(\d+) +(-?[\d.]+)([* ]|$)`)
)

// sheetOf is the lines of one changeover's pages, without their heads. A day that is
// asked for again is not written again.
func sheetOf(t *testing.T, p planned, step int) (lines []string) {
	t.Helper()
	if sheets[p.plan] == nil {
		p.opts.Only = ""
		sheets[p.plan] = pagesOf(string(written(t, sheet.Text, p)))
	}
	title := fmt.Sprintf("CHANGEOVER %d of ", step+1)
	for _, page := range sheets[p.plan] {
		if strings.HasPrefix(page[1], title) {
			lines = append(lines, page[4:]...)
		}
	}
	return lines
}

// sheets are the pages of the days whose sheets were asked for.
var sheets = map[*plan.DayPlan][][]string{}

// The numbered moves are those of the plan, in its order, in both units.
func TestTextListsEveryMove(t *testing.T) {
	for _, p := range days(t) {
		u, other := p.opts.Unit, plan.Inches
		if u == plan.Inches {
			other = plan.Millimetres
		}
		for i, s := range p.plan.Steps() {
			var got [][]string
			for _, line := range sheetOf(t, p, i) {
				if m := moveLine.FindStringSubmatch(line); m != nil {
					got = append(got, m[1:])
				}
			}
			if len(got) != len(s.Changeover.Moves) {
				t.Errorf("%s, changeover %d: %d moves, want %d", p.name, i+1, len(got), len(s.Changeover.Moves))
				continue
			}
			for k, m := range s.Changeover.Moves {
				if g := got[k]; !tells(g, k+1, m, u, other) {
					t.Errorf("%s, changeover %d: move %d is %v, want %+v", p.name, i+1, k+1, g, m)
				}
			}
		}
	}
}

// tells reports whether a row gives a move: its number, the holder, from, to, by, the side
// and where to in the other unit.
func tells(row []string, number int, m plan.Move, u, other plan.Unit) bool {
	side := "drive"
	if m.To < m.From {
		side = "oper."
	}
	return row[0] == strconv.Itoa(number) && row[1] == strconv.Itoa(m.Holder) &&
		shortest(row[2]) == shown(u, m.From) && shortest(row[3]) == shown(u, m.To) && addsUp(row[2], row[4], row[3]) &&
		row[5] == side && shortest(row[6]) == shown(other, m.To)
}

// shown is a place as the sheet prints it, to 0.01 mm or 0.0001 in, in its shortest
// form.
func shown(u plan.Unit, l plan.Length) string {
	if u == plan.Inches {
		return shortest(big.NewRat(int64(l), int64(plan.Inch)).FloatString(4))
	}
	return shortest(big.NewRat(int64(l), int64(plan.Millimetre)).FloatString(2))
}

// shortest is a printed number without noughts that tell nothing.
func shortest(number string) string {
	x, _ := strconv.ParseFloat(number, 64)
	return strconv.FormatFloat(x+0, 'f', -1, 64) // + 0: no minus before nought
}

// addsUp reports whether printed numbers add up to the last digit.
func addsUp(from, by, to string) bool {
	a, ok := new(big.Rat).SetString(from)
	b, ok2 := new(big.Rat).SetString(by)
	c, ok3 := new(big.Rat).SetString(to)
	return ok && ok2 && ok3 && a.Add(a, b).Cmp(c) == 0
}

// Each holder stands once in the tables below the moves, at its place: those that
// cut by their cut, the parked and the resting apart; the moved have a star.
func TestTextTellsWhereEveryHolderStands(t *testing.T) {
	for _, p := range days(t) {
		for i, s := range p.plan.Steps() {
			seen := map[string]string{}
			part := ""
			cell := cutCell
			for _, line := range sheetOf(t, p, i) {
				if word, _, ok := strings.Cut(line, ": "); ok && strings.Contains("CUTS PARKED outside the web RESTING lifted over the web", word) {
					part = strings.ToLower(strings.Fields(word)[0])
					continue
				}
				if strings.HasPrefix(line, "BEFORE RELEASING") {
					break
				}
				if strings.Contains(line, "holder at") {
					cell = besideCell
				}
				for cell := range cellsOf(part, cell, line) {
					if seen[cell] != "" {
						t.Errorf("%s, changeover %d: %s twice", p.name, i+1, cell)
					}
					seen[cell] = part
				}
			}
			for k, h := range s.Changeover.Holders {
				name, where := "cuts", fmt.Sprintf("%d ", h.Cut)
				if h.Use != plan.Cutting {
					name, where = h.Use.String(), ""
				}
				star := ""
				if h.At != s.Changeover.From[k] {
					star = "*"
				}
				want := where + shown(p.opts.Unit, h.At) + " " + strconv.Itoa(k+1) + star
				if seen[want] != name {
					t.Errorf("%s, changeover %d: %q isn't among the %s", p.name, i+1, want, name)
				}
			}
			if len(seen) != len(s.Changeover.Holders) {
				t.Errorf("%s, changeover %d: %d holders told of, want %d", p.name, i+1, len(seen), len(s.Changeover.Holders))
			}
		}
	}
}

// cellsOf reads the cells of a line of a table as "cut place holder" with the
// place in its shortest form.
func cellsOf(part string, cut *regexp.Regexp, line string) map[string]bool {
	out := map[string]bool{}
	switch {
	case strings.HasPrefix(line, "STRIP"):
	case part == "cuts":
		for _, m := range cut.FindAllStringSubmatch(line, -1) {
			at, h := m[2], m[3]
			if cut == besideCell && addsUp(m[2], m[4], m[3]) {
				at, h = m[3], m[5]
			}
			out[m[1]+" "+shortest(at)+" "+h+strings.TrimSpace(m[len(m)-1])] = true
		}
	case part != "" && !strings.Contains(line, "-") || regexp.MustCompile(`^ +\d+ +-?[\d.]+[* ]? *( +\d+ +-?[\d.]+[* ]?)*$`).MatchString(line):
		for _, m := range idleCell.FindAllStringSubmatch(line, -1) {
			out[shortest(m[2])+" "+m[1]+strings.TrimSpace(m[3])] = true
		}
	}
	return out
}

// What frees the run and the line to sign stand together, and not on a page of
// their own.
func TestTextLeavesNoLoneLines(t *testing.T) {
	for _, p := range days(t) {
		for n, page := range pagesOf(string(written(t, sheet.Text, p))) {
			frees := slices.Index(page, "BEFORE RELEASING THE RUN")
			signs := slices.ContainsFunc(page, func(line string) bool { return strings.HasPrefix(line, "Set by ") })
			if frees >= 0 != signs || frees == 4 || frees > 4 && page[frees-1] != "" {
				t.Errorf("%s, page %d: %q and its end stand apart or alone", p.name, n+1, page[1])
			}
		}
	}
}

// A table that goes on over a page has its head on that page too.
func TestTextRepeatsTheHeadOfATable(t *testing.T) {
	pages := pagesOf(string(written(t, sheet.Text, crowdedDay(t))))
	inTable := 0
	for _, page := range pages {
		for i, line := range page[4:] {
			if moveLine.MatchString(line) && i == 0 {
				t.Errorf("%s: moves without a head", page[1])
			}
			if strings.HasPrefix(line, "[ ] step holder") {
				inTable++
			}
		}
	}
	if inTable < 9 {
		t.Errorf("the head of the moves is there %d times; 500 moves need more pages than that", inTable)
	}
}

// The sheet of a holder that serves its cut from beside it says by how much each
// strip is off: edges at 10, 41, 69.5 and 90 for 10, 40, 70 and 90.
func TestTextTellsTheStripError(t *testing.T) {
	text := strings.Join(strings.Fields(string(written(t, sheet.Text, besideDay()))), " ")
	for _, want := range []string{
		"slit 1 +1 mm, slit 2 -1.5 mm, slit 3 +0.5 mm",
		"1 10.0 10.0 0.0 2", "2 40.0 41.0 +1.0 3", "3 70.0 69.5 -0.5 5", "4 90.0 90.0 0.0 6*",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q isn't on the sheet:\n%s", want, text)
		}
	}
}

// The blades to swap are named, and are as many as the plan counts.
func TestTextNamesTheBladesToSwap(t *testing.T) {
	named := regexp.MustCompile(`swap \d+ blades?: holders? ([-\d, ]+)`)
	swaps := 0
	for _, p := range days(t) {
		for i, s := range p.plan.Steps() {
			m := named.FindStringSubmatch(strings.Join(strings.Fields(strings.Join(sheetOf(t, p, i), " ")), " "))
			n := 0
			if m != nil {
				n = len(numbers(t, m[1]))
			}
			if n != s.Setup.Swaps {
				t.Errorf("%s, changeover %d: %d blades named, the plan swaps %d", p.name, i+1, n, s.Setup.Swaps)
			}
			swaps += n
		}
	}
	if swaps == 0 {
		t.Error("no blade was swapped: the test proves nothing")
	}
}

// numbers reads a list of numbers and ranges: 1-3, 7.
func numbers(t *testing.T, text string) (out []int) {
	t.Helper()
	for _, part := range strings.Split(text, ",") {
		first, last, isRange := strings.Cut(strings.TrimSpace(part), "-")
		a, err := strconv.Atoi(first)
		b := a
		if isRange && err == nil {
			b, err = strconv.Atoi(last)
		}
		if err != nil {
			t.Fatalf("%q is no list of numbers", text)
		}
		for n := a; n <= b; n++ {
			out = append(out, n)
		}
	}
	return out
}

// Every changeover has the cautions, and none says that a lockout isn't needed.
func TestTextHasTheCautions(t *testing.T) {
	must := []string{"Local codes", "Locked out", "zero pressure", "knives may drop", "gaps close", "Sharps:", "nips", "Set by"}
	for _, p := range days(t) {
		for i := range p.plan.Steps() {
			text := strings.Join(sheetOf(t, p, i), "\n")
			for _, word := range must {
				if !strings.Contains(text, word) {
					t.Errorf("%s, changeover %d says nothing of %q", p.name, i+1, word)
				}
			}
		}
	}
}

// Time counted side by side permits nothing, and
// the positioner's power is left to the site's procedure wherever it moves some.
func TestTextKeepsHandsFromTravellingHolders(t *testing.T) {
	reckoned := 0
	for _, p := range days(t) {
		for i, s := range p.plan.Steps() {
			text := strings.Join(strings.Fields(strings.Join(sheetOf(t, p, i), " ")), " ")
			powered := strings.Contains(text, "need its power: made from the control station, guards closed and everyone clear, as the site's procedure says; hands at the beam only locked out. MOVES:")
			if want := len(s.Changeover.Moves) > 0 && p.plan.Beam.Drive.Kind != plan.ByHand; powered != want {
				t.Errorf("%s, changeover %d: the positioner's power is said to be needed: %v", p.name, i+1, powered)
			}
			if s.Setup.Swaps > 0 && s.Setup.Positioner > 0 && s.Setup.Beside {
				reckoned++
				if !strings.Contains(text, "at the same time, only where the site's procedure allows it") {
					t.Errorf("%s, changeover %d: moves and blades go on side by side unguarded", p.name, i+1)
				}
			}
		}
	}
	if reckoned == 0 {
		t.Error("nothing was reckoned side by side: the test proves nothing")
	}
}

// "Fewest" is said only where floor and plan meet.
func TestTextTellsTheFloor(t *testing.T) {
	for floor, wants := range map[int]string{0: "", 1: "fewest moves in this order", 3: "no plan in this order can need fewer than 3 moves"} {
		p := besideDay() // one move
		if floor > 0 {
			p.plan.Floor = &plan.Floor{Repositions: floor, By: plan.ByDistance}
		}
		text := strings.Join(strings.Fields(string(written(t, sheet.Text, p))), " ")
		if !strings.Contains(text, wants) || strings.Contains(text, " Least ") != (floor > 0) || strings.Contains(text, "fewest") != (floor == 1) {
			t.Errorf("with a floor of %d: %s", floor, text)
		}
	}
}

// Refused jobs stand in every form with their reasons, and the one job wanted is
// written alone.
func TestRefusedJobsAreTold(t *testing.T) {
	p := emptyDay(t)
	reason := p.plan.Refused()[0].Faults[0].Why(plan.Millimetres)
	for name, write := range map[string]writer{"text": sheet.Text, "csv": sheet.CSV, "json": sheet.JSON, "html": sheet.HTML} {
		text := strings.Join(strings.Fields(string(written(t, write, p))), " ")
		if !strings.Contains(text, reason) {
			t.Errorf("%s: %q isn't told", name, reason)
		}
	}
	day := drawnDay(t, 0)
	day.opts.Only = day.plan.Steps()[1].Job.ID
	for _, page := range pagesOf(string(written(t, sheet.Text, day))) {
		if !strings.HasPrefix(page[1], "CHANGEOVER 2 of ") {
			t.Errorf("with one job wanted there is a page %q", page[1])
		}
	}
}

// The same plan gives the same bytes.
func TestOutputIsTheSameEveryTime(t *testing.T) {
	for name, write := range map[string]writer{"text": sheet.Text, "csv": sheet.CSV, "json": sheet.JSON, "html": sheet.HTML} {
		first := written(t, write, demoDay(t))
		if !slices.Equal(first, written(t, write, demoDay(t))) {
			t.Errorf("%s differs from one time to the next", name)
		}
	}
}

package sheet

import (
	"bytes"
	"encoding/json"
	"io"
	"strconv"
	"strings"
	"time"

	"bide/plan"
)

// JSON writes the plan document: lengths as exact decimal millimetres whatever the
// shop's unit, times of day as local date and time, spans of time in seconds to
// the millisecond. The same plan gives the same bytes.
func JSON(w io.Writer, d *plan.DayPlan, o Options) error {
	var compact bytes.Buffer
	e := json.NewEncoder(&compact)
	e.SetEscapeHTML(false)
	if err := e.Encode(newDocument(d, &o)); err != nil {
		return err
	}
	_, err := w.Write(fold(bytes.TrimSpace(compact.Bytes())))
	return err
}

// millimetres is a length written as an exact decimal of a millimetre.
type millimetres plan.Length

func (l millimetres) MarshalJSON() ([]byte, error) { return []byte(plan.Length(l).MM()), nil }

// seconds is a span of whole milliseconds written as a decimal of a second.
type seconds time.Duration

func (s seconds) MarshalJSON() ([]byte, error) {
	text := strconv.FormatInt(time.Duration(s).Milliseconds(), 10)
	sign, digits := "", text
	if rest, ok := strings.CutPrefix(text, "-"); ok {
		sign, digits = "-", rest
	}
	digits = strings.Repeat("0", max(0, 4-len(digits))) + digits
	whole, part := digits[:len(digits)-3], strings.TrimRight(digits[len(digits)-3:], "0")
	if part != "" {
		part = "." + part
	}
	return []byte(sign + whole + part), nil
}

// moment is a local date and time.
type moment time.Time

func (m moment) MarshalJSON() ([]byte, error) {
	return []byte(time.Time(m).Round(time.Millisecond).Format(`"2006-01-02T15:04:05.999"`)), nil
}

// fold lays compact JSON out in lines: a list or object that holds another has
// each of its members on a line of its own, any other stays on one line.
func fold(in []byte) []byte {
	f := folded{broken: holdsOther(in)}
	for i := 0; i < len(in); i++ {
		if in[i] == '"' {
			end := stringEnd(in, i)
			f.Write(in[i:end])
			i = end - 1
			continue
		}
		f.mark(in[i], i)
	}
	f.WriteByte('\n')
	return f.Bytes()
}

// folded is JSON on its way into lines.
type folded struct {
	bytes.Buffer
	broken map[int]bool // by where it opens: is the bracket broken into lines?
	open   []bool       // the same of the brackets around
	depth  int          // how many of these are
}

// mark writes one byte that isn't in a string; it stands at i.
func (f *folded) mark(c byte, i int) {
	last := len(f.open) - 1
	switch c {
	case '{', '[':
		f.WriteByte(c)
		f.open = append(f.open, f.broken[i])
		f.turn(f.broken[i], 1)
	case '}', ']':
		broken := f.open[last]
		f.open = f.open[:last]
		f.turn(broken, -1)
		f.WriteByte(c)
	case ',':
		f.WriteByte(c)
		if !f.open[last] {
			f.WriteByte(' ')
		}
		f.turn(f.open[last], 0)
	case ':':
		f.WriteString(": ")
	default:
		f.WriteByte(c)
	}
}

// turn begins a line, one step further in or out, where the bracket is broken.
func (f *folded) turn(broken bool, deeper int) {
	if broken {
		f.depth += deeper
		f.WriteString("\n" + strings.Repeat("  ", f.depth))
	}
}

// holdsOther says of each bracket, by where it opens, whether it holds another.
func holdsOther(in []byte) map[int]bool {
	out := map[int]bool{}
	var open []int
	for i := 0; i < len(in); i++ {
		switch in[i] {
		case '"':
			i = stringEnd(in, i) - 1
		case '{', '[':
			if len(open) > 0 {
				out[open[len(open)-1]] = true
			}
			open = append(open, i)
		case '}', ']':
			open = open[:len(open)-1]
		}
	}
	return out
}

// stringEnd is where the string that opens at i has ended.
func stringEnd(in []byte, i int) int {
	for i++; in[i] != '"'; i++ {
		if in[i] == '\\' {
			i++
		}
	}
	return i + 1
}

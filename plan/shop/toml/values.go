package toml

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"bide/plan"
	"bide/plan/words"
)

// longestText bounds a name, so that one text can't fill a sheet.
const longestText = 80

// Text is a key's text, cleaned and without blanks at its ends: "A " and "A" would
// look alike.
func (t *Table) Text(key, otherwise string) string {
	value, ok := t.Get(key)
	if !ok {
		return otherwise
	}
	s, ok := value.(string)
	switch {
	case !ok:
		t.Wrong(key, "text in quotes", value)
	case strings.TrimSpace(s) == "":
		t.Refuse(key, "", "the text is empty")
	case utf8.RuneCountInString(s) > longestText:
		t.Refuse(key, "shorten it", "the text is longer than %d characters", longestText)
	default:
		return words.Clean(strings.TrimSpace(s))
	}
	return otherwise
}

// Choice is the index of a key's word among those accepted; 0, the default, when
// the key is missing.
func (t *Table) Choice(key string, words ...string) int {
	value, ok := t.Get(key)
	if !ok {
		return 0
	}
	s, _ := value.(string)
	for i, word := range words {
		if s == word {
			return i
		}
	}
	t.Refuse(key, "write "+OneOf(words), "%s is not known", KindOf(value))
	return 0
}

// OneOf lists words to choose from.
func OneOf(words []string) string {
	all := make([]string, len(words))
	for i, word := range words {
		all[i] = strconv.Quote(word)
	}
	return strings.Join(all, " or ")
}

// Flag is a key's true or false.
func (t *Table) Flag(key string, otherwise bool) bool {
	value, ok := t.Get(key)
	if !ok {
		return otherwise
	}
	b, ok := value.(bool)
	if !ok {
		t.Refuse(key, "write true or false, without quotes", "%s is not true or false", KindOf(value))
		return otherwise
	}
	return b
}

// Whole is a key's whole number from least to most.
func (t *Table) Whole(key string, otherwise, least, most int) int {
	value, ok := t.Get(key)
	if !ok {
		return otherwise
	}
	n, ok := value.(int64)
	switch {
	case !ok:
		t.Wrong(key, "whole number", value)
	case n < int64(least) || n > int64(most):
		t.Refuse(key, "correct it", "%d is out of range: from %d to %d are accepted", n, least, most)
	default:
		return int(n)
	}
	return otherwise
}

// Number is a key's number from least to most.
func (t *Table) Number(key string, otherwise, least, most float64) float64 {
	value, ok := t.Get(key)
	if !ok {
		return otherwise
	}
	x, ok := float(value)
	switch {
	case !ok:
		t.Wrong(key, "number", value)
	case x < least || x > most:
		t.Refuse(key, "correct it", "%s is out of range: from %s to %s are accepted", Plainly(x), Plainly(least), Plainly(most))
	default:
		return x
	}
	return otherwise
}

// float is a finite number of a TOML file.
func float(value any) (float64, bool) {
	switch v := value.(type) {
	case int64:
		return float64(v), true
	case float64:
		return v, !math.IsNaN(v) && !math.IsInf(v, 0)
	}
	return 0, false
}

// Exact is a key's number as the decimal written, from least to most.
func (t *Table) Exact(key string, least, most float64) *big.Rat {
	x := t.Number(key, 0, least, most)
	r, _ := new(big.Rat).SetString(strconv.FormatFloat(x, 'g', -1, 64))
	return r
}

// Ranges of lengths. What is larger than any machine would break the sums.
var (
	Largest    = 2 * plan.MaxRail
	AnyPlace   = plan.Span{From: -Largest, To: Largest}
	AboveZero  = plan.Span{From: plan.Nanometre, To: Largest}
	ZeroOrMore = plan.Span{From: 0, To: Largest}
)

// Length is a key's length within a range.
func (t *Table) Length(key string, otherwise plan.Length, within plan.Span) plan.Length {
	value, ok := t.Get(key)
	if !ok {
		return otherwise
	}
	l, err := t.ReadLength(value)
	if err != nil {
		t.RefuseLength(key, err)
		return otherwise
	}
	if !t.InRange(key, l, within) {
		return otherwise
	}
	return l
}

// Rates are the keys whose lengths are for a time.
var Rates = map[string]string{"speed": "/s", "acceleration": "/s²"}

// InRange notes a length out of its range.
func (t *Table) InRange(key string, l plan.Length, within plan.Span) bool {
	show := func(l plan.Length) string { return t.Doc.Unit.Show(l) + Rates[key] }
	switch {
	case l < within.From && within.From == plan.Nanometre:
		t.Refuse(key, "correct it", "%s must be above 0", show(l))
	case l < within.From && within.From == 0:
		t.Refuse(key, "correct it", "%s must not be below 0", show(l))
	case l < within.From || l > within.To:
		t.Refuse(key, "correct it", "%s is out of range: from %s to %s are accepted", show(l), show(within.From), show(within.To))
	default:
		return true
	}
	return false
}

// RefuseLength notes a length that can't be read. The error's own examples give
// way to one of the key.
func (t *Table) RefuseLength(key string, err error) {
	what := strings.TrimSuffix(err.Error(), "; "+plan.LengthExamples)
	t.Refuse(key, "", "%s", what)
}

// ReadLength reads a length as a file writes it, a number or text.
func (t *Table) ReadLength(value any) (plan.Length, error) {
	switch v := value.(type) {
	case int64:
		return plan.LengthOf(float64(v), t.Doc.Unit)
	case float64:
		return plan.LengthOf(v, t.Doc.Unit)
	case string:
		return plan.ParseLength(words.Clean(v), t.Doc.Unit)
	}
	return 0, fmt.Errorf("%s is no length", KindOf(value))
}

// Span is a key's list of two ascending places.
func (t *Table) Span(key string) plan.Span {
	value, ok := t.Get(key)
	if !ok {
		return plan.Span{}
	}
	ends, ok := value.([]any)
	if len(ends) != 2 {
		has := KindOf(value)
		if ok {
			has = fmt.Sprint(len(ends))
		}
		t.Refuse(key, "", "[from, to] with exactly two positions is needed, not %s", has)
		return plan.Span{}
	}
	var places [2]plan.Length
	for i, end := range ends {
		l, err := t.ReadLength(end)
		if err != nil {
			t.RefuseLength(key, err)
			return plan.Span{}
		}
		if !t.InRange(key, l, AnyPlace) {
			return plan.Span{}
		}
		places[i] = l
	}
	return t.Ascending(key, plan.Span{From: places[0], To: places[1]})
}

// Ascending notes a stretch whose ends are the wrong way round or the same.
func (t *Table) Ascending(key string, s plan.Span) plan.Span {
	if s.From >= s.To {
		u := t.Doc.Unit
		t.Refuse(key, "write the operator-side end first", "%s is not below %s", u.Show(s.From), u.Show(s.To))
		return plan.Span{}
	}
	return s
}

// Duration is a key's number of units of time: up to a day in minutes, and up to an
// hour in seconds, which count for every holder or blade. With the most holders and
// jobs a day's sum of them stays in range.
func (t *Table) Duration(key string, otherwise float64, unit time.Duration) time.Duration {
	most := float64(24 * time.Hour / unit)
	if unit == time.Second {
		most = time.Hour.Seconds()
	}
	return time.Duration(math.Round(t.Number(key, otherwise, 0, most) * float64(unit)))
}

// clockWords is what a date and time is called where one is wanted.
func (d *Document) clockWords() string {
	if d.typed != nil {
		return "date and time"
	}
	return "date and time (written without quotes)"
}

package shop

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"bide/plan"
)

// longestText bounds a name, so that one text can't fill a sheet.
const longestText = 80

// text is a key's text, cleaned and without blanks at its ends: "A " and "A" would
// look alike.
func (t *table) text(key, otherwise string) string {
	value, ok := t.get(key)
	if !ok {
		return otherwise
	}
	s, ok := value.(string)
	switch {
	case !ok:
		t.wrong(key, "text in quotes", value)
	case strings.TrimSpace(s) == "":
		t.refuse(key, "", "the text is empty")
	case utf8.RuneCountInString(s) > longestText:
		t.refuse(key, "shorten it", "the text is longer than %d characters", longestText)
	default:
		return Clean(strings.TrimSpace(s))
	}
	return otherwise
}

// choice is the index of a key's word among those accepted; 0, the default, when
// the key is missing.
func (t *table) choice(key string, words ...string) int {
	value, ok := t.get(key)
	if !ok {
		return 0
	}
	s, _ := value.(string)
	for i, word := range words {
		if s == word {
			return i
		}
	}
	t.refuse(key, "write "+oneOf(words), "%s is not known", kindOf(value))
	return 0
}

// oneOf lists words to choose from.
func oneOf(words []string) string {
	all := make([]string, len(words))
	for i, word := range words {
		all[i] = strconv.Quote(word)
	}
	return strings.Join(all, " or ")
}

// flag is a key's true or false.
func (t *table) flag(key string, otherwise bool) bool {
	value, ok := t.get(key)
	if !ok {
		return otherwise
	}
	b, ok := value.(bool)
	if !ok {
		t.refuse(key, "write true or false, without quotes", "%s is neither true nor false", kindOf(value))
		return otherwise
	}
	return b
}

// whole is a key's whole number from least to most.
func (t *table) whole(key string, otherwise, least, most int) int {
	value, ok := t.get(key)
	if !ok {
		return otherwise
	}
	n, ok := value.(int64)
	switch {
	case !ok:
		t.wrong(key, "whole number", value)
	case n < int64(least) || n > int64(most):
		t.refuse(key, "correct it", "%d is out of range: from %d to %d are accepted", n, least, most)
	default:
		return int(n)
	}
	return otherwise
}

// number is a key's number from least to most.
func (t *table) number(key string, otherwise, least, most float64) float64 {
	value, ok := t.get(key)
	if !ok {
		return otherwise
	}
	x, ok := float(value)
	switch {
	case !ok:
		t.wrong(key, "number", value)
	case x < least || x > most:
		t.refuse(key, "correct it", "%s is out of range: from %s to %s are accepted", plainly(x), plainly(least), plainly(most))
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

// exact is a key's number as the decimal written, from least to most.
func (t *table) exact(key string, least, most float64) *big.Rat {
	x := t.number(key, 0, least, most)
	r, _ := new(big.Rat).SetString(strconv.FormatFloat(x, 'g', -1, 64))
	return r
}

// Ranges of lengths. What is larger than any machine would break the sums.
var (
	largest    = 2 * plan.MaxRail
	anyPlace   = plan.Span{From: -largest, To: largest}
	aboveZero  = plan.Span{From: plan.Nanometre, To: largest}
	zeroOrMore = plan.Span{From: 0, To: largest}
)

// length is a key's length within a range.
func (t *table) length(key string, otherwise plan.Length, within plan.Span) plan.Length {
	value, ok := t.get(key)
	if !ok {
		return otherwise
	}
	l, err := t.readLength(value)
	if err != nil {
		t.refuseLength(key, err)
		return otherwise
	}
	if !t.inRange(key, l, within) {
		return otherwise
	}
	return l
}

// rates are the keys whose lengths are for a time.
var rates = map[string]string{"speed": "/s", "acceleration": "/s²"}

// inRange notes a length out of its range.
func (t *table) inRange(key string, l plan.Length, within plan.Span) bool {
	show := func(l plan.Length) string { return t.doc.unit.Show(l) + rates[key] }
	switch {
	case l < within.From && within.From == plan.Nanometre:
		t.refuse(key, "correct it", "%s must be above 0", show(l))
	case l < within.From && within.From == 0:
		t.refuse(key, "correct it", "%s must not be below 0", show(l))
	case l < within.From || l > within.To:
		t.refuse(key, "correct it", "%s is out of range: from %s to %s are accepted", show(l), show(within.From), show(within.To))
	default:
		return true
	}
	return false
}

// refuseLength notes a length that can't be read. The error's own examples give
// way to one of the key.
func (t *table) refuseLength(key string, err error) {
	what := strings.TrimSuffix(err.Error(), "; "+plan.LengthExamples)
	t.refuse(key, "", "%s", what)
}

// readLength reads a length as a file writes it, a number or text.
func (t *table) readLength(value any) (plan.Length, error) {
	switch v := value.(type) {
	case int64:
		return plan.LengthOf(float64(v), t.doc.unit)
	case float64:
		return plan.LengthOf(v, t.doc.unit)
	case string:
		return plan.ParseLength(Clean(v), t.doc.unit)
	}
	return 0, fmt.Errorf("%s is no length", kindOf(value))
}

// span is a key's list of two ascending places.
func (t *table) span(key string) plan.Span {
	value, ok := t.get(key)
	if !ok {
		return plan.Span{}
	}
	ends, ok := value.([]any)
	if len(ends) != 2 {
		has := kindOf(value)
		if ok {
			has = fmt.Sprint(len(ends))
		}
		t.refuse(key, "", "[from, to] with exactly two places is needed, not %s", has)
		return plan.Span{}
	}
	var places [2]plan.Length
	for i, end := range ends {
		l, err := t.readLength(end)
		if err != nil {
			t.refuseLength(key, err)
			return plan.Span{}
		}
		if !t.inRange(key, l, anyPlace) {
			return plan.Span{}
		}
		places[i] = l
	}
	return t.ascending(key, plan.Span{From: places[0], To: places[1]})
}

// ascending notes a stretch whose ends are the wrong way round or the same.
func (t *table) ascending(key string, s plan.Span) plan.Span {
	if s.From >= s.To {
		u := t.doc.unit
		t.refuse(key, "write the operator-side end first", "%s is not below %s", u.Show(s.From), u.Show(s.To))
		return plan.Span{}
	}
	return s
}

// duration is a key's number of units of time: up to a day in minutes, and up to an
// hour in seconds, which count for every holder or blade. With the most holders and
// jobs a day's sum of them stays in range.
func (t *table) duration(key string, otherwise float64, unit time.Duration) time.Duration {
	most := float64(24 * time.Hour / unit)
	if unit == time.Second {
		most = time.Hour.Seconds()
	}
	return time.Duration(math.Round(t.number(key, otherwise, 0, most) * float64(unit)))
}

// clockWords is what a date and time is called where one is wanted.
func (d *document) clockWords() string {
	if d.typed != nil {
		return "date and time"
	}
	return "date and time (they stand without quotes)"
}

// clock is a key's date and time of day. A file's times are those of the clock on
// the wall; they are kept in UTC so that no machine's zone comes in.
func (t *table) clock(key string) time.Time {
	value, ok := t.get(key)
	if !ok {
		return time.Time{}
	}
	at, ok := value.(time.Time)
	switch {
	case !ok:
		t.wrong(key, t.doc.clockWords(), value)
	case at.Location().String() == "date-local" || at.Location().String() == "time-local":
		t.refuse(key, "", "both a date and a time of day are needed")
	case at.Location().String() != "datetime-local":
		t.refuse(key, "leave the time zone out: "+t.example(key), "the time carries a time zone, a shop's files mean the clock on the wall")
	case at.Year() < 2000 || at.Year() > 2199:
		t.refuse(key, "correct it", "the year %d is out of range: from 2000 to 2199 are accepted", at.Year())
	default:
		return time.Date(at.Year(), at.Month(), at.Day(), at.Hour(), at.Minute(), at.Second(), at.Nanosecond(), time.UTC)
	}
	return time.Time{}
}

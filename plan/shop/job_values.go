package shop

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"time"

	"bide/plan"
	"bide/plan/shop/dayfile"
	"bide/plan/shop/toml"
)

// edits lists what must be changed in a job's entry for it to be read as the job
// wanted, in the order of the keys; none when it is already. Only what the file
// holds counts: what a material asks of the beam follows from it.
func (r *dayReading) edits(i int, want *plan.Job) (out []dayfile.Edit) {
	have, u := &r.day.Jobs[i], r.unit
	set := func(differs bool, key, value string) {
		if differs {
			out = append(out, dayfile.Edit{Key: key, Value: value})
		}
	}
	set(have.ID != want.ID, "id", toml.String(want.ID))
	set(have.Material != want.Material, "material", toml.String(want.Material))
	set(have.Web != want.Web, "web", toml.Length(want.Web, u))
	set(!slices.EqualFunc(have.Entries, want.Entries, sameEntry), "slits", r.slits(i, want.Entries))
	set(have.Trim != want.Trim, "trim", toml.Length(want.Trim, u))
	set(have.Shift != want.Shift, "shift", word(shiftWords, int(want.Shift)))
	set(have.Arrange != want.Arrange, "arrange", word(arrangeWords, int(want.Arrange)))
	out = append(out, r.chosenEdits(i, want)...)
	set(have.Metres != want.Metres, "length_m", toml.Number(want.Metres))
	set(!sameSpeed(have.Speed, want.Speed), "speed", speedText(want.Speed, u))
	set(have.Roll.Core != want.Roll.Core, "core", optionalLength(want.Roll.Core, u))
	set(have.Roll.Metres != want.Roll.Metres, "roll_m", optionalNumber(want.Roll.Metres))
	set(have.Roll.Parent != want.Roll.Parent, "parent_m", optionalNumber(want.Roll.Parent))
	set(have.Roll.Diameter != want.Roll.Diameter, "roll_diameter", optionalLength(want.Roll.Diameter, u))
	set(!have.Due.Equal(want.Due), "due", r.time(want.Due))
	set(!slices.Equal(have.After, want.After), "after", idList(want.After))
	set(have.State != want.State, "state", word(stateWords, int(want.State)))
	set(!have.Began.Equal(want.Began), "began", r.time(want.Began))
	set(!have.Ended.Equal(want.Ended), "ended", r.time(want.Ended))
	set(have.Ran != want.Ran, "ran_m", optionalNumber(want.Ran))
	set(have.Unbroken != want.Unbroken, "unbroken", map[bool]string{true: "true"}[want.Unbroken])
	set(have.Fixed != want.Fixed, "fixed", turnText(want.Fixed))
	set(have.Customer != want.Customer, "customer", optionalText(want.Customer))
	set(have.Note != want.Note, "note", optionalText(want.Note))
	return out
}

// sameEntry reports whether two entries are the same in a file, which holds
// finished widths.
func sameEntry(a, b plan.Entry) bool { return a.Count == b.Count && a.Finished == b.Finished }

// slits is a list of slits. Entries that the file has already are written as they
// are there.
func (r *dayReading) slits(i int, entries []plan.Entry) string {
	written, _ := r.entries[i].Keys["slits"].([]any)
	items := make([]string, len(entries))
	for k, e := range entries {
		items[k] = toml.Entry(e, r.unit)
		for _, item := range written {
			n, l, err := jobReader{Table: r.entries[i]}.slit(item)
			if text := asWritten(item); err == nil && text != "" && sameEntry(e, plan.Entry{Count: n, Finished: l}) {
				items[k] = text
				break
			}
		}
	}
	return toml.List(items)
}

// asWritten is an item of a list of slits as the file has it.
func asWritten(item any) string {
	switch v := item.(type) {
	case string:
		return toml.String(v)
	case int64:
		return strconv.FormatInt(v, 10)
	case float64:
		return toml.Number(v)
	}
	return ""
}

// word is a word of a file in quotes; one out of range is left for the check of
// what was written to find.
func word(words []string, i int) string {
	if i >= len(words) {
		return toml.String(fmt.Sprint(i))
	}
	return toml.String(words[i])
}

// sameSpeed reports whether two speeds are the same but for the rounding between
// feet and metres.
func sameSpeed(a, b float64) bool { return a == b || math.Abs(a-b) <= 1e-12*math.Abs(b) }

// speedText is a speed in m/min as a file of that unit writes it: m/min or ft/min,
// with as few decimals as read back the same.
func speedText(mPerMin float64, u plan.Unit) string {
	if u == plan.Millimetres {
		return toml.Number(mPerMin)
	}
	for decimals := range 17 {
		text := strconv.FormatFloat(mPerMin/feet, 'f', decimals, 64)
		if x, err := strconv.ParseFloat(text, 64); err == nil && sameSpeed(x*feet, mPerMin) {
			return text
		}
	}
	return toml.Number(mPerMin / feet)
}

// optionalText is a text; none, which takes the key out, when it isn't given.
func optionalText(text string) string {
	if text == "" {
		return ""
	}
	return toml.String(text)
}

// time is a time in the file's zone; none, which takes the key out, when it isn't given.
func (r *dayReading) time(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return toml.Time(t.In(r.zone))
}

// optionalLength is a length; none, which takes the key out, where it is nought.
func optionalLength(l plan.Length, u plan.Unit) string {
	if l == 0 {
		return ""
	}
	return toml.Length(l, u)
}

// optionalNumber is the same of a number.
func optionalNumber(x float64) string {
	if x == 0 {
		return ""
	}
	return toml.Number(x)
}

// idList is a list of job ids; none for an empty one.
func idList(ids []string) string {
	if len(ids) == 0 {
		return ""
	}
	items := make([]string, len(ids))
	for i, id := range ids {
		items[i] = toml.String(id)
	}
	return toml.List(items)
}

// turnText is a fixed turn; none for a job without one.
func turnText(turn int) string {
	if turn == 0 {
		return ""
	}
	return strconv.Itoa(turn)
}

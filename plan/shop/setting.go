package shop

import (
	"fmt"
	"slices"
	"strings"

	"bide/plan"
)

// mostSlits bounds the slits of a job that is being set up, as in day.toml.
const mostSlits = plan.MaxCount

// readSetting reads [changeover] of positions.toml: the changeover under way; nil when
// there is none.
func readSetting(root *table, holders int) *plan.Setting {
	if !root.has("changeover") {
		return nil
	}
	t := root.sub("changeover")
	t.need("job", "slits")
	s := &plan.Setting{
		Job:   t.text("job", ""),
		Slits: cutWidths(t, "slits"),
		Shift: t.length("shift", 0, anyPlace),
		To:    places(t, "to", holders),
		Found: t.flag("corrected", false),
	}
	for _, m := range t.list("moved") {
		m.need("from")
		anew := map[int]bool{} // a holder may have been moved twice
		made := plan.Made{Holder: readNumber(m, holders, anew), From: m.length("from", 0, anyPlace)}
		s.Made = append(s.Made, made)
		m.done()
	}
	t.done()
	return s
}

// places reads a list of one place for each holder; nil where there is none.
func places(t *table, key string, holders int) (out []plan.Length) {
	value, ok := t.get(key)
	if !ok {
		return nil
	}
	list, ok := value.([]any)
	if !ok || len(list) != holders {
		t.refuse(key, "", "a list of %d places is needed, one for each holder", holders)
		return nil
	}
	for i, item := range list {
		at, err := t.readLength(item)
		if err != nil {
			t.refuseLength(key, fmt.Errorf("holder %d: %w", i+1, err))
			return nil
		}
		if !t.inRange(key, at, anyPlace) {
			return nil
		}
		out = append(out, at)
	}
	return out
}

// cutWidths reads a list of slits as they are cut, one width each.
func cutWidths(t *table, key string) (out []plan.Length) {
	value, ok := t.get(key)
	if !ok {
		return nil
	}
	list, ok := value.([]any)
	if !ok {
		t.wrong(key, "list of slits", value)
		return nil
	}
	reader := jobReader{table: t}
	for i, item := range list {
		n, width, err := reader.slit(item)
		switch {
		case err != nil:
			t.refuseLength(key, fmt.Errorf("entry %d: %w", i+1, err))
			return nil
		case width <= 0 || width > largest || len(out)+n > mostSlits:
			t.refuse(key, "", "entry %d is out of range", i+1)
			return nil
		}
		for range n {
			out = append(out, width)
		}
	}
	return out
}

// settingText is a changeover under way as positions.toml holds it.
func settingText(s *plan.Setting, u plan.Unit) string {
	var b strings.Builder
	var slits []string
	for i := 0; i < len(s.Slits); {
		e := plan.Entry{Finished: s.Slits[i]}
		for ; i < len(s.Slits) && s.Slits[i] == e.Finished; i++ {
			e.Count++
		}
		slits = append(slits, tomlEntry(e, u))
	}
	fmt.Fprintf(&b, "\n# Being set up: the slits as cut, operator side first, and the moves made so far.\n[changeover]\njob   = %s\nslits = %s\nshift = %s\n",
		tomlString(s.Job), tomlList(slits), tomlLength(s.Shift, u))
	if len(s.To) > 0 {
		var to []string
		for _, at := range s.To {
			to = append(to, tomlLength(at, u))
		}
		fmt.Fprintf(&b, "to    = %s\n", tomlList(to))
	}
	if s.Found {
		b.WriteString("corrected = true # a holder's position was corrected since\n")
	}
	for _, m := range s.Made {
		fmt.Fprintf(&b, "[[changeover.moved]]\nnumber = %d\nfrom   = %s\n", m.Holder, tomlLength(m.From, u))
	}
	return b.String()
}

// sameSetting reports whether two changeovers under way are the same.
func sameSetting(a, b *plan.Setting) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Job == b.Job && a.Shift == b.Shift && slices.Equal(a.Slits, b.Slits) && slices.Equal(a.To, b.To) && slices.Equal(a.Made, b.Made) && a.Found == b.Found
}

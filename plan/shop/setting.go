package shop

import (
	"fmt"
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/shop/toml"
)

// mostSlits bounds the slits of a job that is being set up, as in day.toml.
const mostSlits = plan.MaxCount

// readSetting reads [changeover] of positions.toml: the changeover under way; nil when
// there is none.
func readSetting(root *toml.Table, holders int) *plan.Begun {
	if !root.Has("changeover") {
		return nil
	}
	t := root.Sub("changeover")
	t.Need("job", "slits")
	s := &plan.Begun{
		Job:   t.Text("job", ""),
		Slits: cutWidths(t, "slits"),
		Shift: t.Length("shift", 0, toml.AnyPlace),
		To:    places(t, "to", holders),
		Found: t.Flag("corrected", false),
	}
	for _, m := range t.List("moved") {
		m.Need("from")
		anew := map[int]bool{} // a holder may have been moved twice
		made := plan.Made{Holder: readNumber(m, holders, anew), From: m.Length("from", 0, toml.AnyPlace)}
		s.Made = append(s.Made, made)
		m.Done()
	}
	t.Done()
	return s
}

// places reads a list of one place for each holder; nil where there is none.
func places(t *toml.Table, key string, holders int) (out []plan.Length) {
	value, ok := t.Get(key)
	if !ok {
		return nil
	}
	list, ok := value.([]any)
	if !ok || len(list) != holders {
		t.Refuse(key, "", "a list of %d positions is needed, one for each holder", holders)
		return nil
	}
	for i, item := range list {
		at, err := t.ReadLength(item)
		if err != nil {
			t.RefuseLength(key, fmt.Errorf("holder %d: %w", i+1, err))
			return nil
		}
		if !t.InRange(key, at, toml.AnyPlace) {
			return nil
		}
		out = append(out, at)
	}
	return out
}

// cutWidths reads a list of slits as they are cut, one width each.
func cutWidths(t *toml.Table, key string) (out []plan.Length) {
	value, ok := t.Get(key)
	if !ok {
		return nil
	}
	list, ok := value.([]any)
	if !ok {
		t.Wrong(key, "list of slits", value)
		return nil
	}
	reader := jobReader{Table: t}
	for i, item := range list {
		n, width, err := reader.slit(item)
		switch {
		case err != nil:
			t.RefuseLength(key, fmt.Errorf("entry %d: %w", i+1, err))
			return nil
		case width <= 0 || width > toml.Largest || len(out)+n > mostSlits:
			t.Refuse(key, "", "entry %d is out of range", i+1)
			return nil
		}
		for range n {
			out = append(out, width)
		}
	}
	return out
}

// settingText is a changeover under way as positions.toml holds it.
func settingText(s *plan.Begun, u plan.Unit) string {
	var b strings.Builder
	var slits []string
	for i := 0; i < len(s.Slits); {
		e := plan.Entry{Finished: s.Slits[i]}
		for ; i < len(s.Slits) && s.Slits[i] == e.Finished; i++ {
			e.Count++
		}
		slits = append(slits, toml.Entry(e, u))
	}
	fmt.Fprintf(&b, "\n# Being set up: the slits as cut, operator side first, and the moves made so far.\n[changeover]\njob   = %s\nslits = %s\nshift = %s\n",
		toml.String(s.Job), toml.List(slits), toml.Length(s.Shift, u))
	if len(s.To) > 0 {
		var to []string
		for _, at := range s.To {
			to = append(to, toml.Length(at, u))
		}
		fmt.Fprintf(&b, "to    = %s\n", toml.List(to))
	}
	if s.Found {
		b.WriteString("corrected = true # a holder's position was corrected since\n")
	}
	for _, m := range s.Made {
		fmt.Fprintf(&b, "[[changeover.moved]]\nnumber = %d\nfrom   = %s\n", m.Holder, toml.Length(m.From, u))
	}
	return b.String()
}

// sameSetting reports whether two changeovers under way are the same.
func sameSetting(a, b *plan.Begun) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Job == b.Job && a.Shift == b.Shift && slices.Equal(a.Slits, b.Slits) && slices.Equal(a.To, b.To) && slices.Equal(a.Made, b.Made) && a.Found == b.Found
}

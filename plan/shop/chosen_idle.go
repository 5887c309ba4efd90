package shop

import (
	"fmt"
	"strconv"
	"strings"

	"bide/plan"
)

// Which holders a search left idle in a job, as day.toml has it: "7" or "1-12" stay where
// they are, "17 at 3.5" goes there; in the order of their numbers.

// idle reads the holders left idle; nil where none are told. Whether they suit the beam
// is seen when the job is planned.
func (t jobReader) idle() *plan.Idle {
	moves := t.whole(chosenMoves, 0, 0, plan.MaxHolders)
	value, ok := t.get(chosenIdle)
	if !ok {
		return nil
	}
	list, ok := value.([]any)
	if !ok {
		t.wrong(chosenIdle, "list of holders", value)
		return nil
	}
	out := &plan.Idle{Moves: moves}
	last := 0
	for i, item := range list {
		text, isText := item.(string)
		rests, err := t.rests(Clean(text))
		switch {
		case !isText:
			err = fmt.Errorf("%s is no text in quotes", kindOf(item))
		case err == nil && rests[0].Number <= last:
			err = fmt.Errorf("holder %d comes behind holder %d", rests[0].Number, last)
		}
		if err != nil {
			t.refuse(chosenIdle, "take the chosen_ keys out, then search again", "entry %d: %v", i+1, err)
			return nil
		}
		out.Holders = append(out.Holders, rests...)
		last = rests[len(rests)-1].Number
	}
	return out
}

// rests reads one item: at least one holder.
func (t jobReader) rests(text string) ([]plan.Rest, error) {
	numbers, place, moved := strings.Cut(text, " at ")
	first, last, run := strings.Cut(numbers, "-")
	from, err := holderNumber(first)
	if err != nil {
		return nil, err
	}
	if moved {
		if run {
			return nil, fmt.Errorf("%q: two holders can't stand at one place", text)
		}
		to, err := plan.ParseLength(place, t.doc.unit)
		if err == nil && (to < -largest || to > largest) {
			err = fmt.Errorf("%q: the place is out of range", text)
		}
		return []plan.Rest{{Number: from, Moved: true, To: to}}, err
	}
	to := from
	if run {
		if to, err = holderNumber(last); err == nil && to <= from {
			err = fmt.Errorf("%q: the numbers don't rise", text)
		}
		if err != nil {
			return nil, err
		}
	}
	var out []plan.Rest
	for n := from; n <= to; n++ {
		out = append(out, plan.Rest{Number: n})
	}
	return out, nil
}

// holderNumber reads a holder's number.
func holderNumber(text string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil || n < 1 || n > plan.MaxHolders {
		return 0, fmt.Errorf("%q is no holder's number", text)
	}
	return n, nil
}

// idleText is the list of idle holders as TOML.
func idleText(idle *plan.Idle, u plan.Unit) string {
	var items []string
	for i := 0; i < len(idle.Holders); i++ {
		h := idle.Holders[i]
		if h.Moved {
			place, _ := lengthText(h.To, u)
			items = append(items, tomlString(fmt.Sprintf("%d at %s", h.Number, place)))
			continue
		}
		last := h.Number
		for i+1 < len(idle.Holders) && !idle.Holders[i+1].Moved && idle.Holders[i+1].Number == last+1 {
			i++
			last++
		}
		if text := strconv.Itoa(h.Number); last > h.Number {
			items = append(items, tomlString(fmt.Sprintf("%s-%d", text, last)))
		} else {
			items = append(items, tomlString(text))
		}
	}
	return tomlList(items)
}

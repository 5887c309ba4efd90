package shop

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"bide/plan"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

// Which holders a search left idle in a job, as day.toml has it: "7" or "1-12" stay where
// they are, "17 at 3.5" goes there; and "20 on its cut" is one that cuts and goes to its
// cut, though it stands near enough to it. In the order of their numbers.

// tenth is to what a setup is written: seconds with one decimal.
const tenth = 100 * time.Millisecond

// onCut marks a holder that cuts.
const onCut = " on its cut"

// idle reads the holders left idle; nil where none are given.
func (t jobReader) idle() *plan.Idle {
	moves := t.Whole(chosenMoves, 0, 0, plan.MaxHolders)
	setup := t.Number(chosenSetup, 0, 0, longestRun*60)
	value, ok := t.Get(chosenIdle)
	if !ok {
		return nil
	}
	list, ok := value.([]any)
	if !ok {
		t.Wrong(chosenIdle, "list of holders", value)
		return nil
	}
	out := &plan.Idle{Moves: moves, Setup: time.Duration(math.Round(setup*10)) * tenth}
	last := 0
	for i, item := range list {
		text, isText := item.(string)
		rests, err := t.rests(words.Clean(text))
		switch {
		case !isText:
			err = fmt.Errorf("%s is no text in quotes", toml.KindOf(item))
		case err == nil && rests[0].Number <= last:
			err = fmt.Errorf("holder %d comes after holder %d", rests[0].Number, last)
		}
		if err != nil {
			t.Refuse(chosenIdle, "delete the chosen_ keys, then search again", "entry %d: %v", i+1, err)
			return nil
		}
		out.Holders = append(out.Holders, rests...)
		last = rests[len(rests)-1].Number
	}
	return out
}

// rests reads one item: at least one holder.
func (t jobReader) rests(text string) ([]plan.Rest, error) {
	if number, cuts := strings.CutSuffix(text, onCut); cuts {
		n, err := holderNumber(number)
		return []plan.Rest{{Number: n, Cuts: true}}, err
	}
	numbers, place, moved := strings.Cut(text, " at ")
	first, last, run := strings.Cut(numbers, "-")
	from, err := holderNumber(first)
	if err != nil {
		return nil, err
	}
	if moved {
		if run {
			return nil, fmt.Errorf("%q: two holders can't be at one position", text)
		}
		to, err := plan.ParseLength(place, t.Doc.Unit)
		if err == nil && (to < -toml.Largest || to > toml.Largest) {
			err = fmt.Errorf("%q: the position is out of range", text)
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
		text, last := strconv.Itoa(h.Number), h.Number
		switch {
		case h.Cuts:
			text += onCut
		case h.Moved:
			place, _ := toml.LengthText(h.To, u)
			text += " at " + place
		default:
			for i+1 < len(idle.Holders) && idle.Holders[i+1] == (plan.Rest{Number: last + 1}) {
				i++
				last++
			}
			if last > h.Number {
				text += fmt.Sprintf("-%d", last)
			}
		}
		items = append(items, toml.String(text))
	}
	return toml.List(items)
}

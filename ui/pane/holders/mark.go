package holders

import (
	"fmt"

	"bide/plan"
	"bide/plan/shop"
	"bide/ui/keys"
	"bide/ui/pane"
)

// answer takes the condition that the person has chosen, and asks why.
func (p *Pane) answer(a keys.Action, d *pane.Shared) {
	number := p.Marking
	p.Marking = 0
	switch a {
	case keys.MarkDrop:
	case keys.MarkFiled:
		d.Conditions.Set(number, shop.Mark{Condition: d.Conditions.Filed(number)})
	default:
		c := map[keys.Action]plan.Condition{keys.MarkGood: plan.Good, keys.MarkNoCut: plan.NoCut, keys.MarkStuck: plan.Stuck, keys.MarkOut: plan.Out}[a]
		label := fmt.Sprintf("why is holder %d %s? Enter saves, Esc cancels", number, c)
		d.Prompt = pane.NewPrompt(label, "", func(reason string) { d.Conditions.Set(number, shop.Mark{Condition: c, Reason: reason}) })
		d.Prompt.Dropped = func() { d.Say("holder %d stays as it was", number) }
	}
}

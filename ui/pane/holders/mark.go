package holders

import (
	"fmt"

	"bide/plan"
	"bide/plan/session"
	"bide/plan/shop"
	"bide/ui/keys"
	"bide/ui/pane"
)

// answer takes the condition that the person has chosen, and asks why.
func (p *Pane) answer(a keys.Action, d *pane.Shared) pane.Want {
	number := p.marking
	p.marking = 0
	switch a {
	case keys.MarkDrop:
		return nil
	case keys.MarkFiled:
		return func(s *session.Session) {
			s.Conditions.Set(number, shop.Mark{Condition: s.Conditions.Filed(number)})
		}
	}
	c := map[keys.Action]plan.Condition{keys.MarkGood: plan.Good, keys.MarkNoCut: plan.NoCut, keys.MarkStuck: plan.Stuck, keys.MarkOut: plan.Out}[a]
	label := fmt.Sprintf("why is holder %d %s? Enter saves, Esc cancels", number, c)
	d.Prompt = pane.NewPrompt(label, "", func(reason string) pane.Want {
		return func(s *session.Session) {
			s.Conditions.Set(number, shop.Mark{Condition: c, Reason: reason})
		}
	})
	d.Prompt.Dropped = func() pane.Want { return pane.Say("holder %d stays as it was", number) }
	return nil
}

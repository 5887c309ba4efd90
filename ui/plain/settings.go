package plain

import (
	"fmt"

	"bide/material"
	"bide/plan/words"
	"bide/ui/pane"
	"bide/ui/pane/settings"
)

// settings are what is set for each job, the cautions of all jobs together once, and
// how the day wears the anvil.
func (p *page) settings() {
	p.chapter("Settings, job by job")
	seen := map[string]bool{}
	var cautions []material.Caution
	for index, j := range p.Jobs() {
		k := p.KnifeFor(index)
		if k == nil {
			p.tell("%s: %s, so there are no settings for it.", j.ID, p.Shop.Unset(j))
			continue
		}
		p.tell("%s, %s: %s.", j.ID, j.Material, pane.ToSet(p.Shared, j))
		p.settingsOf(k)
		for _, c := range k.Settings.Cautions {
			if !seen[c.Text] {
				seen[c.Text] = true
				cautions = append(cautions, c)
			}
		}
	}
	if f := p.AtKnife().Face; f != nil && f.Worst >= 0 {
		p.chapter("The anvil's face over the day")
		p.tell("%s", settings.FaceWords(p.Shared, f))
		for _, d := range p.AtKnife().Damaged {
			p.tell("Damaged %s; %s.", d.Where, d.Worn)
		}
	}
	p.chapter("Take care, in one job or all")
	for _, c := range cautions {
		p.tell("%s: %s", c.About, c.Text)
	}
}

// settingsOf are those of one job.
func (p *page) settingsOf(k *material.Turn) {
	for _, w := range k.Settings.Warnings {
		p.tell("  Warning: %s", w)
	}
	if k.Before != "" && len(k.Changes) == 0 {
		p.tell("  Nothing at the knife changes against %s.", k.Before)
	}
	for _, c := range k.Changes {
		p.tell("  Change of %s against %s: from %s to %s: %s.", c.ID, words.Join("", k.Before, map[bool]string{true: "what ran before"}[k.Before == ""]), c.From, c.To, c.Do)
	}
	for _, l := range k.Settings.Lines {
		p.tell("  %s: %s. %s", l.ID, l.Value, words.Join(" ", fmt.Sprintf("Why: %s.", l.Why), "Source: "+l.Source+"."))
	}
	for _, d := range k.Damaged {
		p.tell("  The anvil is damaged %s.", d.Where)
	}
	if k.Bending == nil {
		p.tell("  The anvil's bend is not calculated: %s.", k.Unbent)
		return
	}
	for _, text := range settings.BendWords(p.Shared, k.Bending) {
		p.tell("  %s", text)
	}
}

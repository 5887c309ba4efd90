package jobform

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/session"
	"bide/plan/shop"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"

	tea "github.com/charmbracelet/bubbletea"
)

// Page is the form of a job of the day: of one that is edited, copied or added.
type Page struct {
	*jobForm
	closed Closed
	job    *plan.Job // edited; nil for one that is added
	stem   string    // id of the job in the file that it comes from; empty when new
	behind *plan.Job // the one that an added job comes behind; nil at the end
}

// Open opens a form for an edit, a copy, or a new job. One that was closed
// unfinished comes back as it was.
func (c Closed) Open(d *pane.Shared, a keys.Action) pane.Want {
	j := d.Job()
	if j == nil && a != keys.AddJob {
		return pane.Say("no job is picked")
	}
	f, typed := &Page{closed: c, behind: j}, shop.Typed{}
	switch a {
	case keys.EditJob:
		f.job, f.stem, typed = j, d.Origin(j), d.Shop.Typed(j)
	case keys.CopyJob:
		f.stem, typed = d.Origin(j), d.Shop.Typed(j)
		typed["id"], typed["fixed"], typed["state"] = d.FreeID(j.ID), "", "waiting"
	default:
		typed["id"] = d.NextID(j)
	}
	if kept := c[f.place()]; kept != nil {
		kept.job, kept.stem = f.job, f.stem
		kept.follow(typed)
		kept.check()
		d.Over = kept
		return pane.Say("this form was closed unfinished: here it is, with what was typed")
	}
	f.jobForm = newForm(d.Shop, typed, func(typed shop.Typed) (plan.Job, []shop.FieldProblem) { return d.ReadJob(typed, f.job) })
	f.Field("id").Proposed = f.job == nil
	d.Over = f
	return nil
}

// keepUp follows the day: where it was read again meanwhile, the form's job is another.
func (f *Page) keepUp(d *pane.Shared) {
	f.shop = d.Shop
	if f.job == nil || slices.Contains(d.Now.All, f.job) {
		return
	}
	if j := d.Now.Find(f.job.ID); j != nil {
		f.job, f.stem = j, d.Origin(j)
		f.follow(d.Shop.Typed(j))
	}
}

// formPlace is where an unfinished form is kept: one for each edited job, each
// copied, and the new one.
type formPlace struct{ job, stem string }

// Closed are those that were closed unfinished.
type Closed map[formPlace]*Page

func (f *Page) place() formPlace {
	if f.job != nil {
		return formPlace{f.job.ID, f.stem}
	}
	return formPlace{"", f.stem}
}

// Type takes keys as text.
func (f *Page) Type(msg tea.KeyMsg, d *pane.Shared) (taken bool, want pane.Want) {
	f.keepUp(d)
	was, said := f.Open().Value(), ""
	taken, whole := f.Open().Type(msg)
	if !whole {
		said = fmt.Sprintf("a field has room for %d characters: the rest is left out", longestValue)
	}
	if taken {
		if f.naming() && f.Open().Value() != was {
			f.narrow()
		}
		f.check()
	}
	return taken, pane.Say("%s", said)
}

// HandleKey goes from field to field, saves the job or closes the form.
func (f *Page) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	f.keepUp(d)
	to := f.At
	switch {
	case f.inList(a):
		return nil
	case a == keys.Choose:
		return f.save(d)
	case a == keys.Back:
		return f.close(d)
	case a == keys.Up || a == keys.LastPane:
		to--
	case a == keys.Down || a == keys.NextPane:
		to++
	}
	f.to(to)
	return nil
}

// close closes the form; what was typed is kept for the next time.
func (f *Page) close(d *pane.Shared) pane.Want {
	d.Over = nil
	delete(f.closed, f.place())
	if !f.changed() {
		return nil
	}
	f.closed[f.place()] = f
	return pane.Say("closed, not saved; the same key opens the form again as you left it")
}

// save wants the job put into the day, if nothing but the beam is against it.
func (f *Page) save(d *pane.Shared) pane.Want {
	f.check()
	if wrong := f.wrong(); wrong >= 0 {
		f.to(wrong)
		return pane.Say("not yet: %s", f.said())
	}
	d.Over = nil
	delete(f.closed, f.place())
	next := f.result
	switch {
	case f.job == nil || !slices.Contains(d.Now.All, f.job):
		return func(s *session.Session) { s.Add(&next, f.stem, f.behind) }
	case !f.changed():
		return pane.Say("%s is unchanged", next.ID)
	}
	return func(s *session.Session) { s.Replace(f.job, &next) }
}

// View draws the form.
func (f *Page) View(d *pane.Shared) []draw.Line {
	name := "Add a job"
	switch {
	case f.job != nil:
		name = "Edit " + d.Safe(f.job.ID)
	case f.stem != "":
		name = "Add a copy of " + d.Safe(f.stem)
	}
	title, body := f.view(d.Theme, d.PageSize())
	return d.Frame(name, title, body, f.Help())
}

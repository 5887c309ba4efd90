package jobform

import (
	"slices"

	"bide/plan"
	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"

	tea "github.com/charmbracelet/bubbletea"
)

// Page is the form of a job of the day: of one that is edited, copied or added.
type Page struct {
	*JobForm
	closed Closed
	job    *plan.Job // edited; nil for one that is added
	stem   string    // id of the job in the file that it comes from; empty when new
	behind *plan.Job // the one that an added job comes behind; nil at the end
}

// Open opens a form for an edit, a copy, or a new job. One that was closed
// unfinished comes back as it was.
func (c Closed) Open(d *pane.Shared, a keys.Action) {
	j := d.Job()
	if j == nil && a != keys.AddJob {
		d.Say("no job is picked")
		return
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
		kept.Follow(typed)
		kept.Check()
		d.Over = kept
		d.Say("this form was closed unfinished: here it is, with what was typed")
		return
	}
	f.JobForm = New(d.Shop, typed, func(typed shop.Typed) (plan.Job, []shop.FieldProblem) { return readForm(d, f.job, typed) })
	f.Field("id").Proposed = f.job == nil
	d.Over = f
}

// readForm reads what is typed of an edited job, or of one to be added.
func readForm(d *pane.Shared, edited *plan.Job, typed shop.Typed) (plan.Job, []shop.FieldProblem) {
	day := d.History.Now.Day(d.Shop.Day)
	at := slices.Index(d.History.Now.All, edited)
	if at < 0 { // it is new, or was taken out meanwhile
		at = len(day.Jobs)
	}
	return d.Shop.ReadJob(typed, day, at)
}

// keepUp follows the day: where it was read again meanwhile, the form's job is another.
func (f *Page) keepUp(d *pane.Shared) {
	f.Shop = d.Shop
	if f.job == nil || slices.Contains(d.History.Now.All, f.job) {
		return
	}
	if j := d.History.Now.Find(f.job.ID); j != nil {
		f.job, f.stem = j, d.Origin(j)
		f.Follow(d.Shop.Typed(j))
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
func (f *Page) Type(msg tea.KeyMsg, d *pane.Shared) bool {
	f.keepUp(d)
	taken, said := f.JobForm.Type(msg)
	if d.Notice = (workday.Notice{}); said != "" {
		d.Say("%s", said)
	}
	return taken
}

// HandleKey gives the form other keys, and does what it then wants.
func (f *Page) HandleKey(a keys.Action, d *pane.Shared) {
	f.keepUp(d)
	switch f.JobForm.HandleKey(a) {
	case Save:
		f.save(d)
	case Close:
		f.close(d)
	}
}

// close closes the form; what was typed is kept for the next time.
func (f *Page) close(d *pane.Shared) {
	d.Over = nil
	delete(f.closed, f.place())
	if !f.Changed() {
		return
	}
	f.closed[f.place()] = f
	d.Say("closed, not saved; the same key opens the form again as you left it")
}

// save puts the job into the day, if nothing but the beam is against it.
func (f *Page) save(d *pane.Shared) {
	f.Check()
	if wrong := f.Wrong(); wrong >= 0 {
		f.To(wrong)
		d.Say("not yet: %s", f.Said())
		return
	}
	d.Over = nil
	delete(f.closed, f.place())
	next := f.Job
	switch {
	case f.job == nil || !slices.Contains(d.History.Now.All, f.job):
		d.Add(&next, f.stem, f.behind)
	case !f.Changed():
		d.Say("%s is unchanged", next.ID)
	default:
		d.Replace(f.job, &next)
	}
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
	title, body := f.JobForm.View(d.Theme, d.PageSize())
	return d.Frame(name, title, body, f.Help())
}

package ui

import (
	"slices"

	"bide/plan"
	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/page/jobform"

	tea "github.com/charmbracelet/bubbletea"
)

// jobForm is the form of a job of the day: of one that is edited, copied or added.
type jobForm struct {
	*jobform.Page
	job    *plan.Job // edited; nil for one that is added
	stem   string    // id of the job in the file that it comes from; empty when new
	behind *plan.Job // the one that an added job comes behind; nil at the end
}

// openForm opens a form for an edit, a copy, or a new job. One that was closed
// unfinished comes back as it was.
func (m *model) openForm(a keys.Action) {
	j := m.job()
	if j == nil && a != keys.AddJob {
		m.Say("no job is picked")
		return
	}
	f, typed := &jobForm{behind: j}, shop.Typed{}
	switch a {
	case keys.EditJob:
		f.job, f.stem, typed = j, m.Origin(j), m.Shop.Typed(j)
	case keys.CopyJob:
		f.stem, typed = m.Origin(j), m.Shop.Typed(j)
		typed["id"], typed["fixed"], typed["state"] = m.FreeID(j.ID), "", "waiting"
	default:
		typed["id"] = m.NextID(j)
	}
	if kept := m.drawer[f.place()]; kept != nil {
		kept.job, kept.stem = f.job, f.stem
		kept.Follow(typed)
		kept.Check()
		m.over = kept
		m.Say("this form was closed unfinished: here it is, with what was typed")
		return
	}
	f.Page = jobform.New(m.Shop, typed, func(typed shop.Typed) (plan.Job, []shop.FieldProblem) { return m.readForm(f.job, typed) })
	f.Field("id").Proposed = f.job == nil
	m.over = f
}

// readForm reads what is typed of an edited job, or of one to be added.
func (m *model) readForm(edited *plan.Job, typed shop.Typed) (plan.Job, []shop.FieldProblem) {
	day := m.History.Now.Day(m.Shop.Day)
	at := slices.Index(m.History.Now.All, edited)
	if at < 0 { // it is new, or was taken out meanwhile
		at = len(day.Jobs)
	}
	return m.Shop.ReadJob(typed, day, at)
}

// keepUp follows the day: where it was read again meanwhile, the form's job is another.
func (f *jobForm) keepUp(m *model) {
	f.Shop = m.Shop
	if f.job == nil || slices.Contains(m.History.Now.All, f.job) {
		return
	}
	if j := m.History.Now.Find(f.job.ID); j != nil {
		f.job, f.stem = j, m.Origin(j)
		f.Follow(m.Shop.Typed(j))
	}
}

// formPlace is where an unfinished form is kept: one for each edited job, each
// copied, and the new one.
type formPlace struct{ job, stem string }

func (f *jobForm) place() formPlace {
	if f.job != nil {
		return formPlace{f.job.ID, f.stem}
	}
	return formPlace{"", f.stem}
}

// Type takes keys as text.
func (f *jobForm) Type(msg tea.KeyMsg, m *model) bool {
	f.keepUp(m)
	taken, said := f.Page.Type(msg)
	if m.Notice = (workday.Notice{}); said != "" {
		m.Say("%s", said)
	}
	return taken
}

// HandleKey gives the form other keys, and does what it then wants.
func (f *jobForm) HandleKey(a keys.Action, m *model) tea.Cmd {
	f.keepUp(m)
	switch f.Page.HandleKey(a) {
	case jobform.Save:
		f.save(m)
	case jobform.Close:
		f.close(m)
	}
	return nil
}

// close closes the form; what was typed is kept for the next time.
func (f *jobForm) close(m *model) {
	m.over = nil
	delete(m.drawer, f.place())
	if !f.Changed() {
		return
	}
	if m.drawer == nil {
		m.drawer = map[formPlace]*jobForm{}
	}
	m.drawer[f.place()] = f
	m.Say("the form is closed unfinished; the same key opens it again as it is")
}

// save puts the job into the day, if nothing but the beam is against it.
func (f *jobForm) save(m *model) {
	f.Check()
	if wrong := f.Wrong(); wrong >= 0 {
		f.To(wrong)
		m.Say("not yet: %s", f.Said())
		return
	}
	m.over = nil
	delete(m.drawer, f.place())
	next := f.Job
	switch {
	case f.job == nil || !slices.Contains(m.History.Now.All, f.job):
		m.desk.Add(&next, f.stem, f.behind)
	case !f.Changed():
		m.Say("%s is unchanged", next.ID)
	default:
		m.desk.Replace(f.job, &next)
	}
}

// View draws the form.
func (f *jobForm) View(m *model) []draw.Line {
	name := "Add a job"
	switch {
	case f.job != nil:
		name = "Edit " + m.Safe(f.job.ID)
	case f.stem != "":
		name = "Add a copy of " + m.Safe(f.stem)
	}
	title, body := f.Page.View(m.Theme, m.pageSize())
	return m.page(name, title, body, f.Help())
}

package ui

import (
	"slices"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/form"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// jobForm is a job as it is typed: added, copied or edited. Each key is checked with
// the checks of the file.
type jobForm struct {
	form.Form
	job    *plan.Job  // edited; nil for one that is added
	stem   string     // id of the job in the file that it comes from; empty when new
	behind *plan.Job  // the one that an added job comes behind; nil at the end
	began  shop.Typed // as it was when the form was opened
	list   nameList   // below the material's field

	read     plan.Job
	problems []shop.FieldProblem
}

// Help is where the keys work: in the form, or in its list of names.
func (f *jobForm) Help() keys.Scope {
	if f.list.at >= 0 {
		return keys.OnNames
	}
	return keys.OnJobForm
}

func (f *jobForm) Fits(s draw.Size) bool { return s.W >= 40 && s.H >= 12 }

// openForm opens a form for an edit, a copy, or a new job. One that was put away
// unfinished comes back as it was.
func (m *model) openForm(a keys.Action) {
	j := m.job()
	if j == nil && a != keys.AddJob {
		m.say("no job is picked")
		return
	}
	f, typed := &jobForm{behind: j}, shop.Typed{}
	switch a {
	case keys.EditJob:
		f.job, f.stem, typed = j, m.origin(j), m.shop.Typed(j)
	case keys.CopyJob:
		f.stem, typed = m.origin(j), m.shop.Typed(j)
		typed["id"], typed["fixed"], typed["state"] = m.freeID(j.ID), "", "waiting"
	default:
		typed["id"] = m.nextID(j)
	}
	f.Form = newJobFields(typed, m.shop.DayUnit())
	f.Field("id").Proposed = f.job == nil
	if kept := m.drawer[f.place()]; kept != nil {
		kept.follow(f.job, f.stem, typed)
		m.over = kept
		kept.check(m)
		m.say("this form was closed unfinished: here it is, with what was typed")
		return
	}
	f.began = typed
	f.to(0)
	f.check(m)
	m.over = f
}

// follow brings a form up to the job as it is now, with its values: what nobody has
// typed into is as it is there. What happened meanwhile, such as that the job runs, is not
// to be undone by a form that says nothing of it.
func (f *jobForm) follow(job *plan.Job, stem string, typed shop.Typed) {
	for i := range f.Fields {
		if in := &f.Fields[i]; in.Value() == f.began[in.Key] && in.Value() != typed[in.Key] {
			in.Set(typed[in.Key])
		}
	}
	f.job, f.stem, f.began = job, stem, typed
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

func (f *jobForm) key() string   { return f.Open().Key }
func (f *jobForm) value() string { return f.Open().Value() }

// typed is what all fields have.
func (f *jobForm) typed() shop.Typed {
	out := shop.Typed{}
	for i := range f.Fields {
		out[f.Fields[i].Key] = f.Fields[i].Value()
	}
	return out
}

// check reads the form anew. Where the day was read again meanwhile, its job is another.
func (f *jobForm) check(m *model) {
	if f.job != nil && !slices.Contains(m.history.now.all, f.job) {
		if j := m.history.now.find(f.job.ID); j != nil {
			f.follow(j, m.origin(j), m.shop.Typed(j))
		}
	}
	day := m.history.now.day(m.shop.Day)
	at := len(day.Jobs)
	if f.job != nil {
		at = slices.Index(m.history.now.all, f.job)
	}
	if at < 0 { // it was taken out meanwhile
		at = len(day.Jobs)
	}
	f.read, f.problems = m.shop.ReadJob(f.typed(), day, at)
}

// problem is what is wrong with a field; nil when nothing is.
func (f *jobForm) problem(key string) *shop.FieldProblem {
	for i := range f.problems {
		if f.problems[i].Key == key {
			return &f.problems[i]
		}
	}
	return nil
}

// wrong is the first field that keeps the job from being taken; -1 without one.
func (f *jobForm) wrong() int {
	for i := range f.Fields {
		if p := f.problem(f.Fields[i].Key); p != nil && !p.Refused {
			return i
		}
	}
	if slices.ContainsFunc(f.problems, func(p shop.FieldProblem) bool { return !p.Refused }) {
		return f.At
	}
	return -1
}

// longestValue bounds what is typed into a field, in characters: all slits of a wide beam,
// each on its own, have room.
const longestValue = 1000

// Type takes keys as text.
func (f *jobForm) Type(msg tea.KeyMsg, m *model) bool {
	m.news = news{}
	was := f.value()
	taken, whole := f.Open().Type(msg)
	if !whole {
		m.say("a field has room for %d characters: the rest is left out", longestValue)
	}
	if taken && f.naming() && f.value() != was {
		f.narrow(m)
	}
	if taken {
		f.check(m)
	}
	return taken
}

// HandleKey goes from field to field, takes the job, or puts the form away.
func (f *jobForm) HandleKey(a keys.Action, m *model) tea.Cmd {
	if f.list.handle(a, f, m) {
		return nil
	}
	to := f.At
	switch a {
	case keys.Up, keys.LastPane:
		to--
	case keys.Down, keys.NextPane:
		to++
	case keys.Choose:
		f.take(m)
		return nil
	case keys.Back:
		f.putAway(m)
		return nil
	}
	f.to(to)
	return nil
}

// to goes to a field, the first behind the last.
func (f *jobForm) to(field int) {
	f.Go(field)
	f.list.at = -1
}

// putAway closes the form; what was typed is kept for the next time.
func (f *jobForm) putAway(m *model) {
	m.over = nil
	delete(m.drawer, f.place())
	if sameTyped(f.typed(), f.began) {
		return
	}
	if m.drawer == nil {
		m.drawer = map[formPlace]*jobForm{}
	}
	m.drawer[f.place()] = f
	m.say("the form is closed unfinished; the same key opens it again as it is")
}

func sameTyped(a, b shop.Typed) bool {
	return !slices.ContainsFunc(shop.JobKeys(), func(key string) bool { return a[key] != b[key] })
}

// take puts the job into the day, if nothing but the beam is against it.
func (f *jobForm) take(m *model) {
	f.check(m)
	if wrong := f.wrong(); wrong >= 0 {
		f.to(wrong)
		m.say("not yet: %s", f.said(f.At))
		return
	}
	m.over = nil
	delete(m.drawer, f.place())
	next := f.read
	switch {
	case f.job == nil || !slices.Contains(m.history.now.all, f.job):
		m.desk.include(&next, f.stem, f.behind)
	case sameTyped(f.typed(), f.began):
		m.say("%s is unchanged", next.ID)
	default:
		m.desk.replace(f.job, &next)
	}
}

// said is what is wrong with a field, in words.
func (f *jobForm) said(field int) string {
	if p := f.problem(f.Fields[field].Key); p != nil {
		return inForm(words.Join("; ", p.What, p.Remedy))
	}
	if len(f.problems) > 0 {
		return inForm(words.Join("; ", f.problems[0].What, f.problems[0].Remedy))
	}
	return ""
}

// replace puts an edited job in the place of what it was; others that come after it
// follow its new id.
func (d *session) replace(old, next *plan.Job) {
	d.stem(next, d.origin(old))
	now := d.history.now.with(old, next)
	if old.ID != next.ID {
		given := now.given
		now = newDraft(d.rebuilt(now.all, func(jobs []plan.Job) []plan.Job { return shop.Renamed(jobs, old.ID, next.ID) }), now.aim)
		now.given = given
	}
	now.about, now.did = next.ID, next.ID+" is edited"
	d.do(now)
}

// Package jobform is the form of one job: its fields, each checked with the checks of the
// file as one types, with the list of materials below theirs. It gives back what is wanted;
// the day is another's.
package jobform

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/form"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// JobForm is a job as it is typed: added, copied or edited.
type JobForm struct {
	form.Form
	Shop     *shop.Shop                                       // whose materials and units there are
	Read     func(shop.Typed) (plan.Job, []shop.FieldProblem) // with the checks of the day
	Job      plan.Job                                         // as far as it can be read
	Problems []shop.FieldProblem

	began  shop.Typed // as it was when the form was opened
	picked int        // in the list of materials; -1 while none is, and keys go to the form
}

// New is a form with values, checked.
func New(s *shop.Shop, typed shop.Typed, read func(shop.Typed) (plan.Job, []shop.FieldProblem)) *JobForm {
	f := &JobForm{Form: newFields(typed, s.DayUnit()), Shop: s, Read: read, began: typed, picked: -1}
	f.Check()
	return f
}

// Help is where the keys work: in the form, or in its list of names.
func (f *JobForm) Help() keys.Scope {
	if f.picked >= 0 {
		return keys.OnNames
	}
	return keys.OnJobForm
}

// Fits reports whether it can be worked in at that size of the screen.
func (f *JobForm) Fits(s draw.Size) bool { return s.W >= 40 && s.H >= 12 }

// Picked is the picked name in the list of materials; -1 while none is.
func (f *JobForm) Picked() int { return f.picked }

// Follow brings a form up to the job as it is now: what nobody has typed into is as it is
// there. What happened meanwhile, such as that the job runs, is not to be undone by a form
// that says nothing of it.
func (f *JobForm) Follow(typed shop.Typed) {
	for i := range f.Fields {
		if in := &f.Fields[i]; in.Value() == f.began[in.Key] && in.Value() != typed[in.Key] {
			in.Set(typed[in.Key])
		}
	}
	f.began = typed
}

// Typed is what all fields have.
func (f *JobForm) Typed() shop.Typed {
	out := shop.Typed{}
	for i := range f.Fields {
		out[f.Fields[i].Key] = f.Fields[i].Value()
	}
	return out
}

// Changed reports whether any field is another than when the form was opened.
func (f *JobForm) Changed() bool {
	return slices.ContainsFunc(f.Fields, func(in form.Field) bool { return in.Value() != f.began[in.Key] })
}

// Check reads the form anew.
func (f *JobForm) Check() { f.Job, f.Problems = f.Read(f.Typed()) }

// problem is what is wrong with a field; nil when nothing is.
func (f *JobForm) problem(key string) *shop.FieldProblem {
	for i := range f.Problems {
		if f.Problems[i].Key == key {
			return &f.Problems[i]
		}
	}
	return nil
}

// Wrong is the first field that keeps the job from being taken; -1 without one.
func (f *JobForm) Wrong() int {
	for i := range f.Fields {
		if p := f.problem(f.Fields[i].Key); p != nil && !p.Refused {
			return i
		}
	}
	if slices.ContainsFunc(f.Problems, func(p shop.FieldProblem) bool { return !p.Refused }) {
		return f.At
	}
	return -1
}

// Said is what is wrong with the open field, or with another, in words.
func (f *JobForm) Said() string {
	if p := f.problem(f.Open().Key); p != nil {
		return InForm(words.Join("; ", p.What, p.Remedy))
	}
	if len(f.Problems) > 0 {
		return InForm(words.Join("; ", f.Problems[0].What, f.Problems[0].Remedy))
	}
	return ""
}

// Wanted is what a key asks of whoever shows the form.
type Wanted int

// What may be wanted.
const (
	Nothing Wanted = iota
	Save
	Close
)

// HandleKey goes from field to field, or wants the job saved or the form closed.
func (f *JobForm) HandleKey(a keys.Action) Wanted {
	if f.inList(a) {
		return Nothing
	}
	to := f.At
	switch a {
	case keys.Up, keys.LastPane:
		to--
	case keys.Down, keys.NextPane:
		to++
	case keys.Choose:
		return Save
	case keys.Back:
		return Close
	}
	f.To(to)
	return Nothing
}

// To goes to a field, the first behind the last.
func (f *JobForm) To(field int) {
	f.Go(field)
	f.picked = -1
}

// Type takes keys as text; said is what there is to say about it.
func (f *JobForm) Type(msg tea.KeyMsg) (taken bool, said string) {
	was := f.Open().Value()
	taken, whole := f.Open().Type(msg)
	if !whole {
		said = fmt.Sprintf("a field has room for %d characters: the rest is left out", longestValue)
	}
	if taken {
		if f.naming() && f.Open().Value() != was {
			f.narrow()
		}
		f.Check()
	}
	return taken, said
}

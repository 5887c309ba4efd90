// Package jobform is the form of one job: its fields, each checked with the checks of the
// file as one types, with the list of materials below theirs. It gives back what is wanted;
// the day is another's.
package jobform

import (
	"slices"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/form"
	"bide/ui/keys"
)

// jobForm is a job as it is typed: added, copied or edited.
type jobForm struct {
	form.Form
	shop     *shop.Shop                                       // whose materials and units there are
	read     func(shop.Typed) (plan.Job, []shop.FieldProblem) // with the checks of the day
	result   plan.Job                                         // as far as it can be read
	problems []shop.FieldProblem

	began  shop.Typed // as it was when the form was opened
	picked int        // in the list of materials; -1 while none is, and keys go to the form
}

// newForm is a form with values, checked.
func newForm(s *shop.Shop, typed shop.Typed, read func(shop.Typed) (plan.Job, []shop.FieldProblem)) *jobForm {
	f := &jobForm{Form: newFields(typed, s.DayUnit()), shop: s, read: read, began: typed, picked: -1}
	f.check()
	return f
}

// Help is where the keys work: in the form, or in its list of names.
func (f *jobForm) Help() keys.Scope {
	if f.picked >= 0 {
		return keys.OnNames
	}
	return keys.OnJobForm
}

// Fits reports whether it can be worked in at that size of the screen.
func (f *jobForm) Fits(s draw.Size) bool { return s.W >= 40 && s.H >= 12 }

// Picked is the picked name in the list of materials; -1 while none is.
func (f *jobForm) Picked() int { return f.picked }

// follow brings a form up to the job as it is now: what nobody has typed into is as it is
// there. What happened meanwhile, such as that the job runs, is not to be undone by a form
// that says nothing of it.
func (f *jobForm) follow(typed shop.Typed) {
	for i := range f.Fields {
		if in := &f.Fields[i]; in.Value() == f.began[in.Key] && in.Value() != typed[in.Key] {
			in.Set(typed[in.Key])
		}
	}
	f.began = typed
}

// typed is what all fields have.
func (f *jobForm) typed() shop.Typed {
	out := shop.Typed{}
	for i := range f.Fields {
		out[f.Fields[i].Key] = f.Fields[i].Value()
	}
	return out
}

// changed reports whether any field is another than when the form was opened.
func (f *jobForm) changed() bool {
	return slices.ContainsFunc(f.Fields, func(in form.Field) bool { return in.Value() != f.began[in.Key] })
}

// check reads the form anew.
func (f *jobForm) check() { f.result, f.problems = f.read(f.typed()) }

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

// said is what is wrong with the open field, or with another, in words.
func (f *jobForm) said() string {
	if p := f.problem(f.Open().Key); p != nil {
		return inForm(words.Join("; ", p.What, p.Remedy))
	}
	if len(f.problems) > 0 {
		return inForm(words.Join("; ", f.problems[0].What, f.problems[0].Remedy))
	}
	return ""
}

// to goes to a field, the first behind the last.
func (f *jobForm) to(field int) {
	f.Go(field)
	f.picked = -1
}

package shop

import (
	"bide/plan"
	"bide/plan/shop/toml"
)

// SaveDay saves the day as it is wanted: its start and end, and its jobs in their
// order with all that day.toml holds of them. Of a job's slits that is the finished
// widths; what a material asks of the beam isn't looked at. A layout chosen for a job
// is saved with it if the job allows it.
//
// from says which job of day.toml, as it was when the shop was read, each job is:
// its id there. Of those that name one, that with its id is that job, with the
// comments about it, or else the first; others are copies of it; an empty one is a
// new job. A nil from takes every job for the one of its own id.
//
// The file is made by hand, so only the lines concerned are changed: every edit
// starts from the text as it was read, and what is undone is as it was, to the
// byte. Where the file is built so that this can't be done, or someone else has
// changed it since, it stays untouched and the day is written to another file
// beside it, day.bide.toml.
//
// A day that could not be read back is refused with its Problems; other errors are
// *SaveError. The shop's own Day stays as it was read. One call at a time runs;
// that they come in the right order is the caller's affair.
func (s *Shop) SaveDay(d *plan.Day, from []string) (Outcome, error) {
	s.saving.Lock()
	defer s.saving.Unlock()
	if s.Dir == "" {
		return Outcome{}, errNoFolder
	}
	if from == nil {
		from = ids(d)
	}
	if len(from) != len(d.Jobs) {
		return Outcome{}, toml.Problems{{File: dayFile, What: "it isn't said of each job where it comes from", Remedy: "give as many ids as jobs"}}
	}
	text, pieced := s.dayFrom(d, from)
	if !pieced {
		whole, problems := wholeDay(&s.Equipment, s.dayUnit, d)
		if err := problems.Err(); err != nil {
			return Outcome{}, err
		}
		text = whole
	}
	now, there, err := s.onDisk(dayFile)
	switch {
	case err != nil:
		return Outcome{}, err
	case there && now == text:
		s.dayText = text
		return Outcome{Said: dayFile + " holds it already"}, nil
	case !there:
		return s.saveBeside(text, dayFile+" is gone")
	case now != s.dayText:
		return s.saveBeside(text, "someone else has changed "+dayFile)
	case !pieced:
		return s.saveBeside(text, dayFile+" is built so that it can't be changed line by line")
	}
	if err := s.put(dayFile, text, &s.dayText); err != nil {
		return Outcome{}, err
	}
	return Outcome{File: dayFile, Said: "saved in " + dayFile}, nil
}

// KeepDay keeps day.toml as it was read or saved last under another name, NAME.toml, and says
// under which; NAME-2.toml where that holds another day. Errors are *SaveError.
func (s *Shop) KeepDay(name string) (file string, err error) {
	s.saving.Lock()
	defer s.saving.Unlock()
	return s.writeBeside(name, s.dayText)
}

// dayFrom is the text as it was read, changed into the day wanted; false where that
// can't be done.
func (s *Shop) dayFrom(d *plan.Day, from []string) (string, bool) {
	if r, _ := readDayText(&s.Equipment, s.dayFirst); r.holds(d) {
		return s.dayFirst, true
	}
	return edited(&s.Equipment, s.dayFirst, d, from)
}

// saveBeside writes the day to a file of its own: the one that it was last written
// to, if that is still as it was, or a new one.
func (s *Shop) saveBeside(text, why string) (Outcome, error) {
	var err error
	if s.besideIsOurs() {
		err = s.put(s.beside, text, &s.besideText)
	} else {
		s.beside, err = s.writeBeside("day.bide", text)
		s.besideText = text
	}
	if err != nil {
		return Outcome{}, err
	}
	return Outcome{s.beside, true, why + ": the day is in " + s.beside + ", and " + dayFile + " untouched"}, nil
}

// besideIsOurs reports whether the day was saved to another file that nobody has
// changed since.
func (s *Shop) besideIsOurs() bool {
	if s.beside == "" {
		return false
	}
	now, there, err := s.onDisk(s.beside)
	return err == nil && there && now == s.besideText
}

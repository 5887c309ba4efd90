package plan

import (
	"fmt"
	"reflect"
)

// Fault is one thing that keeps a job from being laid out or run on a beam, or an order
// from being kept: a value that can be kept and compared.
type Fault struct {
	Key string // of the job in day.toml that it belongs to: material, web, slits, trim, shift
	Phrase
}

// Phrase is a text whose numbers are kept apart from its words, which are made when it is
// shown: Args fill Words as fmt.Sprintf does. A Length is shown in the unit of who reads.
type Phrase struct {
	Words string
	Args  []any // Length, Bare, Unlike(...), int, string, Condition or Phrase
}

// Bare is a length that is shown without its unit.
type Bare Length

// unlike is a length beside another one that it differs from.
type unlike struct{ Length, other Length }

// Unlike is a length that is shown in full where rounding would make it look like another
// one that it differs from.
func Unlike(l, other Length) any { return unlike{l, other} }

// NewFault is the fault of a key, in words and numbers.
func NewFault(key, words string, args ...any) Fault { return Fault{key, Say(words, args...)} }

// Say is the phrase of words and numbers.
func Say(words string, args ...any) Phrase { return Phrase{words, args} }

// Why is the phrase in words, with lengths in the unit.
func (p Phrase) Why(u Unit) string {
	if len(p.Args) == 0 {
		return p.Words
	}
	args := make([]any, len(p.Args))
	for i, a := range p.Args {
		switch a := a.(type) {
		case Length:
			args[i] = u.Show(a)
		case Bare:
			args[i] = u.Number(Length(a))
		case unlike:
			args[i] = u.Show(a.Length)
			if args[i] == u.Show(a.other) {
				args[i] = a.Length.MM() + " mm"
			}
		case Phrase:
			args[i] = a.Why(u)
		default:
			args[i] = a
		}
	}
	return fmt.Sprintf(p.Words, args...)
}

// Equal reports whether both say the same of the same numbers.
func (p Phrase) Equal(other Phrase) bool { return reflect.DeepEqual(p, other) }

// Equal reports whether both are the same fault of the same key.
func (f Fault) Equal(other Fault) bool { return f.Key == other.Key && f.Phrase.Equal(other.Phrase) }

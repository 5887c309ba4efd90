// Package record keeps what happens at the beam: events, one a line of a file that is only
// ever added to, and what they say of each holder.
package record

import (
	"encoding/json"
	"fmt"
	"time"

	"bide/plan"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

// The kinds of events that bide records. What was entered by mistake stays in the record;
// the same event with Back set says that it was.
const (
	Moved     Kind = "moved"     // Holder went From To, for Job
	Corrected Kind = "corrected" // Holder, recorded at From, was really at To
	Condition Kind = "condition" // Holder came into Condition, for Reason
	Job       Kind = "job"       // Job came into State; done, it ran Metres
	Sequence  Kind = "sequence"  // the jobs were put into the order Order
)

// Kind is what kind of thing an event is. A record of a later version may have others.
type Kind string

// TakenBack is the event, recorded at that time, that takes this one back.
func (e Event) TakenBack(at time.Time) Event {
	e.Time, e.Back = at, true
	return e
}

// Event is one thing done at the beam. Which fields it has follows from its kind;
// of a kind that isn't known, those that are known by name.
type Event struct {
	Time      time.Time // by the clock on the wall
	Kind      Kind
	Back      bool        // it takes such an event back
	Holder    int         // from 1; 0 is none
	From, To  plan.Length // places of moved and corrected
	Condition plan.Condition
	Reason    string
	Job       string // id
	State     plan.State
	Metres    float64
	Order     []string // ids
}

// eventLine is an event as a line of the record: lengths in exact millimetres,
// words as in the shop's files.
type eventLine struct {
	Time      string       `json:"time"`
	Kind      Kind         `json:"kind"`
	Back      bool         `json:"back,omitempty"`
	Holder    int          `json:"holder,omitempty"`
	From      *json.Number `json:"from,omitempty"`
	To        *json.Number `json:"to,omitempty"`
	Condition string       `json:"condition,omitempty"`
	Reason    string       `json:"why,omitempty"`
	Job       string       `json:"job,omitempty"`
	State     string       `json:"state,omitempty"`
	Metres    float64      `json:"metres,omitempty"`
	Order     []string     `json:"order,omitempty"`
}

// MarshalJSON is the event as the record holds it.
func (e Event) MarshalJSON() ([]byte, error) {
	line := eventLine{
		Time: toml.Time(e.Time), Kind: e.Kind, Back: e.Back, Holder: e.Holder,
		Reason: e.Reason, Job: e.Job, Metres: e.Metres, Order: e.Order,
	}
	switch e.Kind {
	case Moved, Corrected:
		from, to := json.Number(e.From.MM()), json.Number(e.To.MM())
		line.From, line.To = &from, &to
	case Condition:
		line.Condition = e.Condition.String()
	case Job:
		line.State = e.State.String()
	}
	return json.Marshal(line)
}

// UnmarshalJSON reads what MarshalJSON writes. Keys that it doesn't know it leaves
// out; text from the record is made safe to print.
func (e *Event) UnmarshalJSON(text []byte) (err error) {
	var line eventLine
	if err := json.Unmarshal(text, &line); err != nil {
		return err
	}
	*e = Event{Kind: Kind(words.Clean(string(line.Kind))), Back: line.Back, Holder: line.Holder, Reason: words.Clean(line.Reason), Job: words.Clean(line.Job), Metres: line.Metres}
	for _, id := range line.Order {
		e.Order = append(e.Order, words.Clean(id))
	}
	if e.Time, err = time.Parse("2006-01-02T15:04:05", line.Time); err != nil {
		return fmt.Errorf("time %s", words.Quoted(line.Time))
	}
	if e.From, err = readPlace(line.From); err != nil {
		return err
	}
	if e.To, err = readPlace(line.To); err != nil {
		return err
	}
	condition, known := named(line.Condition, plan.Good, plan.NoCut, plan.Stuck, plan.Out)
	state, knownState := named(line.State, plan.Waiting, plan.Running, plan.Done, plan.OnHold)
	e.Condition, e.State = condition, state
	switch {
	case e.Kind == Condition && !known:
		return fmt.Errorf("condition %s", words.Quoted(line.Condition))
	case e.Kind == Job && !knownState:
		return fmt.Errorf("state %s", words.Quoted(line.State))
	}
	return nil
}

// readPlace is a place in millimetres; zero when there is none.
func readPlace(n *json.Number) (plan.Length, error) {
	if n == nil {
		return 0, nil
	}
	return plan.ParseLength(n.String(), plan.Millimetres)
}

// named is the one of the values that has this name; the zero value and false for none.
func named[T fmt.Stringer](name string, values ...T) (value T, known bool) {
	for _, v := range values {
		if v.String() == name {
			return v, true
		}
	}
	return value, false
}

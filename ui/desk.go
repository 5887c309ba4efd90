package ui

import (
	"errors"
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/shop"
	"bide/ui/draw"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// desk is what all panes look at: the shop, the day as it is ordered now with what
// that costs, what is picked, and what happened last.
type desk struct {
	*draw.Theme
	*keys.Table
	*forecast
	shop    *shop.Shop
	demo    bool // the shop is an invented one
	history history[draft]
	kept    draft                  // as the file has it
	aside   string                 // the file that it was saved to where day.toml could not be; else empty
	drawer  map[formPlace]*jobForm // forms put away unfinished
	stems   map[*plan.Job]string   // where edited jobs come from: see origin
	search  search
	offer   *offer // what the last search found; nil without one
	news    news
	broken  map[*plan.Job]string // rules that the order breaks, by the job whose they are

	keep    *keeper      // writes down what happens at the beam
	truth   truth        // what really stands there
	claims  []*claim     // on walks, to be taken back
	saving  bool         // a deed is being written down
	unsaved string       // why what happened last isn't; empty when it is
	owing   []shop.Event // told and not written down
	freed   bool         // the right to write was just given
	behind  bool         // day.toml is behind positions.toml: see openDay
	watch   watch        // over the shop's files

	turn   int // of the picked job, from 0
	move   int // picked in its changeover, from 0
	holder int // picked, by number from 1; 0 is none

	filters [lastPaneShown + 1]filter // of the panes' lists
	prompt  *prompt                   // nil when none is open
	used    *dayUse                   // see use
	wear    *shop.Summary             // of the record; nil while it isn't read
	todo    tea.Cmd                   // that a pane wants done; nil none
}

// news is what just happened, told until the next key.
type news struct {
	text    string
	brief   string       // the same where there is little room; may be empty
	also    string       // what came from the background meanwhile
	job     string       // id of the one that was changed
	against *plan.Totals // of the day before it, where they were known
	priced  bool         // what it costs is told, though no job was changed
	able    []*plan.Job  // that could be run before it
}

func newDesk(s *shop.Shop, k *draw.Theme) (*desk, error) {
	p, err := plan.NewPlanner(s.Beam)
	if err != nil {
		return nil, fmt.Errorf("beam.toml: %w", err)
	}
	if len(s.Day.Jobs) == 0 {
		return nil, errors.New("day.toml: there are no jobs")
	}
	d := &desk{Theme: k, Table: keys.NewTable(k.ASCII), shop: s, keep: newKeeper(s), truth: truth{s.Standing, s.Marks}}
	d.watch.since = d.keep.clock()
	d.openDay(s)
	d.forecast = newForecast(p, s.Beam, s.Standing, s.Day.Begins(s.Standing), d.history.now.jobs)
	d.sought = d.history.now.aim
	d.settle()
	return d, nil
}

// openDay takes the day as the shop has it, and as it is where the beam is half set up:
// what ran then has ended, and the job that is set up comes first. Where day.toml doesn't
// have that it has ended, since the power went before it was written, that is written
// with the next thing told.
func (d *desk) openDay(s *shop.Shop) {
	var jobs []*plan.Job
	for i := range s.Day.Jobs {
		jobs = append(jobs, &s.Day.Jobs[i])
	}
	d.kept = newDraft(jobs, s.Day.Aim)
	half := s.Standing.Setting
	d.behind = false
	if half != nil && d.kept.find(half.Job) != nil {
		d.kept = ended(d.kept, half.Job)
		d.behind = !slices.Equal(d.kept.all, jobs)
	}
	d.history = history[draft]{now: d.kept}
	if half != nil {
		d.history.now = d.kept.first(half.Job)
	}
}

// jobs is the present order.
func (d *desk) jobs() []*plan.Job { return d.present.jobs }

// away are the jobs done or set aside: they have no turn.
func (d *desk) away() []*plan.Job { return d.history.now.away() }

// job is the picked one, nil when the day has none.
func (d *desk) job() *plan.Job {
	if d.turn < len(d.jobs()) {
		return d.jobs()[d.turn]
	}
	return nil
}

// outcome is what is known of the job at that turn; nil while it is worked out.
func (d *desk) outcome(turn int) *outcome {
	if turn < len(d.present.known) {
		return d.present.known[turn]
	}
	return nil
}

// before is what stands when the changeover to that turn begins; nil while it is
// worked out.
func (d *desk) before(turn int) *plan.Standing {
	if turn == 0 {
		return d.start.stands
	}
	if o := d.outcome(turn - 1); o != nil {
		return o.stands
	}
	return nil
}

// moves are those of the picked changeover.
func (d *desk) moves() []plan.Move {
	if o := d.outcome(d.turn); o != nil {
		return o.step.Changeover.Moves
	}
	return nil
}

// pick goes to another job.
func (d *desk) pick(turn int) {
	turn = max(0, min(turn, len(d.jobs())-1))
	if turn != d.turn {
		d.turn, d.move = turn, 0
	}
}

// pickMove goes to another move of the changeover.
func (d *desk) pickMove(n int) { d.move = max(0, min(n, len(d.moves())-1)) }

// shift moves the picked job by one turn. An order that breaks a rule is allowed,
// and said to be broken: the person at the screen may know better.
func (d *desk) shift(by int) {
	j, to := d.job(), d.turn+by
	switch {
	case j == nil:
	case j.State == plan.Running:
		d.say("%s is running: it stays where it is", j.ID)
	case to < 0:
		d.say("%s is first already", j.ID)
	case to >= len(d.jobs()):
		d.say("%s is last already", j.ID)
	case by < 0 && d.jobs()[to].State == plan.Running:
		d.say("%s is running: nothing can come before it", d.jobs()[to].ID)
	default:
		jobs := slices.Clone(d.jobs())
		jobs[d.turn], jobs[to] = jobs[to], jobs[d.turn]
		next := d.history.now.ordered(jobs)
		next.about = j.ID
		d.do(next)
	}
}

// settle brings what follows from the order and its outcomes up to date.
func (d *desk) settle() {
	d.broken = map[*plan.Job]string{}
	for _, b := range plan.Broken(d.able(), d.history.now.done()) {
		if _, told := d.broken[b.Job]; !told {
			d.broken[b.Job] = b.Why(d.shop.Unit)
		}
	}
	d.pickMove(d.move)
	d.relist()
}

// relist brings the day that this one is compared with up to date: its jobs, in the order
// of the file. One that the file hasn't comes behind the one that it comes behind here.
func (d *desk) relist() {
	var order []string
	for _, j := range d.kept.all {
		order = append(order, j.ID)
	}
	jobs := d.history.now.like(order, d.start.stands.Setting).jobs
	if slices.Equal(jobs, d.listed.jobs) {
		return
	}
	d.listed = chain{jobs: jobs, centred: true}
	d.extend(&d.listed)
}

// able are the jobs that the beam can run, as far as is known.
func (d *desk) able() (out []*plan.Job) {
	for t, j := range d.jobs() {
		if o := d.outcome(t); o == nil || len(o.faults) == 0 {
			out = append(out, j)
		}
	}
	return out
}

// told is the news in words: what happened and what it costs, lateness first. Where
// a rule is broken, that comes before all, and what happened last: what is cut off
// at the end matters least.
func (d *desk) told() string {
	text := d.news.text
	if d.news.job == "" && !d.news.priced {
		return join("; ", text, d.news.also)
	}
	costs := ""
	switch {
	case d.news.against == nil:
	case d.present.whole():
		costs = d.costsOf()
	default:
		costs = d.Pending
	}
	for _, j := range d.jobs() {
		if why := d.broken[j]; why != "" {
			return join("; ", "broken: "+why, costs, text, d.news.also)
		}
	}
	return join("; ", join(": ", text, costs), d.news.also)
}

// mention tells what came from the background, beside what just happened.
func (d *desk) mention(text string) { d.news.also = text }

// say tells what just happened, or why nothing did.
func (d *desk) say(format string, args ...any) { d.news = news{text: fmt.Sprintf(format, args...)} }

// changed reports whether the day is another than the file's.
func (d *desk) changed() bool {
	return !slices.Equal(d.history.now.all, d.kept.all) || d.history.now.aim != d.kept.aim
}

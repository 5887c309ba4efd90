// Package program does what the program is called for: the full screen, a sheet, a check, a new
// shop. What it prints goes to standard output, what is wrong to standard error, and the exit
// status says which of the two it was.
package program

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/signal"
	"slices"
	"syscall"
	"time"

	"bide/plan"
	"bide/plan/sequence"
	"bide/plan/sheet"
	"bide/plan/shop"
	"bide/plan/shop/toml"
	"bide/plan/verify"
	"bide/plan/words"
	"bide/ui"
	"bide/ui/commandline"
	"bide/ui/personal"
	"bide/ui/terminal"
)

const version = "0.1"

// The exit statuses.
const (
	exitDone  = 0
	exitPlan  = 1 // the files or a job can't be planned, or output can't be written
	exitUsage = 2
)

// program is what a command writes to, and the shop that is shown where none is named.
type program struct {
	out, err io.Writer
	demo     fs.FS
}

// Run does what the arguments ask for and gives the exit status: 0 done, 1 the files or a job
// can't be planned, or output can't be written, 2 wrong usage. Where no shop is named it takes the
// demo.
func Run(args []string, out, errs io.Writer, demo fs.FS) int {
	p := program{out, errs, demo}
	c, err := commandline.Parse(args)
	if err != nil {
		p.say("bide: %v\nbide help shows how it is used", err)
		return exitUsage
	}
	if c.Command == "" && !c.Plain && ui.Possible() {
		return p.fullScreen(c)
	}
	endOnSignals()
	switch c.Command {
	case "help":
		return p.print([]byte(commandline.Help), exitDone)
	case "version":
		return p.print([]byte("bide "+version+"\n"), exitDone)
	case "new":
		return p.newShop(c.Operand)
	case "carry":
		return p.carry(c)
	}
	s, problems := p.open(c.Operand)
	if len(problems) > 0 {
		p.say("%v", problems)
		return exitPlan
	}
	if c.Plain {
		return p.plain(c, s)
	}
	if err := from(c.From, s.Day); err != nil {
		p.say("bide: --from: %v", err)
		return exitUsage
	}
	if err := (&sheet.Options{Day: s.Day, Only: c.Job}).Check(); err != nil { // before a search that may take a while
		p.say("bide: --job: %v", err)
		return exitUsage
	}
	d, err := p.day(c, s)
	if err != nil {
		p.say("beam.toml: %v", err)
		return exitPlan
	}
	if err := verify.DayOf(d, s.Day); err != nil {
		p.say("bide: the plan made doesn't hold, and isn't given out:\n%v", err)
		return exitPlan
	}
	if c.Command == "check" {
		return p.check(s, d)
	}
	return p.sheets(c, s, d)
}

// from lets a day be planned from a time on: now, a time of its first day, or a date and time.
func from(text string, day *plan.Day) error {
	if text == "" {
		return nil
	}
	if text == "now" {
		day.Now = time.Now().In(day.Start.Location()).Truncate(time.Second)
		return nil
	}
	at, err := shop.TimeOf(text, day.Start)
	if err == nil {
		day.Now = at
	}
	return err
}

// day plans the shop's day in the sequence asked for.
func (p program) day(c commandline.Call, s *shop.Shop) (*plan.DayPlan, error) {
	effort := sequence.Effort{Aim: aimOf(c, s), Rounds: c.Rounds, Seed: c.Seed}
	if c.Sequence != "best" {
		d, err := sequence.PlanDay(s.Beam, s.Positions, s.Day)
		if err != nil || c.Command == "check" {
			return d, err
		}
		return sequence.Jointly(context.Background(), d, effort.Aim), nil
	}
	if f, ok := p.err.(*os.File); ok && terminal.FullScreen(f, f, os.Getenv) {
		effort.Report = progress(f)
		defer fmt.Fprint(f, "\r\x1b[K")
	}
	return sequence.Search(context.Background(), s.Beam, s.Positions, s.Day, effort)
}

// aimOf is what the day is planned for.
func aimOf(c commandline.Call, s *shop.Shop) plan.Aim {
	switch c.Aim {
	case "minutes":
		return plan.AimMinutes
	case "moves":
		return plan.AimMoves
	}
	return s.Day.Aim
}

// progress says how far a search is, on one line of a terminal.
func progress(w io.Writer) func(sequence.Progress) {
	shown := -1
	return func(g sequence.Progress) {
		if percent := 100 * g.Rounds / max(g.Of, 1); percent > shown {
			shown = percent
			fmt.Fprintf(w, "\rsearching: %d %%, best so far %d moves, %.1f min of setup, %d late\x1b[K",
				percent, g.Best.Repositions, g.Best.Setup.Minutes(), g.Best.LateJobs)
		}
	}
}

// fullScreen shows the shop until the person leaves it.
func (p program) fullScreen(c commandline.Call) int {
	s, problems := p.open(c.Operand)
	if len(problems) > 0 {
		p.say("%v", problems)
		return exitPlan
	}
	if err := ui.Run(options(c, s)); err != nil {
		p.say("bide: %v", err)
		return exitPlan
	}
	return exitDone
}

// plain shows the shop's day as linear text.
func (p program) plain(c commandline.Call, s *shop.Shop) int {
	var text bytes.Buffer
	o := options(c, s)
	o.Output = &text
	if err := ui.Plain(o); err != nil {
		p.say("bide: %v", err)
		return exitPlan
	}
	return p.print(text.Bytes(), exitDone)
}

// options are what the screen is run with.
func options(c commandline.Call, s *shop.Shop) ui.Options {
	config := personal.Read(personal.Folder())
	o := ui.Options{Shop: s, ASCII: c.ASCII, Demo: c.Operand == "", Config: &config, State: personal.StateFolder()}
	switch {
	case c.Light:
		o.Background = ui.Light
	case c.Dark:
		o.Background = ui.Dark
	}
	return o
}

// open reads the shop in a folder, or the demo if none is named.
func (p program) open(dir string) (*shop.Shop, toml.Problems) {
	if dir != "" {
		return shop.Open(dir)
	}
	return shop.Read(p.demo)
}

// sheets writes the plan in the form asked for.
func (p program) sheets(c commandline.Call, s *shop.Shop, d *plan.DayPlan) int {
	o := sheet.Options{
		Unit: s.Unit, Day: s.Day, Notes: s.Notes, Only: c.Job, Demo: c.Operand == "", Knife: s.Knife(s.Positions, d.Steps()),
		Sequence: d.Sequence.String(), Aim: aimOf(c, s).String(), Rounds: d.Rounds, Seed: c.Seed,
	}
	for _, note := range s.Beside {
		p.say("note: %s", note)
	}
	write := map[string]func(io.Writer, *plan.DayPlan, sheet.Options) error{
		"text": sheet.Text, "csv": sheet.CSV, "json": sheet.JSON, "html": sheet.HTML,
	}[c.As]
	var document bytes.Buffer
	if err := write(&document, d, o); err != nil {
		p.say("bide: %v", err)
		return exitPlan
	}
	return p.print(document.Bytes(), p.refusals(s, d, c.Job))
}

// refusals says why jobs are refused and which rules the order breaks, and gives
// the exit status.
func (p program) refusals(s *shop.Shop, d *plan.DayPlan, only string) int {
	status := exitDone
	tell := func(j *plan.Job, f plan.Fault) {
		if only == "" || only == j.ID {
			p.say("%v", s.ProblemOf(j, f))
			status = exitPlan
		}
	}
	for _, r := range d.Refused() {
		for _, f := range r.Faults {
			tell(r.Job, f)
		}
	}
	for _, b := range plan.Broken(d.Jobs(), d.Done) {
		tell(b.Job, b.Fault)
	}
	return status
}

// check says what is wrong with the jobs, or that nothing is.
func (p program) check(s *shop.Shop, d *plan.DayPlan) int {
	text := ""
	for _, note := range slices.Concat(s.Beside, s.Notes) {
		text += "note: " + words.Clean(note) + "\n"
	}
	status := p.refusals(s, d, "")
	if status == exitDone {
		text += fmt.Sprintf("no problems: %s, %d holders, %d jobs, %d of them planned\n",
			words.Clean(s.Beam.Name), len(s.Beam.Holders), len(s.Day.Jobs), len(d.Steps()))
	}
	return p.print([]byte(text), status)
}

// print writes to standard output and gives the exit status: a reader that has
// gone (bide sheet | head) is no error, a full disk is.
func (p program) print(text []byte, status int) int {
	if _, err := p.out.Write(text); err != nil && !errors.Is(err, syscall.EPIPE) {
		p.say("bide: standard output can't be written: %v", err)
		return exitPlan
	}
	return status
}

// say writes a message to standard error.
func (p program) say(format string, args ...any) { fmt.Fprintf(p.err, format+"\n", args...) }

// endOnSignals ends the program with 128 and the signal's number, as a shell does,
// and leaves a closed pipe to the error of the write. A signal that the caller
// lets it ignore (nohup) stays ignored.
func endOnSignals() {
	signal.Ignore(syscall.SIGPIPE)
	ends := make(chan os.Signal, 1)
	for _, s := range []os.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP} {
		if !signal.Ignored(s) {
			signal.Notify(ends, s)
		}
	}
	go func() {
		if s, ok := (<-ends).(syscall.Signal); ok {
			os.Exit(128 + int(s))
		}
	}()
}

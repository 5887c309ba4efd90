// Bide plans the changeovers of a score slitter whose knife holders stand on one
// beam: which of them can stay, which must move and in which order.
package main

import (
	"bytes"
	"context"
	"embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/signal"
	"slices"
	"strings"
	"syscall"

	"bide/plan"
	"bide/plan/sheet"
	"bide/plan/shop"
	"bide/ui"
	"bide/ui/personal"
	"bide/ui/terminal"
)

const version = "0.1"

//go:embed testdata/demo
var demo embed.FS

const help = `bide keeps the knife holders of a score slitter where they stand: it plans which
must move between two jobs, in which order, and what that costs.

  bide [SHOP]                 full screen; no SHOP: the built-in demo
  bide sheet [flags] [SHOP]   the changeover sheets, to standard output
  bide check [SHOP]           read everything, report every problem
  bide new DIR                a shop to start from
  bide help                   this text
  bide --version

SHOP is the folder with one beam's files. Flags stand before or after it; the
first value is the default.
  --as text|csv|json|html     html: in a later version
  --sequence listed|best      the order of the file, or the best one found
  --aim minutes|moves         what the best order saves, once least is late
  --rounds N                  search effort; 0 goes by the size of the day
  --seed N                    of the search (1)
  --job ID                    the sheet of one job only
With the full screen:
  --plain                     the same as linear text, to standard output
  --ascii                     nothing but ASCII
  --light, --dark             colours for that background

Exit status: 0 done, 1 the files or a job can't be planned, 2 wrong usage.
Plans are advice. Local codes, the site's procedure and licensed people come first.
`

// The exit statuses.
const (
	exitDone  = 0
	exitPlan  = 1 // the files or a job can't be planned, or output can't be written
	exitUsage = 2
)

func main() {
	os.Exit(run(os.Args[1:], program{os.Stdout, os.Stderr}))
}

// program is what a command writes to.
type program struct{ out, err io.Writer }

// run does what the arguments ask for and gives the exit status.
func run(args []string, p program) int {
	c, err := parse(args)
	if err != nil {
		p.say("bide: %v\nbide help tells how it is used", err)
		return exitUsage
	}
	if c.command == "" && !c.plain && ui.Possible() {
		return p.fullScreen(c)
	}
	endOnSignals()
	switch c.command {
	case "help":
		return p.print([]byte(help), exitDone)
	case "version":
		return p.print([]byte("bide "+version+"\n"), exitDone)
	case "new":
		return p.newShop(c.operand)
	}
	s, problems := open(c.operand)
	if len(problems) > 0 {
		p.say("%v", problems)
		return exitPlan
	}
	if c.plain {
		return p.plain(c, s)
	}
	d, err := p.day(c, s)
	if err != nil {
		p.say("beam.toml: %v", err)
		return exitPlan
	}
	if err := plan.VerifyDay(d, s.Day); err != nil {
		p.say("bide: the plan made doesn't hold, and isn't given out:\n%v", err)
		return exitPlan
	}
	if c.command == "check" {
		return p.check(s, d)
	}
	return p.sheets(c, s, d)
}

// day plans the shop's day in the sequence asked for.
func (p program) day(c call, s *shop.Shop) (*plan.DayPlan, error) {
	effort := plan.Effort{Rounds: c.rounds, Seed: c.seed}
	if c.aim == "moves" {
		effort.Aim = plan.AimMoves
	}
	if c.sequence != "best" {
		d, err := plan.PlanDay(s.Beam, s.Standing, s.Day)
		if err != nil || c.command == "check" {
			return d, err
		}
		return plan.Settle(context.Background(), d, effort.Aim), nil
	}
	if f, ok := p.err.(*os.File); ok && terminal.FullScreen(f, f, os.Getenv) {
		effort.Report = progress(f)
		defer fmt.Fprint(f, "\r\x1b[K")
	}
	return plan.Search(context.Background(), s.Beam, s.Standing, s.Day, effort)
}

// progress tells how far a search is, on one line of a terminal.
func progress(w io.Writer) func(plan.Progress) {
	shown := -1
	return func(g plan.Progress) {
		if percent := 100 * g.Rounds / max(g.Of, 1); percent > shown {
			shown = percent
			fmt.Fprintf(w, "\rsearching: %d %%, best so far %d moves, %.1f min of setup, %d late\x1b[K",
				percent, g.Best.Repositions, g.Best.Setup.Minutes(), g.Best.LateJobs)
		}
	}
}

// fullScreen shows the shop until the person leaves it.
func (p program) fullScreen(c call) int {
	s, problems := open(c.operand)
	if len(problems) > 0 {
		p.say("%v", problems)
		return exitPlan
	}
	if err := ui.Run(c.options(s)); err != nil {
		p.say("bide: %v", err)
		return exitPlan
	}
	return exitDone
}

// plain tells the shop's day as linear text.
func (p program) plain(c call, s *shop.Shop) int {
	var text bytes.Buffer
	o := c.options(s)
	o.Output = &text
	if err := ui.Plain(o); err != nil {
		p.say("bide: %v", err)
		return exitPlan
	}
	return p.print(text.Bytes(), exitDone)
}

// options are what the screen is run with.
func (c call) options(s *shop.Shop) ui.Options {
	config := personal.Read(personal.Folder())
	o := ui.Options{Shop: s, ASCII: c.ascii, Demo: c.operand == "", Config: &config, State: personal.StateFolder()}
	switch {
	case c.light:
		o.Background = ui.Light
	case c.dark:
		o.Background = ui.Dark
	}
	return o
}

// open reads the shop in a folder, or the demo if none is named.
func open(dir string) (*shop.Shop, shop.Problems) {
	if dir != "" {
		return shop.Open(dir)
	}
	files, err := fs.Sub(demo, "testdata/demo")
	if err != nil {
		return nil, shop.Problems{{File: "demo", What: err.Error()}}
	}
	return shop.Read(files)
}

// sheets writes the plan in the form asked for.
func (p program) sheets(c call, s *shop.Shop, d *plan.DayPlan) int {
	o := sheet.Options{
		Unit: s.Unit, Day: s.Day, Notes: s.Notes, Only: c.job, Demo: c.operand == "", Knife: s.Knife(s.Standing, d.Steps),
		Sequence: d.Sequence.String(), Aim: c.aim, Rounds: d.Rounds, Seed: c.seed,
	}
	if err := o.Check(); err != nil {
		p.say("bide: --job: %v", err)
		return exitUsage
	}
	write := map[string]func(io.Writer, *plan.DayPlan, sheet.Options) error{
		"text": sheet.Text, "csv": sheet.CSV, "json": sheet.JSON,
	}[c.as]
	var document bytes.Buffer
	if err := write(&document, d, o); err != nil {
		p.say("bide: %v", err)
		return exitPlan
	}
	return p.print(document.Bytes(), p.refusals(s, d, c.job))
}

// refusals tells why jobs are refused and which rules the order breaks, and gives
// the exit status.
func (p program) refusals(s *shop.Shop, d *plan.DayPlan, only string) int {
	status := exitDone
	tell := func(j *plan.Job, f plan.Fault) {
		if only == "" || only == j.ID {
			p.say("%v", s.ProblemOf(j, f))
			status = exitPlan
		}
	}
	for _, r := range d.Refused {
		for _, f := range r.Faults {
			tell(r.Job, f)
		}
	}
	for _, b := range plan.Broken(d.Jobs(), d.Done) {
		tell(b.Job, b.Fault)
	}
	return status
}

// check tells what is wrong with the jobs, or that nothing is.
func (p program) check(s *shop.Shop, d *plan.DayPlan) int {
	text := ""
	for _, note := range s.Notes {
		text += "note: " + shop.Clean(note) + "\n"
	}
	status := p.refusals(s, d, "")
	if status == exitDone {
		text += fmt.Sprintf("no problems: %s, %d holders, %d jobs, %d of them planned\n",
			shop.Clean(s.Beam.Name), len(s.Beam.Holders), len(s.Day.Jobs), len(d.Steps))
	}
	return p.print([]byte(text), status)
}

func (p program) newShop(dir string) int {
	if err := shop.New(dir); err != nil {
		p.say("bide: %v", err)
		return exitPlan
	}
	dir = shop.Clean(dir)
	return p.print([]byte(dir+" is a shop to start from: put the beam's and the day's figures into its files, then\n  bide check "+dir+"\n"), exitDone)
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

// endOnSignals ends the program with 128 and the signal's number, as a shell tells
// it, and leaves a closed pipe to the error of the write. A signal that the caller
// has it ignore (nohup) stays ignored.
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

// call is a command line as read.
type call struct {
	command                string // "" is the full screen
	operand                string // SHOP or DIR
	as, sequence, aim, job string
	rounds                 int
	seed                   uint64
	ascii, plain           bool
	light, dark            bool
}

var commands = []string{"sheet", "check", "new", "help"}

// screenFlags go with the full screen, all others with bide sheet.
var screenFlags = []string{"ascii", "plain", "light", "dark"}

// parse reads a command line; flags stand anywhere in it.
func parse(args []string) (call, error) {
	c := call{as: "text", sequence: "listed", aim: "minutes"}
	f := flag.NewFlagSet("bide", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	choice(f, &c.as, "as", "text", "csv", "json", "html")
	choice(f, &c.sequence, "sequence", "listed", "best")
	choice(f, &c.aim, "aim", "minutes", "moves")
	f.StringVar(&c.job, "job", "", "")
	f.IntVar(&c.rounds, "rounds", 0, "")
	f.Uint64Var(&c.seed, "seed", 1, "")
	f.BoolVar(&c.ascii, "ascii", false, "")
	f.BoolVar(&c.plain, "plain", false, "")
	f.BoolVar(&c.light, "light", false, "")
	f.BoolVar(&c.dark, "dark", false, "")
	v := f.Bool("version", false, "")
	operands, err := parseAll(f, args)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return call{command: "help"}, nil
	case err != nil:
		return c, err
	case *v:
		return call{command: "version"}, nil
	}
	if err := c.read(operands); err != nil {
		return c, err
	}
	return c, c.allowed(f)
}

// parseAll reads the flags before, between and after the operands.
func parseAll(f *flag.FlagSet, args []string) (operands []string, err error) {
	for {
		err = f.Parse(args)
		if err != nil || f.NArg() == 0 {
			break
		}
		operands, args = append(operands, f.Arg(0)), f.Args()[1:]
	}
	if err == nil || errors.Is(err, flag.ErrHelp) {
		return operands, err
	}
	text := shop.Clean(strings.Replace(err.Error(), " -", " --", 1))
	if _, name, ok := strings.Cut(text, "not defined: --"); ok {
		var names []string
		f.VisitAll(func(g *flag.Flag) { names = append(names, "--"+g.Name) })
		text = "there is no flag --" + name + meant("--"+name, names)
	}
	return nil, errors.New(strings.Replace(text, "parse error", "it is a whole number", 1))
}

// choice defines a flag that takes one of a few words.
func choice(f *flag.FlagSet, to *string, name string, words ...string) {
	f.Func(name, "", func(word string) error {
		if !slices.Contains(words, word) {
			return fmt.Errorf("it is one of %s%s", strings.Join(words, ", "), meant(word, words))
		}
		*to = word
		return nil
	})
}

// read takes the command and the folder from the operands.
func (c *call) read(operands []string) error {
	if len(operands) > 0 && slices.Contains(commands, operands[0]) {
		c.command, operands = operands[0], operands[1:]
	}
	switch {
	case c.command == "help":
		return nil
	case len(operands) > 1 && c.command == "":
		return fmt.Errorf("there is no command %s%s", shop.Clean(operands[0]), meant(operands[0], commands))
	case len(operands) > 1:
		return fmt.Errorf("bide %s takes one folder, not %s too", c.command, shop.Clean(operands[1]))
	case len(operands) == 1 && operands[0] != "":
		c.operand = operands[0]
	case len(operands) == 1 || c.command == "new":
		return errors.New("a folder must be named")
	}
	if _, err := os.Stat(c.operand); err != nil && c.command == "" && meant(c.operand, commands) != "" {
		return fmt.Errorf("%s is no command and no folder%s", shop.Clean(c.operand), meant(c.operand, commands))
	}
	return nil
}

// allowed checks that the flags given go with the command, and with each other.
func (c *call) allowed(f *flag.FlagSet) (err error) {
	f.Visit(func(g *flag.Flag) {
		switch screen := slices.Contains(screenFlags, g.Name); {
		case screen && c.command != "":
			err = fmt.Errorf("--%s goes with the full screen, not with bide %s", g.Name, c.command)
		case !screen && c.command != "sheet":
			err = fmt.Errorf("--%s goes with bide sheet", g.Name)
		}
	})
	switch {
	case err != nil:
	case c.rounds < 0:
		err = errors.New("--rounds is 0 or more")
	case c.as == "html":
		err = errors.New("--as html comes in a later version; text, csv and json are there")
	case c.light && c.dark:
		err = errors.New("--light and --dark: only one of them")
	}
	return err
}

// meant suggests the word that was likely meant.
func meant(word string, words []string) string {
	if near := shop.Nearest(word, words); near != "" {
		return "; did you mean " + near + "?"
	}
	return ""
}

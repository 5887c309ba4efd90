// Package commandline reads what bide is called with, and holds the text that tells how.
package commandline

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"bide/plan/words"
)

// Help is what bide help prints.
const Help = `bide plans the changeovers of a score slitter: it keeps as many knife holders as
possible where they are, and says which must move, in which order, and the cost.

  bide [SHOP]                 full screen; no SHOP: the built-in demo
  bide sheet [flags] [SHOP]   the changeover sheets, to standard output
  bide check [SHOP]           read everything, report every problem
  bide new DIR                a shop to start from
  bide carry [--to DATE] SHOP carry the jobs left over to the next day's file
  bide help                   this text
  bide --version

SHOP is the folder with one beam's files. Flags come before or after it; the
first value is the default.
  --as text|csv|json|html
  --sequence listed|best      the order of the file, or the best one found
  --aim minutes|moves         what the plan saves first, after lateness; without
                              it, as day.toml says
  --rounds N                  search effort; 0 goes by the size of the day
  --seed N                    of the search (1)
  --job ID                    the sheet of one job only
  --from TIME|now             plan from then on: 09:30, or 2026-11-25T09:30; without
                              it the sheet never looks at the wall clock
  --to DATE                   the day that bide carry makes, 2026-11-26; without it the
                              next one whose shifts are to come
With the full screen:
  --plain                     the same as linear text, to standard output
  --ascii                     nothing but ASCII
  --light, --dark             colours for that background

Exit status: 0 done, 1 the files or a job can't be planned, 2 wrong usage.
Plans are advice. Local codes, the site's procedure and licensed people come first.
`

// Call is a command line as read. Help explains the flags.
type Call struct {
	Command           string // a word of the help, or version; "" is the full screen
	Operand           string // SHOP or DIR
	As, Sequence, Job string
	Aim               string // empty: as the day says
	From              string // a time, or now; empty: as the files say
	To                string // a date; empty: the next
	Rounds            int
	Seed              uint64
	ASCII, Plain      bool
	Light, Dark       bool
}

var commands = []string{"sheet", "check", "new", "carry", "help"}

// screenFlags go with the full screen, all others with bide sheet.
var screenFlags = []string{"ascii", "plain", "light", "dark"}

// Parse reads a command line; flags stand anywhere in it. The error says what is wrong
// with it, for the person who typed it.
func Parse(args []string) (Call, error) {
	c := Call{As: "text", Sequence: "listed"}
	f := flag.NewFlagSet("bide", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	choice(f, &c.As, "as", "text", "csv", "json", "html")
	choice(f, &c.Sequence, "sequence", "listed", "best")
	choice(f, &c.Aim, "aim", "minutes", "moves")
	f.StringVar(&c.Job, "job", "", "")
	f.StringVar(&c.From, "from", "", "")
	f.StringVar(&c.To, "to", "", "")
	f.IntVar(&c.Rounds, "rounds", 0, "")
	f.Uint64Var(&c.Seed, "seed", 1, "")
	f.BoolVar(&c.ASCII, "ascii", false, "")
	f.BoolVar(&c.Plain, "plain", false, "")
	f.BoolVar(&c.Light, "light", false, "")
	f.BoolVar(&c.Dark, "dark", false, "")
	v := f.Bool("version", false, "")
	operands, err := parseAll(f, args)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return Call{Command: "help"}, nil
	case err != nil:
		return c, err
	case *v:
		return Call{Command: "version"}, nil
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
	text := words.Clean(strings.Replace(err.Error(), " -", " --", 1))
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
func (c *Call) read(operands []string) error {
	if len(operands) > 0 && slices.Contains(commands, operands[0]) {
		c.Command, operands = operands[0], operands[1:]
	}
	switch {
	case c.Command == "help":
		return nil
	case len(operands) > 1 && c.Command == "":
		return fmt.Errorf("there is no command %s%s", words.Clean(operands[0]), meant(operands[0], commands))
	case len(operands) > 1:
		return fmt.Errorf("bide %s takes one folder, not %s too", c.Command, words.Clean(operands[1]))
	case len(operands) == 1 && operands[0] != "":
		c.Operand = operands[0]
	case len(operands) == 1 || c.Command == "new" || c.Command == "carry":
		return errors.New("a folder must be named")
	}
	if _, err := os.Stat(c.Operand); err != nil && c.Command == "" && meant(c.Operand, commands) != "" {
		return fmt.Errorf("%s is no command and no folder%s", words.Clean(c.Operand), meant(c.Operand, commands))
	}
	return nil
}

// allowed checks that the flags given go with the command, and with each other.
func (c *Call) allowed(f *flag.FlagSet) (err error) {
	f.Visit(func(g *flag.Flag) {
		switch screen := slices.Contains(screenFlags, g.Name); {
		case screen && c.Command != "":
			err = fmt.Errorf("--%s goes with the full screen, not with bide %s", g.Name, c.Command)
		case g.Name == "to":
			if c.Command != "carry" {
				err = errors.New("--to goes with bide carry")
			}
		case !screen && c.Command != "sheet":
			err = fmt.Errorf("--%s goes with bide sheet", g.Name)
		}
	})
	switch {
	case err != nil:
	case c.Rounds < 0:
		err = errors.New("--rounds is 0 or more")
	case c.Light && c.Dark:
		err = errors.New("--light and --dark: only one of them")
	}
	return err
}

// meant suggests the word that was likely meant.
func meant(word string, known []string) string {
	if near := words.Nearest(word, known); near != "" {
		return "; did you mean " + near + "?"
	}
	return ""
}

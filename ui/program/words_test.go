package program

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// retired are words that people in a shop had to ask about, each with the one that is used
// now. The program's name is no verb.
var retired = map[string]string{
	`bides?\s+(in|at|on|where)|(they|holders?|all|must|may)\s+bide|bides|biding`: "stay",
	`stands?|standing|stood`:                       "is at; positions",
	`turns?\s+\d|(its|fixed|each|every|no)\s+turn`: "number in the sequence",
	`walks?|walked|walking`:                        "guided setup",
	`ticks?|ticked|ticking`:                        "confirm",
	`tells?|told|telling`:                          "record, report, show",
	`reckon(s|ed|ing)?`:                            "calculated",
	`nought`:                                       "zero",
	`afresh|anew`:                                  "again; replan",
	`settled|settles|settling|weaves?|weaving`:     "improve, calculate", // dust may settle
	`aside`:                                  "on hold",
	`elsewhere|as found`:                     "correct",
	`troubles?`:                              "fault",
	`tracks?|time ?line`:                     "day map, schedule",
	`taken back|takes? (it|that|this) back`:  "undo",
	`taken for granted|passed over|put away`: "assumed, ignored, closed",
	`goes to cut|this beam has not|(as|than) thought|lifts? (the|a|picked) job`: "to cut, not fitted, shown, move",
	`store_gap|in_place`: "park_clearance, position_tolerance",
}

// No word that was retired comes back: not in what the program says or writes, nor in the
// files of a new shop and the documents.
func TestRetiredWords(t *testing.T) {
	t.Chdir("../..")
	words := map[*regexp.Regexp]string{}
	for word, now := range retired {
		words[regexp.MustCompile(`(?i)(^|[^\w-])(`+word+`)($|[^\w-])`)] = now
	}
	look := func(where, text string) {
		text = strings.ReplaceAll(text, "stand still", "") // blades and anvil
		for word, now := range words {
			if found := word.FindStringSubmatch(text); found != nil {
				t.Errorf("%s: %q is retired (%s): %q", where, found[2], now, text)
			}
		}
	}
	literals := 0
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == "testdata" || d.Name() == "plantest" || path != "." && strings.HasPrefix(d.Name(), ".")):
			return fs.SkipDir
		case strings.HasSuffix(path, "_test.go"):
		case strings.HasSuffix(path, ".go"):
			literals += saidIn(t, path, look)
		case strings.HasSuffix(path, ".toml") || strings.HasSuffix(path, ".html") || path == "README.md" || path == "DEVELOPERS.md":
			text, err := os.ReadFile(path)
			for n, line := range strings.Split(string(text), "\n") {
				look(path+":"+strconv.Itoa(n+1), line)
			}
			return err
		}
		return nil
	})
	if err != nil || literals < 2000 {
		t.Errorf("%d literals were read: %v", literals, err)
	}
}

// saidIn has the string literals of a file looked at, but for what it imports, and counts them.
func saidIn(t *testing.T, path string, look func(where, text string)) (n int) {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, path, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	ast.Inspect(file, func(node ast.Node) bool {
		switch node := node.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.BasicLit:
			if node.Kind == token.STRING {
				n++
				look(files.Position(node.Pos()).String(), node.Value)
			}
		}
		return true
	})
	return n
}

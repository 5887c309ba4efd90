package toml

import (
	"strings"
	"testing"

	parser "github.com/BurntSushi/toml"
	"github.com/google/go-cmp/cmp"
)

func TestOutline(t *testing.T) {
	const text = `# [comment] = "x"
units = "mm" # name = 1
"quoted key" = 'it''s'
a.b = 1
list = [ # [
  "]", 1,
]
long = """
[[job]]
id = "no" \"""
"""
[beam]
rail = [1,
  2]
[[job]]
id = "A"
[[job]]

id = "B"
[job.sub]
x = {y = [1, "}"], z = 2}
[[job.part]]
p = 1
[[job.part]]
p = 2`
	want := map[string]int{
		"units": 2, "quoted key": 3, "a.b": 4, "list": 5, "long": 8,
		"beam": 12, "beam.rail": 13, "job[0]": 15, "job[0].id": 16, "job[1]": 17, "job[1].id": 19,
		"job[1].sub": 20, "job[1].sub.x": 21, "job[1].part[0]": 22, "job[1].part[0].p": 23, "job[1].part[1]": 24, "job[1].part[1].p": 25,
	}
	if diff := cmp.Diff(want, outlineOf(text).lines); diff != "" {
		t.Errorf("lines (-want +got):\n%s", diff)
	}
}

// FuzzOutline: whatever the text, the outline ends; of what the parser takes, every
// plain key has a line that names it.
func FuzzOutline(f *testing.F) {
	f.Add("a=1\n[b]\nc='x'\n[[d]]\ne=[1,\n2]\n")
	f.Add("units = 'mm'\n[beam]\nholders = 5\n[[holder]]\nnumber = 2\n")
	f.Add("[[job]]\nid = 'A' # a comment\nslits = [\n  '2 x 40', # and one inside\n]\n")
	f.Add("a = \"\"\"\\\n x\"\"\"\"\"\nb=1")
	f.Fuzz(func(t *testing.T, text string) {
		o := outlineOf(text)
		var tree map[string]any
		meta, err := parser.Decode(text, &tree)
		if err != nil {
			return
		}
		lines := strings.Split(text, "\n")
		for _, key := range meta.Keys() {
			if len(key) != 1 || !plain(key[0]) || meta.Type(key[0]) == "Hash" || meta.Type(key[0]) == "ArrayHash" {
				continue
			}
			n, ok := o.lines[key[0]]
			if !ok || n > len(lines) || !strings.Contains(lines[n-1], key[0]) {
				t.Errorf("key %q of %q is on line %d of %v", key[0], text, n, o.lines)
			}
		}
	})
}

func plain(key string) bool {
	return key != "" && strings.Trim(key, "abcdefghijklmnopqrstuvwxyz") == ""
}

package shop

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestUnreadableText: what can't be parsed is told with a remedy that fits it.
func TestUnreadableText(t *testing.T) {
	utf16 := "\xff\xfe"
	for _, r := range "units\n" {
		utf16 += string(r) + "\x00"
	}
	const usual = "correct this line"
	for _, c := range []struct{ name, text, where, what, remedy string }{
		{"UTF-16", utf16, "day.toml:1", "UTF-16", "save it as UTF-8"},
		{"UTF-16 with the other end first", "\xfe\xff\x00u\x00=", "day.toml:1", "UTF-16", "save it as UTF-8"},
		{"NUL", "units = \"mm\"\nstart = 1\x00\n", "day.toml:2", "NUL", "save it as UTF-8"},
		{"Latin-1", "units = \"mm\"\n\nname = \"Gr\xf6\xdfe\"\n", "day.toml:3", "0xf6", "save it as UTF-8"},
		{"a key twice", "units = \"mm\"\nunits = \"in\"\n", "day.toml:2", `"units" is there already`, "remove one of them"},
		{"a job's key twice", "[[job]]\nid = 'A'\nweb = 1\nid = 'B'\n", "day.toml:4", `"job.id" is there already`, "remove one of them"},
		{"a table twice", "[a]\n[b]\n[a]\n", "day.toml:3", `"a" is there already`, "remove one of them"},
		{"a table and a list", "[job]\nid = 'A'\n[[job]]\n", "day.toml:3", `"job" is there already`, "double"},
		{"no value", "units =\n", "day.toml:1", "", usual},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, problems := Read(files(map[string]string{dayFile: c.text}))
			compare(t, []want{{c.where, "", []string{c.what, c.remedy}}}, problems)
			if len(problems) == 1 && c.remedy != usual && strings.Contains(problems[0].Remedy, usual) {
				t.Errorf("remedy %q", problems[0].Remedy)
			}
		})
	}
}

// TestBlanksAtEnds: blanks at either end of a text don't make another of it.
func TestBlanksAtEnds(t *testing.T) {
	entry := smallDay[strings.Index(smallDay, "[[job]]"):]
	second := strings.NewReplacer(`"A"`, `"\tB "`, `"felt"`, `" felt"`).Replace(entry) + "after = [\" A\"]\n"
	s := read(t, files(map[string]string{dayFile: smallDay + second}))
	if j := s.Day.Jobs[1]; j.ID != "B" || j.Material != "felt" || len(j.After) != 1 || j.After[0] != "A" {
		t.Errorf("job %+v", j)
	}
	_, problems := Read(files(map[string]string{dayFile: smallDay + strings.Replace(entry, `"A"`, `"A "`, 1)}))
	compare(t, []want{{"day.toml:11", "job 2 (A), id", []string{"job 1", "same id"}}}, problems)
}

// TestWordsOfPlacesAndRates: two places are asked for as they are written, and a
// rate is shown as one.
func TestWordsOfPlacesAndRates(t *testing.T) {
	beam := strings.NewReplacer("[-100.0, 400.0]", "[1, 2, 3]", "[0.0, 300.0]", `"wide"`,
		"[drive]", "[drive]\nspeed = 0\nacceleration = -1").Replace(smallBeam)
	_, problems := Read(files(map[string]string{beamFile: beam}))
	compare(t, []want{
		{"beam.toml:8", "[beam], rail", []string{"[from, to] with exactly two positions", "not 3", "rail = ["}},
		{"beam.toml:9", "[beam], web", []string{"[from, to] with exactly two positions", `not "wide"`, "web = [0.0"}},
		{"beam.toml:11", "[drive], speed", []string{"0 mm/s must be above 0"}},
		{"beam.toml:12", "[drive], acceleration", []string{"-1 mm/s² must not be below 0"}},
	}, problems)
}

// TestBinaryText: of what is no text at all that is told first, however deep its brackets
// nest, and the parser never sees it.
func TestBinaryText(t *testing.T) {
	_, problems := Read(files(map[string]string{dayFile: "a = " + strings.Repeat("[", 100_000) + "\n\xff\n"}))
	compare(t, []want{{"day.toml:2", "", []string{"0xff is no UTF-8", "save it as UTF-8"}}}, problems)
}

// TestHangingLink: positions that are linked to a file on a disk that is gone isn't one
// that was never measured, and own materials aren't none.
func TestHangingLink(t *testing.T) {
	for _, file := range []string{positionsFile, materialsFile, dayFile} {
		s := folder(t, nil)
		path := filepath.Join(s.Dir, file)
		os.Remove(path)
		if err := os.Symlink(filepath.Join(s.Dir, "gone", file), path); err != nil {
			t.Skip("no symbolic links here: ", err)
		}
		_, problems := Open(s.Dir)
		compare(t, []want{{file, "", []string{"link to a file that isn't there", "mounted"}}}, problems)
	}
}

// TestUnreadableFile: a file that may not be read asks for the right to.
func TestUnreadableFile(t *testing.T) {
	_, problems := Read(barred{files(nil)})
	compare(t, []want{{dayFile, "", []string{"permission denied", "ask for the right to read it"}}}, problems)
}

// barred is a folder whose day may not be read.
type barred struct{ fs.FS }

func (b barred) Open(name string) (fs.File, error) {
	if name == dayFile {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrPermission}
	}
	return b.FS.Open(name)
}

// TestSlowDrives: a speed or an acceleration next to nothing would take the day's clock out
// of its range; nought is at once at full speed.
func TestSlowDrives(t *testing.T) {
	for value, wants := range map[string][]want{
		"acceleration = 0": nil, "acceleration = 0.1": nil,
		"acceleration = 0.000001": {{"beam.toml:11", "[drive], acceleration", []string{"below the 0.1 mm/s² accepted"}}},
		"speed = 0.000001":        {{"beam.toml:11", "[drive], speed", []string{"below the 0.1 mm/s accepted"}}},
	} {
		_, problems := Read(files(map[string]string{beamFile: strings.Replace(smallBeam, "[drive]", "[drive]\n"+value, 1)}))
		compare(t, wants, problems)
	}
}

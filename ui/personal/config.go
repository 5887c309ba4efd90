// Package personal reads what one person has set for the screen, whatever the shop:
// keys, palette, mouse; and keeps the view that each shop was last left with. What is
// wrong in a file is shown and never keeps the screen from starting.
package personal

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"bide/plan/words"

	parser "github.com/BurntSushi/toml"
)

// ConfigFile is the name of the file in a person's config folder.
const ConfigFile = "config.toml"

// largest is how many bytes of a config file are read.
const largest = 64 << 10

// Config is what one person wants.
type Config struct {
	File       string // that it is or would be read from
	Background string // "dark", "light", or empty: as the terminal says
	ASCII      bool
	Mouse      bool
	Keys       []Keys // in the order of the file
	Problems   []string
}

// Keys are the keys wanted for one action.
type Keys struct {
	Action string
	Keys   []string
	Line   int // in the file, from 1
}

// Folder is a person's config folder of bide; empty where the system names none.
func Folder() string {
	dir, err := os.UserConfigDir()
	if err != nil {
		return ""
	}
	return filepath.Join(dir, "bide")
}

// Read reads the config in a folder. One that isn't there sets nothing. Problems are
// whole sentences with file and line.
func Read(dir string) (c Config) {
	if dir == "" {
		return c
	}
	c.File = filepath.Join(dir, ConfigFile)
	text, err := readText(c.File)
	if errors.Is(err, fs.ErrNotExist) {
		return c
	}
	if err != nil {
		c.Problems = append(c.Problems, fmt.Sprintf("%s can't be read: %v; its keys and colours are not used", words.Clean(c.File), err))
		return c
	}
	c.read(text)
	return c
}

// readText reads a file that is regular and not larger than a config is.
func readText(file string) (string, error) {
	info, err := os.Stat(file)
	switch {
	case err != nil:
		return "", err
	case !info.Mode().IsRegular():
		return "", errors.New("it is not a regular file")
	case info.Size() > largest:
		return "", fmt.Errorf("it is larger than %d bytes", largest)
	}
	f, err := os.Open(file)
	if err != nil {
		return "", err
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, largest))
	return string(text), err
}

// read takes the config from the file's text.
func (c *Config) read(text string) {
	tree, err := decode(text)
	if err != nil {
		line := 0
		if e := (parser.ParseError{}); errors.As(err, &e) {
			line, err = e.Position.Line, errors.New(e.Message)
		}
		c.refuse(line, "%v; nothing in the file is used", err)
		return
	}
	l := linesOf(text)
	for _, key := range sorted(tree, l, "") {
		c.take(key, tree[key], l)
	}
}

// decode reads TOML. The parser is known to panic on some cut-off texts.
func decode(text string) (tree map[string]any, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("it is not TOML: %v", r)
		}
	}()
	_, err = parser.Decode(text, &tree)
	return tree, err
}

// take takes one key of the top.
func (c *Config) take(key string, value any, l lines) {
	line := l[key]
	switch key {
	case "background":
		if text, _ := value.(string); text == "dark" || text == "light" {
			c.Background = text
			return
		}
		c.refuse(line, `background is "dark" or "light"`)
	case "ascii", "mouse":
		on, ok := value.(bool)
		if !ok {
			c.refuse(line, "%s is true or false", key)
		} else if key == "ascii" {
			c.ASCII = on
		} else {
			c.Mouse = on
		}
	case "keys":
		table, ok := value.(map[string]any)
		if !ok {
			c.refuse(line, "keys is a table: [keys]")
			return
		}
		for _, action := range sorted(table, l, "keys.") {
			c.takeKeys(action, table[action], l["keys."+action])
		}
	default:
		known := []string{"background", "ascii", "mouse", "keys"}
		c.refuse(line, "there is no setting %s%s", words.Clean(key), Meant(key, known))
	}
}

// takeKeys takes the keys of one action: a text or a list of texts.
func (c *Config) takeKeys(action string, value any, line int) {
	k := Keys{Action: words.Clean(action), Line: line}
	list, ok := value.([]any)
	if !ok {
		list = []any{value}
	}
	for _, v := range list {
		text, ok := v.(string)
		if !ok {
			c.refuse(line, `%s: a key is a text, as in %s = "x" or ["x", "ctrl+x"]`, k.Action, k.Action)
			return
		}
		k.Keys = append(k.Keys, text)
	}
	c.Keys = append(c.Keys, k)
}

// refuse adds a problem with its file and line.
func (c *Config) refuse(line int, format string, args ...any) {
	c.Problems = append(c.Problems, c.At(line)+": "+words.Clean(fmt.Sprintf(format, args...)))
}

// At names the file, and a line of it where that is known.
func (c *Config) At(line int) string {
	if line == 0 {
		return words.Clean(c.File)
	}
	return fmt.Sprintf("%s, line %d", words.Clean(c.File), line)
}

// Meant suggests the word that was likely meant.
func Meant(word string, known []string) string {
	if near := words.Nearest(word, known); near != "" {
		return "; did you mean " + near + "?"
	}
	return ""
}

// sorted are the keys of a table in the order of the file.
func sorted(table map[string]any, l lines, path string) []string {
	var keys []string
	for key := range table {
		keys = append(keys, key)
	}
	slices.SortFunc(keys, func(a, b string) int {
		if n := l[path+a] - l[path+b]; n != 0 {
			return n
		}
		if a < b {
			return -1
		}
		return 1
	})
	return keys
}

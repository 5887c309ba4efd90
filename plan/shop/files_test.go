package shop

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// holds fails unless the file holds the text.
func holds(t *testing.T, path, want string) {
	t.Helper()
	got, err := os.ReadFile(path)
	if err != nil || string(got) != want {
		t.Errorf("%s holds %q (%v), want %q", filepath.Base(path), got, err, want)
	}
}

// alone fails unless the folder holds just these names.
func alone(t *testing.T, dir string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if err != nil || strings.Join(got, " ") != strings.Join(names, " ") {
		t.Errorf("the folder holds %q (%v), want %q", got, err, names)
	}
}

func write(t *testing.T, path, text string, mode fs.FileMode) {
	t.Helper()
	if err := errors.Join(os.WriteFile(path, []byte(text), 0o600), os.Chmod(path, mode)); err != nil {
		t.Fatal(err)
	}
}

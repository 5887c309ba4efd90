// Package start is a shop to start from: its files, with each key explained, and how they come
// into a folder.
package start

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"bide/plan/shop/record"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

// Files are the files of a new shop, in files.
//
//go:embed files/*.toml
var Files embed.FS

// Names are those of the files. There is no positions.toml: where the holders are must be
// measured, not made up.
var Names = []string{"beam.toml", "day.toml", "materials.toml"}

// New puts a shop to start from into a folder, which it makes if need be. It
// never overwrites: a folder that holds any file of a shop is refused untouched.
func New(dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("%s can't be made: %w", words.Clean(dir), toml.Reason(err))
	}
	var there []string
	for _, file := range append(slices.Clone(Names), "positions.toml", record.File) {
		if _, err := os.Lstat(filepath.Join(dir, file)); !errors.Is(err, fs.ErrNotExist) {
			there = append(there, file)
		}
	}
	if len(there) > 0 {
		return fmt.Errorf("%s holds %s already; name another folder, nothing was written", words.Clean(dir), strings.Join(there, ", "))
	}
	for i, file := range Names {
		if err := writeNew(dir, file); err != nil {
			for _, written := range Names[:i] {
				os.Remove(filepath.Join(dir, written)) // made a moment ago: no half a shop
			}
			return fmt.Errorf("%s can't be written: %w", words.Clean(filepath.Join(dir, file)), toml.Reason(err))
		}
	}
	return nil
}

// writeNew writes one file of a new shop; it fails when the file is there.
func writeNew(dir, file string) error {
	text, err := Files.ReadFile("files/" + file)
	if err != nil {
		return err
	}
	path := filepath.Join(dir, file)
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(text)
	if err = errors.Join(err, f.Close()); err != nil {
		os.Remove(path)
	}
	return err
}

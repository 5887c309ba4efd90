package shop

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"bide/plan/shop/record"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

//go:embed start/*.toml
var start embed.FS

// startFiles are the files of a new shop. It has no positions.toml: where the
// holders stand must be measured, not made up.
var startFiles = []string{beamFile, dayFile, materialsFile}

// New puts a shop to start from into a folder, which it makes if need be. It
// never overwrites: a folder that holds any file of a shop is refused untouched.
func New(dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("%s can't be made: %w", words.Clean(dir), toml.Reason(err))
	}
	var there []string
	for _, file := range []string{beamFile, dayFile, materialsFile, positionsFile, record.File} {
		if _, err := os.Lstat(filepath.Join(dir, file)); !errors.Is(err, fs.ErrNotExist) {
			there = append(there, file)
		}
	}
	if len(there) > 0 {
		return fmt.Errorf("%s holds %s already; name another folder, nothing was written", words.Clean(dir), strings.Join(there, ", "))
	}
	for i, file := range startFiles {
		if err := writeNew(dir, file); err != nil {
			for _, written := range startFiles[:i] {
				os.Remove(filepath.Join(dir, written)) // made a moment ago: no half a shop
			}
			return fmt.Errorf("%s can't be written: %w", words.Clean(filepath.Join(dir, file)), toml.Reason(err))
		}
	}
	return nil
}

// writeNew writes one file of a new shop; it fails when the file is there.
func writeNew(dir, file string) error {
	text, err := start.ReadFile("start/" + file)
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

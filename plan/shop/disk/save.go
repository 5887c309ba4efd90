// Package disk writes texts whole or not at all, and lets one program at a time write into
// a folder.
package disk

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"syscall"

	"bide/plan/shop/toml"
	"bide/plan/words"
)

// SaveError says why a file couldn't be saved. What it held before is untouched.
type SaveError struct {
	File   string // name, clean
	What   string
	Remedy string
	Err    error // of the system; may be nil
}

// Error is the file, what is wrong and the remedy on one line.
func (e *SaveError) Error() string {
	return e.File + " isn't saved: " + e.What + "; " + e.Remedy
}

// Unwrap gives the system's error.
func (e *SaveError) Unwrap() error { return e.Err }

// SaveFile puts text into a file, all of it or nothing: whoever reads it, even
// after the power failed, finds the old text or the new. The text goes to a file
// beside it, to the disk, and then takes its name. A symbolic link is followed, the
// mode is kept, and a write-protected file is left alone. Errors are *SaveError.
func SaveFile(path string, text []byte) error { return realCalls.save(path, text) }

// calls are what saving asks of the system; tests put faults into it.
type calls struct {
	create  func(path string, mode fs.FileMode) (draft, error)
	rename  func(from, to string) error
	syncDir func(dir string) error
}

// draft is the new text on its way to the disk.
type draft interface {
	io.WriteCloser
	Chmod(fs.FileMode) error
	Sync() error
}

var realCalls = calls{create: createDraft, rename: os.Rename, syncDir: syncFolder}

func createDraft(path string, mode fs.FileMode) (draft, error) {
	return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
}

// save is SaveFile on this disk.
func (d calls) save(path string, text []byte) error {
	target, err := linked(path)
	if err != nil {
		return NewSaveError(path, err)
	}
	mode, keep := fs.FileMode(0o644), false
	switch info, err := os.Stat(target); {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return NewSaveError(path, err)
	case !info.Mode().IsRegular():
		return NewSaveError(path, ErrIrregular)
	case info.Mode()&0o200 == 0:
		return NewSaveError(path, errProtected)
	default:
		mode, keep = info.Mode().Perm(), true
	}
	name, err := d.write(target, text, mode, keep)
	if err != nil {
		return NewSaveError(path, err)
	}
	if err := d.rename(name, target); err != nil {
		os.Remove(name)
		return NewSaveError(path, err)
	}
	return d.settle(path, filepath.Dir(target))
}

// write puts the text into a draft beside the target and gives the draft's name.
// Of a draft that fails nothing is left.
func (d calls) write(target string, text []byte, mode fs.FileMode, keep bool) (name string, err error) {
	f, name, err := d.open(target, mode)
	if err != nil {
		return "", err
	}
	_, err = f.Write(text)
	if err == nil && keep { // the umask may have taken something off
		err = f.Chmod(mode)
	}
	if err == nil {
		err = f.Sync()
	}
	if err = errors.Join(err, f.Close()); err != nil {
		os.Remove(name)
	}
	return name, err
}

// open makes a draft of a name that nothing has.
func (d calls) open(target string, mode fs.FileMode) (f draft, name string, err error) {
	for n := range 100 {
		name = filepath.Join(filepath.Dir(target), fmt.Sprintf(".%s.%d-%d.tmp", filepath.Base(target), os.Getpid(), n))
		if f, err = d.create(name, mode); !errors.Is(err, fs.ErrExist) {
			break
		}
	}
	return f, name, err
}

// settle makes sure that the new name survives a power cut too. Some file systems
// can't sync a folder; there is nothing more to do on those.
func (d calls) settle(path, dir string) error {
	err := d.syncDir(dir)
	if err == nil || errors.Is(err, errors.ErrUnsupported) || errors.Is(err, syscall.EINVAL) {
		return nil
	}
	return &SaveError{words.Clean(filepath.Base(path)), "the disk doesn't confirm it: " + toml.Reason(err).Error(), "save again, and look after the disk", err}
}

// syncFolder brings a folder's names to the disk.
func syncFolder(dir string) error {
	if runtime.GOOS == "windows" { // folders can't be synced there
		return nil
	}
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// linked is the file that a path means, symbolic links followed even where the
// last one leads to no file yet.
func linked(path string) (string, error) {
	const most = 40 // as many as the common systems follow
	for range most {
		to, err := os.Readlink(path)
		if err != nil {
			return path, nil // no link; whether there is a file is seen next
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	return "", errCircle
}

var (
	ErrIrregular = errors.New("this is no regular file")
	errProtected = errors.New("the file is write-protected")
	errCircle    = errors.New("its symbolic links run in a circle")
)

// NewSaveError puts the common troubles into words.
func NewSaveError(path string, err error) *SaveError {
	e := &SaveError{File: words.Clean(filepath.Base(path)), What: toml.Reason(err).Error(), Remedy: "look at the file and its folder, then save again", Err: err}
	switch {
	case errors.Is(err, errProtected):
		e.Remedy = "allow writing to it, then save again"
	case errors.Is(err, fs.ErrNotExist):
		e.What, e.Remedy = "the folder "+words.Clean(filepath.Dir(path))+" is gone", "bring it back, then save again"
	case errors.Is(err, syscall.EROFS):
		e.What, e.Remedy = "the disk can only be read", "mount it for writing, or work in a copy of the shop"
	case errors.Is(err, fs.ErrPermission):
		e.What, e.Remedy = "the folder "+words.Clean(filepath.Dir(path))+" may not be written to", "ask for the right to write there, or work in a copy of the shop"
	case errors.Is(err, syscall.ENOSPC):
		e.What, e.Remedy = "the disk is full", "make room, then save again"
	}
	return e
}

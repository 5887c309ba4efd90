package disk

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
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

func TestSaveFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.toml")
	for _, text := range []string{"first", "", "second"} {
		if err := SaveFile(path, []byte(text)); err != nil {
			t.Fatal(err)
		}
		holds(t, path, text)
	}
	alone(t, dir, "a.toml")
}

func TestSaveKeepsModeAndLink(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no modes and links as elsewhere")
	}
	dir, other := t.TempDir(), t.TempDir()
	real := filepath.Join(other, "real.toml")
	write(t, real, "old", 0o666) // more than the usual umask leaves
	link := filepath.Join(dir, "link.toml")
	nowhere := filepath.Join(dir, "new.toml")
	circle := filepath.Join(dir, "circle.toml")
	if err := errors.Join(os.Symlink(real, link), os.Symlink("../"+filepath.Base(other)+"/made.toml", nowhere), os.Symlink("circle.toml", circle)); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(SaveFile(link, []byte("new")), SaveFile(nowhere, []byte("made"))); err != nil {
		t.Fatal(err)
	}
	holds(t, real, "new")
	holds(t, filepath.Join(other, "made.toml"), "made")
	if info, err := os.Lstat(link); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Errorf("the link is gone: %v, %v", info, err)
	}
	if info, err := os.Stat(real); err != nil || info.Mode().Perm() != 0o666 {
		t.Errorf("mode %v, %v", info, err)
	}
	if err := SaveFile(circle, nil); err == nil || !strings.Contains(err.Error(), "circle.toml isn't saved") {
		t.Errorf("a circle of links: %v", err)
	}
}

// TestSaveRefuses: what can't or mustn't be written is told and left as it is.
func TestSaveRefuses(t *testing.T) {
	dir := t.TempDir()
	locked := filepath.Join(dir, "locked.toml")
	write(t, locked, "old", 0o444)
	if err := os.Mkdir(filepath.Join(dir, "folder"), 0o700); err != nil {
		t.Fatal(err)
	}
	for path, words := range map[string]string{
		locked:                               "write-protected",
		filepath.Join(dir, "folder"):         "no regular file",
		filepath.Join(dir, "gone", "a.toml"): "is gone",
	} {
		err := SaveFile(path, []byte("new"))
		var told *SaveError
		if !errors.As(err, &told) || !strings.Contains(err.Error(), words) || told.Remedy == "" {
			t.Errorf("%s: %v, want %q", path, err, words)
		}
	}
	holds(t, locked, "old")
	alone(t, dir, "folder", "locked.toml")
}

func TestSaveIntoAReadOnlyFolder(t *testing.T) {
	if os.Getuid() <= 0 {
		t.Skip("this account may write anywhere, or rights work otherwise")
	}
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.toml"), "old", 0o600)
	if err := os.Chmod(dir, 0o500); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(dir, 0o700)
	if err := SaveFile(filepath.Join(dir, "a.toml"), nil); err == nil || !strings.Contains(err.Error(), "may not be written to") {
		t.Error(err)
	}
	holds(t, filepath.Join(dir, "a.toml"), "old")
}

// faulty is a draft in which one step fails; of a text it writes half first.
type faulty struct {
	draft
	step string
	err  error
}

func (f faulty) fail(step string, otherwise func() error) error {
	if f.step == step {
		return f.err
	}
	return otherwise()
}

func (f faulty) Write(text []byte) (int, error) {
	if f.step != "write" {
		return f.draft.Write(text)
	}
	n, err := f.draft.Write(text[:len(text)/2])
	return n, errors.Join(f.err, err)
}

func (f faulty) Chmod(m fs.FileMode) error {
	return f.fail("chmod", func() error { return f.draft.Chmod(m) })
}
func (f faulty) Sync() error { return f.fail("sync", f.draft.Sync) }
func (f faulty) Close() error {
	return errors.Join(f.draft.Close(), f.fail("close", func() error { return nil }))
}

// TestSaveFails: whichever step fails, the old text stays whole, no draft is left
// behind, and the trouble is told in words.
func TestSaveFails(t *testing.T) {
	words := map[error]string{
		syscall.ENOSPC: "the disk is full", syscall.EROFS: "can only be read",
		syscall.EACCES: "may not be written to", syscall.ENOENT: "is gone", syscall.EIO: syscall.EIO.Error(),
	}
	for _, step := range []string{"create", "write", "chmod", "sync", "close", "rename"} {
		for fault, want := range words {
			dir := t.TempDir()
			path := filepath.Join(dir, "a.toml")
			write(t, path, "the old text", 0o640)
			err := broken(step, fault).save(path, []byte("the new text"))
			if !errors.Is(err, fault) || !strings.Contains(err.Error(), want) {
				t.Errorf("%s fails with %v: %v, want %q", step, fault, err, want)
			}
			holds(t, path, "the old text")
			alone(t, dir, "a.toml")
		}
	}
}

// broken is a disk on which one step fails.
func broken(step string, fault error) calls {
	d := realCalls
	d.create = func(path string, mode fs.FileMode) (draft, error) {
		if step == "create" {
			return nil, &fs.PathError{Op: "open", Path: path, Err: fault}
		}
		f, err := realCalls.create(path, mode)
		return faulty{f, step, fault}, err
	}
	if step == "rename" {
		d.rename = func(from, to string) error { return &os.LinkError{Op: "rename", Old: from, New: to, Err: fault} }
	}
	return d
}

// TestSaveFolderSync: a folder that can't be synced is no fault, one whose disk
// fails is; the new text is there in both.
func TestSaveFolderSync(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.toml")
	d := realCalls
	d.syncDir = func(string) error { return &fs.PathError{Op: "sync", Path: "x", Err: syscall.EINVAL} }
	if err := d.save(path, []byte("a")); err != nil {
		t.Error(err)
	}
	d.syncDir = func(string) error { return syscall.EIO }
	if err := d.save(path, []byte("b")); !errors.Is(err, syscall.EIO) {
		t.Error(err)
	}
	holds(t, path, "b")
}

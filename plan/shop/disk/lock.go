package disk

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/user"
	"path/filepath"
	"time"

	"bide/plan/shop/toml"
	"bide/plan/words"
)

// lockFile is the file beside the shop's that is locked. It is never taken away:
// who locks a new file of the same name would not see the lock on the old one.
const lockFile = ".bide.lock"

// Lock is the right to write a shop's folder. It lasts until it is released or the
// program ends, however it ends.
type Lock struct {
	file *os.File // kept: a file that is collected is closed, and the lock gone
}

// Writer is who may write a shop's folder.
type Writer struct {
	User  string    `json:"user"`
	Host  string    `json:"host"`
	PID   int       `json:"pid"`
	Since time.Time `json:"since"`
}

// String is the writer for people: who, where and since when.
func (w Writer) String() string {
	if w.PID == 0 {
		return "someone else"
	}
	return fmt.Sprintf("%s on %s (process %d), since %s", words.Clean(w.User), words.Clean(w.Host), w.PID, w.Since.Format("2 Jan 15:04"))
}

// TakenError says that another program has a shop's folder. The shop may be read.
type TakenError struct{ By Writer }

// Error says who has it.
func (e *TakenError) Error() string {
	return "the shop is open for writing by " + e.By.String() + "; here it can only be looked at"
}

// errLocked is a lock that another has.
var errLocked = errors.New("locked by another")

// TakeLock takes the right to write the shop in a folder. When another program has
// it already, the error is a *TakenError; when no lock can be had at all, as in a
// folder that may not be written to, it is Problems. In both cases nothing of the
// shop is to be written.
func TakeLock(dir string, now time.Time) (*Lock, error) {
	path := filepath.Join(dir, lockFile)
	if info, err := os.Lstat(path); err == nil && !info.Mode().IsRegular() { // what a link leads to would be overwritten
		return nil, lockError(path, ErrIrregular)
	}
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o666)
	if err != nil {
		return nil, lockError(path, err)
	}
	if err := lock(f); err != nil {
		by := writerIn(f)
		f.Close()
		if errors.Is(err, errLocked) {
			return nil, &TakenError{by}
		}
		return nil, lockError(path, err)
	}
	l := &Lock{f}
	l.sign(now) // the lock holds without it too
	return l, nil
}

// lockError is why no lock can be had.
func lockError(path string, err error) error {
	e := NewSaveError(path, err)
	return toml.Problems{{File: lockFile, What: e.What, Remedy: e.Remedy + "; until then the shop can only be looked at"}}
}

// sign writes who has the lock into its file, for others to read.
func (l *Lock) sign(now time.Time) {
	w := Writer{User: "someone", Host: "this machine", PID: os.Getpid(), Since: now}
	if u, err := user.Current(); err == nil {
		w.User = u.Username
	}
	if host, err := os.Hostname(); err == nil {
		w.Host = host
	}
	text, err := json.Marshal(w)
	if err == nil && l.file.Truncate(0) == nil {
		l.file.WriteAt(append(text, '\n'), 0)
	}
}

// writerIn reads who has a lock; the zero Writer where that isn't known.
func writerIn(f *os.File) (w Writer) {
	const most = 4096
	text, err := io.ReadAll(io.NewSectionReader(f, 0, most))
	if err != nil || json.Unmarshal(text, &w) != nil {
		return Writer{}
	}
	return w
}

// Release gives the right back. The file stays, empty.
func (l *Lock) Release() error {
	l.file.Truncate(0)
	return errors.Join(unlock(l.file), l.file.Close())
}

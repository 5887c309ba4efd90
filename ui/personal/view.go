package personal

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"

	"bide/plan/shop/disk"
)

// View is how the screen of a shop was left.
type View struct {
	Shop   string // the shop's folder
	Pane   int    // with the keys, from 1
	Large  bool   // it had the whole screen
	Job    string // picked
	Holder int    // picked, from 1; 0 none
	Zoom   int    // of the beam
	Near   int    // zoom of the day map
	At     int64  // the place it is zoomed around, nanometres
	Clock  bool   // the schedule is where the beam would be
}

// StateFolder is where views are kept: the folder for a program's state where the
// system has one, else that for what may be lost. Empty where there is neither.
func StateFolder() string {
	if dir := os.Getenv("XDG_STATE_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "bide")
	}
	dir, err := os.UserCacheDir()
	if err != nil {
		return ""
	}
	return filepath.Join(dir, "bide")
}

// LoadView is the view that a shop was last left with; the zero View where none is
// kept or it can't be read: nothing depends on it.
func LoadView(dir, shopDir string) (v View) {
	file, full := viewFile(dir, shopDir)
	if file == "" {
		return v
	}
	text, err := readText(file)
	if err != nil || json.Unmarshal([]byte(text), &v) != nil || v.Shop != full {
		return View{}
	}
	return v
}

// Save keeps the view of a shop. One that can't be kept is lost; the screen has ended
// and nothing depends on it, so the error is only for those who want it.
func (v View) Save(dir, shopDir string) error {
	file, full := viewFile(dir, shopDir)
	if file == "" {
		return nil
	}
	v.Shop = full
	text, err := json.Marshal(v)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return err
	}
	return disk.SaveFile(file, append(text, '\n'))
}

// viewFile is the file for a shop's view, named after the folder's full path, and
// that path; empty where there is none.
func viewFile(dir, shopDir string) (file, full string) {
	if dir == "" || shopDir == "" {
		return "", ""
	}
	full, err := filepath.Abs(shopDir)
	if err != nil {
		return "", ""
	}
	sum := sha256.Sum256([]byte(full))
	return filepath.Join(dir, "views", fmt.Sprintf("%x.json", sum[:12])), full
}

// Package terminal deals with the terminal around the screen: what it can show, the
// bytes that come from it, and its end.
package terminal

import (
	"os"
	"runtime"
	"strconv"
	"strings"

	"github.com/charmbracelet/x/term"
)

// FullScreen reports whether a full screen can be shown: both files are terminals
// and the terminal can place its cursor.
func FullScreen(in, out *os.File, env func(string) string) bool {
	return env("TERM") != "dumb" && term.IsTerminal(in.Fd()) && term.IsTerminal(out.Fd())
}

// Unicode reports whether the locale's characters are UTF-8. Windows has no locale
// in its environment; its terminals take UTF-8.
func Unicode(env func(string) string) bool {
	if runtime.GOOS == "windows" {
		return true
	}
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if locale := env(name); locale != "" {
			locale = strings.ToLower(locale)
			return strings.Contains(locale, "utf-8") || strings.Contains(locale, "utf8")
		}
	}
	return false
}

// Light reports whether the terminal says that its background is light: the last
// number of COLORFGBG, one of the sixteen basic colours.
func Light(env func(string) string) bool {
	fields := strings.Split(env("COLORFGBG"), ";")
	colour, err := strconv.Atoi(fields[len(fields)-1])
	return err == nil && (colour == 7 || colour > 8)
}

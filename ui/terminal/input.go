package terminal

import (
	"errors"
	"fmt"
	"os"
	"time"
	"unicode/utf8"
)

// errGone is what reading gives when the terminal is no longer there.
var errGone = errors.New("the terminal is gone")

// keyRest is how long the rest of a key's bytes may take. A slow line splits them; a
// person can't press two keys as fast.
const keyRest = 50 * time.Millisecond

// Input is a terminal's input. It ends with ErrGone where a file would end with
// io.EOF, which Bubble Tea takes for silence: it would live on without a terminal
// when hang-ups are ignored. And it keeps the bytes of one key together.
type Input struct {
	*os.File
	ready func(f *os.File, within time.Duration) bool // more can be read
	rest  time.Duration                               // see keyRest
}

// Read reads what was typed, with whole keys where they arrive in time.
func (i *Input) Read(p []byte) (int, error) {
	n, err := i.read(p)
	for err == nil && n < len(p) && broken(p[:n]) && i.ready(i.File, i.rest) {
		var more int
		more, err = i.read(p[n:])
		n += more
	}
	if n > 0 {
		return n, nil // a lasting error comes again
	}
	return n, err
}

func (i *Input) read(p []byte) (int, error) {
	n, err := i.File.Read(p)
	if err != nil {
		return n, fmt.Errorf("%w: %v", errGone, err) // and never io.EOF within
	}
	return n, nil
}

// broken reports whether the bytes end within an escape sequence or a character.
func broken(b []byte) bool {
	for back := 1; back <= min(utf8.UTFMax, len(b)); back++ {
		if tail := b[len(b)-back:]; utf8.RuneStart(tail[0]) {
			if !utf8.FullRune(tail) {
				return true
			}
			break
		}
	}
	for i := len(b) - 1; i >= 0; i-- {
		if b[i] == '\x1b' {
			return unfinished(b[i+1:])
		}
	}
	return false
}

// unfinished reports whether a sequence still lacks its end, from what follows the
// escape: CSI up to a letter or ~, SS3 one character (ECMA-48, 5.4).
func unfinished(b []byte) bool {
	switch {
	case len(b) == 0:
		return true
	case b[0] == 'O':
		return len(b) == 1
	case b[0] != '[':
		return false
	}
	for _, c := range b[1:] {
		if c >= 0x40 && c <= 0x7e && c != '[' {
			return false
		}
	}
	return true
}

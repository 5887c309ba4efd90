//go:build !unix

package terminal

import (
	"io"
	"os"
)

// Reader reads what is typed at a terminal. Consoles give whole events, and Bubble
// Tea wants the file itself.
func Reader(f *os.File) io.Reader { return f }

//go:build unix

package terminal

import (
	"errors"
	"io"
	"os"
	"testing"
	"time"
)

// The bytes of a key that come one by one are read as one; what doesn't come isn't
// waited for longer than the time to settle.
func TestReaderKeepsKeysTogether(t *testing.T) {
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	in, buf := Reader(r).(*Input), make([]byte, 256)
	in.rest = time.Minute // however late a byte comes on a busy machine
	go func() {
		for _, part := range []string{"\x1b", "[", "1;2", "A"} {
			io.WriteString(w, part)
			time.Sleep(10 * time.Millisecond)
		}
	}()
	if n, err := in.Read(buf); err != nil || string(buf[:n]) != "\x1b[1;2A" {
		t.Errorf("read %q, %v", buf[:n], err)
	}
	in.rest = keyRest
	io.WriteString(w, "\x1b")
	began := time.Now()
	if n, err := in.Read(buf); err != nil || string(buf[:n]) != "\x1b" {
		t.Errorf("read %q, %v", buf[:n], err)
	}
	if waited := time.Since(began); waited < keyRest/2 {
		t.Errorf("waited %v for the rest of an escape", waited)
	}
	io.WriteString(w, "j")
	w.Close()
	if n, err := in.Read(buf); err != nil || string(buf[:n]) != "j" {
		t.Errorf("read %q, %v", buf[:n], err)
	}
	if n, err := in.Read(buf); n != 0 || !errors.Is(err, errGone) || errors.Is(err, io.EOF) {
		t.Errorf("at the end: %d bytes, %v", n, err)
	}
}

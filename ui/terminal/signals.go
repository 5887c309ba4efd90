package terminal

import (
	"errors"
	"os"
	"os/signal"
	"sync"
	"syscall"
)

// Signals are those that ask a program to end.
type Signals struct {
	heard chan os.Signal
	over  chan struct{}
	stop  sync.Once
}

// Ends takes the signals to end from whoever has them and listens for the first.
// Those that the program was started to ignore (nohup) stay ignored.
func Ends() *Signals {
	s := &Signals{heard: make(chan os.Signal, 1), over: make(chan struct{})}
	for _, each := range []os.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP} {
		if !signal.Ignored(each) {
			signal.Reset(each)
			signal.Notify(s.heard, each)
		}
	}
	return s
}

// Wait waits for a signal and reports whether one came before Stop. After the first
// one the signals do again what they do to any program: a second one ends it at
// once, even if it no longer listens.
func (s *Signals) Wait() bool {
	select {
	case <-s.heard:
		s.Stop()
		return true
	case <-s.over:
		return false
	}
}

// Stop listens no more.
func (s *Signals) Stop() {
	signal.Stop(s.heard)
	s.stop.Do(func() { close(s.over) })
}

// Gone reports whether a program ended because its terminal did.
func Gone(err error) bool { return errors.Is(err, errGone) || errors.Is(err, syscall.EIO) }

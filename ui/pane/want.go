package pane

import "bide/plan/session"

// Want is what a pane or page wants of the session, which it can't reach itself: the screen
// does it. Nil is nothing.
type Want func(*session.Session)

// Say wants something said.
func Say(format string, args ...any) Want {
	return func(s *session.Session) { s.Say(format, args...) }
}

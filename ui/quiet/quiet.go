// Package quiet keeps the terminal from being asked what colour its background is.
//
// Bubble Tea asks in its own initialisation, before any command of ours runs, and a
// terminal that doesn't answer makes it wait for seconds, even for the help text.
// Lip Gloss asks only while nobody has told it. Packages are initialised in the order
// of their import paths once what they import is ready, so this one, which needs Lip
// Gloss alone and whose path sorts before Bubble Tea's, comes first and tells it.
// Whether the screen is dark or light is decided elsewhere, see terminal.Light.
package quiet

import "github.com/charmbracelet/lipgloss"

func init() { lipgloss.SetHasDarkBackground(true) }

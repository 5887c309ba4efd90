package draw

import (
	"io"

	"github.com/charmbracelet/lipgloss"
)

// bareLook is a look without colours, whatever the tests run in.
func bareLook(ascii bool) *Theme {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(3) // none
	return NewTheme(r, false, ascii)
}

package pane

import "bide/ui/draw"

// FitMessage is a text, or the same in few words where there is little room for it.
func FitMessage(text, brief string, s draw.Size) string {
	if brief != "" && draw.CellWidth(text) > s.W-2 && (s.W < 40 || s.H < 12) {
		return brief
	}
	return text
}

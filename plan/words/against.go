package words

import (
	"fmt"
	"strings"
	"time"

	"bide/plan"
)

// Against says how the day's costs differ from those it had, what matters most first.
func Against(now, was plan.Totals) string {
	var parts []string
	part := func(d time.Duration, text, less, more string) {
		switch {
		case d < 0 && text != "":
			parts = append(parts, text+" "+less)
		case d > 0 && text != "":
			parts = append(parts, text+" "+more)
		}
	}
	setup, behind := now.Setup-was.Setup, now.Late-was.Late
	part(behind, Hours(behind.Abs()), "less late", "more late")
	if text := Minutes(setup.Abs()); text != "0.0" {
		part(setup, text+" min", "less setup", "more setup")
	}
	switch n := now.Repositions - was.Repositions; {
	case n < 0:
		parts = append(parts, fmt.Sprintf("%s fewer", Count(-n, "move")))
	case n > 0:
		parts = append(parts, fmt.Sprintf("%s more", Count(n, "move")))
	}
	if len(parts) == 0 {
		return "it costs the same"
	}
	return strings.Join(parts, ", ")
}

package jobform

import (
	"regexp"
	"strings"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/words"
	"bide/ui/form"
)

// fieldWords are what the fields are called, where the key isn't plain.
var fieldWords = map[string]string{
	"id": "job", "web": "web width", "trim": "least trim", "length_m": "length, m", "speed": "speed, m/min", "due": "due", "after": "comes after", "fixed": "fixed number",
	"core": "core, outside", "roll_m": "roll, m", "roll_diameter": "roll, outside",
	"parent_m": "parent roll, m",
}

// fieldChoices are the words of the fields that take one of a few, the first when
// nothing is given.
var fieldChoices = map[string][]string{
	"shift":    {"centred", "free"},
	"arrange":  {"listed", "entries", "any"},
	"unbroken": {"no", "yes"},
	"state":    {"waiting", "running", "done", "hold"},
}

// formWords are the keys of day.toml that a problem may name, as the form calls them.
var formWords = regexp.MustCompile(`\b(length_m|roll_m|roll_diameter|parent_m)\b|^(id|web|trim) is missing`)

// inForm tells a problem in the words of the form: people who fill it in need not know
// what the file calls its keys.
func inForm(text string) string {
	return formWords.ReplaceAllStringFunc(text, func(word string) string {
		key, tail, _ := strings.Cut(word, " ")
		name := strings.TrimSuffix(fieldWords[key], ", m")
		return words.Join(" ", strings.Replace(name, ", ", " ", 1), tail)
	})
}

// fieldHints tell how a field is filled in.
var fieldHints = map[string]string{
	"core":          "of a finished roll, if known",
	"roll_m":        "on a finished roll, if known",
	"roll_diameter": "or its outside diameter",
	"parent_m":      "on a parent roll; empty: the material's",
	"unbroken":      "its run may not be broken off by a pause",
	"slits":         "operator side first: 24 x 25.4; 12 x 50.8",
	"trim":          "on each side; empty: 3 mm",
	"due":           "15:30, or 2026-11-25 15:30",
	"after":         "ids with ; between",
	"fixed":         "1 is the first, -1 the last",
	"shift":         "left and right change it",
	"arrange":       "left and right change it",
	"state":         "left and right change it",
	"web":           "width",
	"customer":      "shown and printed",
	"note":          "shown and printed",
	"speed":         "empty: the material's",
}

// newFields are the fields of a job with their values.
func newFields(typed shop.Typed, u plan.Unit) (out form.Form) {
	for _, key := range shop.JobKeys() {
		f := form.New(key, typed[key], longestValue)
		if f.Label = fieldWords[key]; f.Label == "" {
			f.Label = key
		}
		if key == "speed" && u == plan.Inches {
			f.Label = "speed, ft/min"
		}
		f.Hint = fieldHints[key]
		f.Choices, f.Breaks = fieldChoices[key], "; " // a list that is pasted has a line for each item
		out.Fields = append(out.Fields, f)
	}
	return out
}

// longestValue bounds what is typed into a field, in characters: all slits of a wide beam,
// each on its own, have room.
const longestValue = 1000

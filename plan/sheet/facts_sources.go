package sheet

import (
	"slices"
	"strings"

	"bide/material"
	"bide/plan/words"
)

// sourcesHead says what sources are of.
const sourcesHead = "of what is set; where jobs differ, by their number above"

// settingSource is where a setting of some jobs comes from.
type settingSource struct {
	text string
	of   []int
}

// sources says of each setting where it comes from, settings with the same source in one
// line, in the order of the work.
func (f atKnife) sources() (out []string) {
	var names []material.ID
	var told []string
	from := map[material.ID][]settingSource{}
	for _, i := range f.set {
		for _, l := range f.options.turn(i).Settings.Lines {
			if from[l.ID] == nil {
				names = append(names, l.ID)
			}
			from[l.ID] = addSource(from[l.ID], words.Clean(l.Source), i+1)
		}
	}
	of := map[string][]string{}
	for _, name := range names {
		text := sourceWords(from[name], len(f.set))
		if of[text] == nil {
			told = append(told, text)
		}
		of[text] = append(of[text], string(name))
	}
	for _, text := range told {
		out = append(out, strings.Join(of[text], ", ")+": "+text)
	}
	return out
}

func addSource(all []settingSource, text string, job int) []settingSource {
	at := slices.IndexFunc(all, func(s settingSource) bool { return s.text == text })
	if at < 0 {
		return append(all, settingSource{text, []int{job}})
	}
	all[at].of = append(all[at].of, job)
	return all
}

// sourceWords names the sources, with the jobs where they aren't of all.
func sourceWords(all []settingSource, jobs int) string {
	var parts []string
	for _, s := range all {
		text := s.text
		if len(s.of) < jobs {
			text += " (" + words.Ranges(s.of) + ")"
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, "; ")
}

package words

import "unicode/utf8"

// Nearest is the word that was most likely meant: the one with the fewest single
// changes of a letter, the first of equals; empty when none is near.
func Nearest(word string, words []string) string {
	const longest = 60 // beyond it a comparison isn't worth its time
	n := utf8.RuneCountInString(word)
	if n < 2 || len(word) > longest {
		return ""
	}
	best, least := "", 1+max(1, n/3)
	for _, w := range words {
		if len(w) > longest {
			continue
		}
		if off := utf8.RuneCountInString(w) - n; max(off, -off) >= least {
			continue // each letter more or less is a change
		}
		if d := editDistance([]rune(word), []rune(w)); d < least {
			best, least = w, d
		}
	}
	return best
}

// editDistance counts the letters to put in, take out or change to turn a into b
// (Levenshtein 1966), by the usual table, kept one row at a time.
func editDistance(a, b []rune) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i, x := range a {
		diagonal := row[0]
		row[0] = i + 1
		for j, y := range b {
			change := diagonal
			if x != y {
				change++
			}
			diagonal, row[j+1] = row[j+1], min(row[j+1]+1, row[j]+1, change)
		}
	}
	return row[len(b)]
}

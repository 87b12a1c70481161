package vehicles

import (
	"strings"

	"bench.example/undermark/geometry/survey"
)

// Nearest returns the one of words that is most like word, and "" when none is near enough to be meant. Case does not
// count. A word that goes on from word behind a point is the nearest; else like words differ by the least number of letters
// put in, left out, changed or swapped with the next (the optimal string alignment distance).
func Nearest(word string, words []string) string {
	runes := []rune(word)
	if len(runes) > survey.LongestQuote {
		return ""
	}
	best, least := "", max(2, len(runes)*2/5)+1
	for _, w := range words {
		if strings.HasPrefix(w, word+".") {
			return w
		}
		if d := unlike([]rune(strings.ToLower(word)), []rune(strings.ToLower(w))); d < least {
			best, least = w, d
		}
	}
	return best
}

// unlike counts the letters put in, left out, changed or swapped that make a of b.
func unlike(a, b []rune) int {
	var before, last []int
	for i := 0; i <= len(a); i++ {
		row := make([]int, len(b)+1)
		row[0] = i
		for j := 1; j <= len(b); j++ {
			if i == 0 {
				row[j] = j
				continue
			}
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}

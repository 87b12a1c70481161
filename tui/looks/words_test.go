package looks

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// wordsOf are the colours of words that say what a meaning says.
func wordsOf(t *Text) map[string][]Colour {
	return map[string][]Colour{"foul": {t.Foul}, "doubtful": {t.Doubtful}, "room to spare": {t.Clear}, "picked out": {t.Title, t.Key}}
}

// leastOfWords is as least of words beside words and marks. In the sun they are nearly black, to be read (7 to 1): a receptor short they lie
// closer together there.
func leastOfWords(l Look, normal bool) float64 {
	switch {
	case normal:
		return least[l].normal
	case l == Sun:
		return 0.06
	}
	return least[l].lacking
}

// No colour of a word has another meaning than the marks that have it, or one near it: clear is not what lines are, keys are not doubtful.
func TestNoWordHasTwoMeanings(t *testing.T) {
	for l := range Look(Count) {
		table := l.Table()
		of := wordsOf(&table.Text)
		for s, sight := range sights {
			for i, one := range meanings {
				for _, word := range of[one.says] {
					for k, other := range meanings {
						if i == k {
							continue
						}
						marks := of[other.says]
						for _, m := range other.marks {
							marks = append(marks, table.Marks[m])
						}
						for _, m := range marks {
							d := seen(word.RGB, sight).DistanceCIEDE2000(seen(m.RGB, sight))
							assert.GreaterOrEqual(t, d, leastOfWords(l, s == 0), "%s, %s: %s %06x, %s %06x", l, sight.name, one.says, word.RGB, other.says, m.RGB)
						}
					}
				}
			}
		}
	}
	for l := range Look(Count) {
		if table := l.Table(); l != Sun {
			assert.Equal(t, [4]int{table.Marks[Foul].RGB, table.Marks[Doubtful].RGB, table.Marks[Room].RGB, table.Marks[Picked].RGB},
				[4]int{table.Text.Foul.RGB, table.Text.Doubtful.RGB, table.Text.Clear.RGB, table.Text.Key.RGB}, "%s: one colour a meaning", l)
		}
		table := l.Table()
		assert.Equal(t, table.Text.Title, table.Text.Key, "%s", l)
	}
}

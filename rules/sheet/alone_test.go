package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules/template"
)

// However long the work is, nobody signs a page on which nothing else stands: the last steps go on to it.
func TestNobodySignsAPageAlone(t *testing.T) {
	paper, alone := template.Papers["a4"], 0
	for lines := range 140 {
		s := Sheet{Sections: []Section{
			{Heading: "The work", Parts: []Part{Text{Words: strings.Repeat("a line\n", lines)}, Carried{Titled{"Handing over", List{"one", "two"}}}}},
			{Heading: "Signed off", Parts: []Part{Kept{Lines{"fitted by", "date", "signed"}}}},
		}}
		first := s.laid(paper)
		if first.lastAlone() {
			alone++
		}
		set := s.set(paper)
		assert.False(t, set.lastAlone(), "%d lines", lines)
		assert.LessOrEqual(t, len(set.pages), len(first.pages), "no page more")
	}
	assert.Positive(t, alone, "it would have happened")
}

// What is read first is named with its page, which is known once all is laid.
func TestWhatIsReadFirstIsNamedWithItsPage(t *testing.T) {
	s := Sheet{Sections: []Section{
		{Heading: "On top", Parts: []Part{First{"Cautions", "Read these", Text{Words: "facts"}}, Text{Words: strings.Repeat("a line\n", 200)}}},
		{Heading: "Cautions", Parts: []Part{Text{Words: "mind"}}},
	}}
	f := s.set(template.Papers["a4"])
	var b board
	f.pages[0].Draw(&b)
	assert.Contains(t, said([]*board{&b}), fmt.Sprintf("Readthese:page%d", len(f.pages)))
	assert.Greater(t, len(f.pages), 2)
}

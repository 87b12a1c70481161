package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules/template"
)

// Wherever its lines break and however many pages there are: what says on which page each section begins says it of each, and stands clear of what follows.
func TestWhereSectionsBeginHasItsRoom(t *testing.T) {
	paper := template.Papers["a4"]
	for _, pages := range []int{3, 14, 120} {
		for letters := 1; letters < 60; letters++ {
			s := Sheet{Sections: []Section{{Heading: "first", Parts: []Part{Text{Words: "before"}, Where{}, Text{Words: "behind", Size: small}}}}}
			for i := range 12 {
				s.Sections = append(s.Sections, Section{Heading: fmt.Sprintf("%s%d", strings.Repeat("i", letters), i), Fresh: i < pages-1, Parts: []Part{Text{Words: "all of it"}}})
			}
			for range pages - 13 {
				s.Sections[1].Parts = append(s.Sections[1].Parts, Text{Words: strings.TrimSpace(strings.Repeat("line\n", 72))})
			}
			laid := s.set(paper)
			require.GreaterOrEqual(t, len(laid.pages), pages)
			page := printedOf(laid.pages[0])
			low, behind := 0.0, 0.0
			for i, text := range page.texts {
				if box := page.boxes[i]; text.Words == "behind" {
					behind = box.Top
				} else {
					low = max(low, box.Top+box.Height)
				}
			}
			require.Greater(t, behind-low, gap-1.0, "%d pages, %d letters: no nearer than any parts", pages, letters)
			for _, b := range laid.begun {
				require.Contains(t, said([]*board{{texts: page.texts}}), fmt.Sprintf("%s%d", b.heading, b.page))
			}
		}
	}
}

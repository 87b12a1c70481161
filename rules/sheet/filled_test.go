package sheet

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules/template"
)

// high is a part so many mm high that writes how high its picture is.
type high struct {
	picture, rest float64
}

func (h high) lay(f *flow) {
	f.need(h.picture + h.rest)
	f.row(fmt.Sprint(h.picture), vector.Text{Size: body})
	f.y += h.picture + h.rest - leading*body
}

// Of three parts that take 100 mm with the least pictures two stand on a page of 260: theirs grow to fill it, the last one's don't, as other things
// come behind. One that fills no page keeps the least, and so does what is measured.
func TestPicturesFillTheirPage(t *testing.T) {
	part := func(most float64) Part { return high{most, 70} }
	heights := func(n int) (said [][]string) {
		var all Filled
		for range n {
			all = append(all, part)
		}
		for _, page := range laid(template.Papers["a4"], Section{Heading: "H", Parts: []Part{all}}) {
			var on []string
			for _, text := range page.texts {
				if text.Size == body {
					on = append(on, text.Words)
				}
			}
			said = append(said, on)
		}
		return said
	}
	assert.Equal(t, [][]string{{"30"}}, heights(1))
	assert.Equal(t, [][]string{{"30", "30"}}, heights(2))
	three := heights(3)
	require.Len(t, three, 2)
	assert.Equal(t, []string{"46", "46"}, three[0])
	assert.Equal(t, []string{"30"}, three[1])
	assert.Equal(t, []string{"46", "46"}, heights(5)[1], "on each page but the last")
	f := newFlow(template.Papers["a4"])
	assert.InDelta(t, 300+2*gap, f.measured(Filled{part, part, part}, 100), 1e-9)
}

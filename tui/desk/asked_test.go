package desk

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
)

// A reach gives no finding: it is how far below the floor a thing may be and still count.
func TestWhatABookAsksInWords(t *testing.T) {
	for _, c := range []struct{ id, kind, want string }{
		{"cut.clearance", "", "at least 20 mm"}, {"exhaust.bends", "", "at most 270°"}, {"fuel.delivery", "", "no value yet"},
		{"cut.reach", "", "to 150 mm below"}, {"hole.reach", "wiring", "to 100 mm below"}, {"hole.reach", "brake line", "any depth"},
	} {
		l, ok := rules.Builtin().Lookup(c.id, c.kind)
		require.True(t, ok, c.id)
		assert.Equal(t, c.want, Asked(l, Millimetres), "%s %s", c.id, c.kind)
	}
}

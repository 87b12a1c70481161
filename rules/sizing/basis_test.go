package sizing

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Two that began alike keep what each notes.
func TestBasesThatBeganAlikeDoNotShareWhatTheyNote(t *testing.T) {
	var one basis
	for _, what := range []string{"a", "b", "c"} {
		one.took(what)
		one.lack(what)
	}
	other := one
	one.took("one")
	other.took("other")
	one.lack("one")
	other.lack("other")
	assert.Equal(t, []string{"a", "b", "c", "one"}, one.taken)
	assert.Equal(t, []string{"a", "b", "c", "other"}, other.taken)
	assert.Equal(t, []string{"a", "b", "c", "one"}, one.lacks)
	assert.Equal(t, []string{"a", "b", "c", "one", "other"}, one.and(other).taken)
	one.took("one")
	assert.Len(t, one.taken, 4)
}

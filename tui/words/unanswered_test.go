package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWhatNoScreenAsksIsSaidInTheJobFile(t *testing.T) {
	assert.Equal(t, []string{"where the heater's air comes from", "in the job file: muffler drain"},
		Unanswered([]string{"muffler drain", "where the heater's air comes from"}))
	assert.Empty(t, Unanswered(nil))
}

package harmless

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestNoSpreadsheetReckonsACell(t *testing.T) {
	for text, want := range map[string]string{"": "", "TL-07": "TL-07", "=1+1": "'=1+1", "+84": "'+84", "-5": "'-5", "@a": "'@a", "'a": "'a", "a=b": "a=b"} {
		assert.Equal(t, want, Cell(text))
	}
}

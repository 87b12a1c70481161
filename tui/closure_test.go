package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// bareJob is a job file with nothing but a floor.
const bareJob = `format = 1
[job]
ref = "TL-07"
[floor]
from = 40
length = 3200
width = 1780
thickness = 31
ground = 460
`

// chain is a job in which three ribs run on from each other to 1340, the last held against an overall
// reading.
const chain = bareJob + `[[obstruction]]
name = "first"
kind = "floor rib"
x = [1000, "+100"]
y = [-300, 300]
drop = [0, 30]
[[obstruction]]
name = "second"
kind = "floor rib"
x = ["+40", "+60"]
y = [-300, 300]
drop = [0, 30]
[[obstruction]]
name = "third"
kind = "floor rib"
x = ["+90", "+50"]
y = [-300, 300]
drop = [0, 30]
total = { x = %g }
`

// workshop is the built-in book under a workshop's own that says one thing.
func workshop(t *testing.T, rule string, value float64) *rules.Book {
	path := filepath.Join(t.TempDir(), "book.toml")
	text := fmt.Appendf(nil, "format = 1\n[[rule]]\nid = %q\nvalue = %g\nsource = \"the workshop\"\n", rule, value)
	require.NoError(t, os.WriteFile(path, text, 0o644))
	own, err := rules.LoadBook(path)
	require.NoError(t, err)
	return own.Over(rules.Builtin())
}

// What the form makes of a chain and what is judged go by the same limit, the workshop's. As long as the chain does not
// close, nothing of it was moved to fit the overall reading, and the thing that has that reading can go without moving another;
// once it closes it can't, whatever the built-in book says.
func TestFormAndVerdictHoldAChainAgainstTheSameLimit(t *testing.T) {
	for _, c := range []struct {
		limit, total float64
		closes       bool
	}{{0.2, 1342, false}, {6.635, 1342, true}, {6.635, 1353, false}, {1000, 1353, true}} {
		o := options(t)
		o.Screens, o.Book = Screens(), workshop(t, "chain.closure", c.limit)
		require.NoError(t, os.WriteFile(o.Path, fmt.Appendf(nil, chain, c.total), 0o644))
		b := started(t, o)
		b.send(tea.WindowSizeMsg{Width: 160, Height: 50})
		closures := b.desk.State.Result.Plan.Closures
		require.Len(t, closures, 1)
		require.Equal(t, c.closes, closures[0].Closes)
		says := "too far, measure both again"
		if c.closes {
			says = "spread over the chain"
		}
		third := features.Record{List: features.Obstructions, Row: 2}
		assert.Contains(t, third.Notes(b.desk.State)["tx"], says, "limit %g", c.limit)
		assert.Equal(t, !c.closes, strings.Contains(b.View(), "chain misses by"), "limit %g", c.limit)
		b.press("down", "down", "x")
		left := 2
		if c.closes {
			left = 3
		}
		assert.Len(t, b.desk.State.Job.Obstructions, left, "limit %g: %s", c.limit, b.say)
	}
}

// A reading that is typed is tried by the workshop's limit: a total that would pull a rib thin past its other edge is refused where the chain then counts
// as closed, and taken where it does not, as nothing is moved to fit it.
func TestATypedTotalIsTriedByTheWorkshopsLimit(t *testing.T) {
	text := strings.Replace(fmt.Sprintf(chain, 1255.0), `"+50"`, `"+5"`, 1)
	after, err := vehicles.ParseJob([]byte(text), "", rules.Builtin())
	require.NoError(t, err)
	for limit, refused := range map[float64]bool{1e5: true, 6.635: false} {
		o := options(t)
		o.Screens, o.Book = Screens(), workshop(t, "chain.closure", limit)
		before, _, _ := strings.Cut(text, "total = ")
		require.NoError(t, os.WriteFile(o.Path, []byte(before), 0o644))
		b := started(t, o)
		_, err := form.Try(b.desk.State, after)
		assert.Equal(t, refused, err != nil, "%v: %v", limit, err)
	}
}

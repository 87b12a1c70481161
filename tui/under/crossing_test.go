package under

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// What usually crosses is not called measured wrong; of what else lies in one another one line says it, with the shortest way out.
func TestOnlyWhatDoesNotUsuallyCrossIsDoubted(t *testing.T) {
	said := func(things ...string) []string {
		text := "format = 1\n[job]\nref = \"crossing\"\n[floor]\nfrom = 40\nlength = 3200\nwidth = 1780\nthickness = 31\nground = 460\n"
		for _, thing := range things {
			text += "[[obstruction]]\n" + thing + "\n"
		}
		job, err := vehicles.ParseJob([]byte(text), "crossing.toml")
		require.NoError(t, err)
		d := screentest.New(t, New(), job, 100, 27)
		return wrongs(d.State)[len(rules.Dangers(&d.State.Result)):]
	}
	const (
		member = "name = \"crossmember\"\nkind = \"crossmember\"\nx = [1000, 1080]\ny = [-600, 600]\ndrop = [0, 60]"
		rail   = "name = \"rail\"\nkind = \"chassis rail\"\nx = [200, 3000]\ny = [300, 380]\ndrop = [0, 90]"
		loom   = "name = \"loom\"\nkind = \"wiring\"\nx = [1400, 1500]\ny = [200, 500]\ndrop = [20, 30]"
		tank   = "name = \"tank\"\nkind = \"fuel tank\"\nx = [1900, 2400]\ny = [0, 500]\ndrop = [80, 200]"
		tray   = "name = \"tray\"\nkind = \"plastic part\"\nx = [2000, 2300]\ny = [-100, 250]\ndrop = [10, 95]"
	)
	assert.Empty(t, said(member, rail, loom))
	assert.Equal(t, []string{"tank and tray lie 15 mm in one another: if neither runs through the other, measure both again"}, said(tank, tray),
		"they part by 15 mm in height; in plan it would take 250")
	assert.Equal(t, []string{"2 pairs of things lie in one another, the deepest: tank and tray lie 15 mm in one another: " +
		"if neither runs through the other, measure both again"}, said(rail, tank, tray), "the tank is 10 mm in the rail")
}

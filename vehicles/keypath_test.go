package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Whatever a key is made of, what holds it is found again from its path.
func TestAKeyIsHeldByWhatHoldsIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path := ""
		for range rapid.IntRange(0, 4).Draw(t, "depth") {
			below := JoinKey(path, rapid.StringMatching(`[a-z .\[\]"\\0-9é-]{1,8}`).Draw(t, "key"))
			assert.Equal(t, path, parentKey(below))
			path = below
			if rapid.Bool().Draw(t, "list") {
				below = joinIndex(path, rapid.IntRange(0, 40).Draw(t, "index"))
				assert.Equal(t, path, parentKey(below))
				path = below
			}
		}
	})
}

// A rule's id has points in it, and is one key.
func TestARuleIsOneKey(t *testing.T) {
	assert.Equal(t, `rules."cut.clearance.fuel tank"`, RuleKey("cut.clearance.fuel tank"))
	assert.Equal(t, "rules", parentKey(RuleKey("cut.clearance.fuel tank")))
}

// By hand, as people read them.
func TestKeysInWords(t *testing.T) {
	for _, c := range []struct{ key, name, want string }{
		{"obstruction[3].path[2][1]", "brake pipe", `obstruction "brake pipe": path, point 3, y`},
		{"obstruction[0].x[1]", "", "obstruction 1: x, value 2"},
		{"tie[1].below[0]", "bolt", `tie "bolt": below, x`},
		{"cut.direct[2].gap", "", "cut: direct, value 3.gap"},
		{"heater.duct_across", "", "heater: duct_across"},
		{"exhaust.path[4][2]", "", "exhaust: path, point 5, drop"},
		{"floor", "", "floor"},
		{"", "", "the file"},
	} {
		assert.Equal(t, c.want, KeyOf(c.key, c.name))
	}
}

package cutlist

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The usual kit is entered twice: what it is said to hold is not ordered, and shows in nothing else. Common practice, no source.
func TestTheUsualKitHoldsWhatIsEnteredOnceMore(t *testing.T) {
	want := Kit{
		Source: "common practice, no source",
		Stock:  []StockOf{{ExhaustPipe, 1000, 1}, {IntakeHose, 1000, 1}, {FuelLine, 6000, 1}},
		Part: []PartOf{
			{Muffler, 1}, {ExhaustClamp, 3}, {IntakeClamp, 1}, {"exhaust clip", 4}, {"intake clip", 2}, {"fuel line clip", 8},
			{EndSleeve, 1}, {EndCap, 1}, {"pump", 1}, {"fuel filter", 0}, {FuelJoint, 4}, {FuelClamp, 8}, {Grommet, 1},
		},
	}
	want.Allow.Trim, want.Allow.Overlap, want.Allow.Least = 5, 25, 10
	assert.Equal(t, want, *Usual())
}

// A key of the kit that the program does not know is named: it would else be a limit that nobody keeps.
func TestAKeyOfTheKitThatNobodyKnowsIsNamed(t *testing.T) {
	assert.PanicsWithError(t, "kit.toml: stok is not known", func() { readKit("stok = 1") })
	assert.NotPanics(t, func() { readKit("") })
}

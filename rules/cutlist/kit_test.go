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
			{Of: Muffler, Holds: 1}, {Of: ExhaustClamp, Holds: 3}, {Of: IntakeClamp, Holds: 1}, {Of: "exhaust clip", Holds: 4}, {Of: "intake clip", Holds: 2},
			{Of: "fuel line clip", Holds: 8}, {Of: EndSleeve, Holds: 1}, {Of: EndCap, Holds: 1}, {Of: "pump", Holds: 1}, {Of: "fuel filter"},
			{Of: FuelJoint, Holds: 4, Each: 50}, {Of: FuelClamp, Holds: 8}, {Of: Grommet, Holds: 1},
		},
	}
	want.Allow.Trim, want.Allow.Overlap, want.Allow.Least = 5, 25, 10
	assert.Equal(t, want, *Usual())
	assert.InDelta(t, 2*want.Allow.Overlap, want.part(FuelJoint).Each, 1e-9, "a joint goes over two ends")
}

// A key of the kit that the program does not know is named: it would else be a limit that nobody keeps.
func TestAKeyOfTheKitThatNobodyKnowsIsNamed(t *testing.T) {
	assert.PanicsWithError(t, "kit.toml: stok is not known", func() { readKit("stok = 1") })
	assert.NotPanics(t, func() { readKit("") })
}

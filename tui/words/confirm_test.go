package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// What only awaits that somebody confirms it is not to be moved away from.
func TestWhatIsOnlyUnconfirmedIsToBeConfirmed(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1400, 250}
	job.Exhaust, job.Intake, job.Fuel = nil, nil, nil
	s := screentest.Judged(desk.State{}, job.WithCut(cut))
	assert.Equal(t, "what is doubtful was not measured on this van: confirm it (m in Underneath)", words.NoAdvice(s.Result))

	for i, o := range job.Obstructions {
		o.Measured = true
		job.Obstructions = job.Obstructions.With(i, o)
	}
	s = screentest.Judged(desk.State{}, job.WithCut(cut))
	assert.NotContains(t, words.NoAdvice(s.Result), "confirm")
}

func TestWhereAThingIsConfirmedIsSaid(t *testing.T) {
	assert.Equal(t, "confirm it (m in Underneath or On top)",
		words.ConfirmIt(rules.Thing{Sort: rules.AnObstruction}, rules.Thing{Sort: rules.AFitting}, rules.Thing{Sort: rules.AnOpening}))
}

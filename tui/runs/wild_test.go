package runs

import (
	"testing"

	"pgregory.net/rapid"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func TestAWildHandHarmsNothing(t *testing.T) {
	screentest.Wild(t, New, screentest.Full(t))
	screentest.Wild(t, New, screentest.State(t).Job)
}

func TestWanderingOverTheRunsFillsTheScreen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		screentest.Wander(t, New(), "tab", "n", "p", ". .", ", ,", "left", "right", "up", "down", "s", "a", "x", "x x", "i", "r", "d", "m", "c", "w", "y", "space",
			"t 300 enter", "t enter enter enter enter", "k 24 enter enter", "e", "z", "h space esc", "o", "v", "f", "g", "esc")
	})
}

// All keys of the screen do something or say why not, whichever part is picked, with and without a run.
func TestNoKeyIsDead(t *testing.T) {
	for _, job := range []vehicles.Job{screentest.Full(t), screentest.Van(t)} {
		d := screentest.New(t, New(), job, 60, 17)
		for range vehicles.RunKinds {
			for range 30 {
				for _, k := range d.Screen.Keys(d.State) {
					if k.Help().Key == desk.KeyUndo.Help().Key || len(k.Keys()) == 0 {
						t.Errorf("%q has no key", k.Help().Desc)
					}
				}
				d.Type(".")
			}
			d.Type("<tab>")
		}
	}
}

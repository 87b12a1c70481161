package runs

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
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

// Enter at any part of any run opens what is asked of it, or says why not, and what is typed there, nothing, a figure or a word, is taken or refused.
func TestEveryPartIsAskedForAndAnswered(t *testing.T) {
	for _, job := range []vehicles.Job{screentest.Full(t), screentest.Van(t), vehicles.Demo()} {
		for of := range vehicles.RunKinds {
			for _, typed := range []string{"<enter><enter><enter><enter>", "<enter>1<enter>2<enter>3<enter>", "<enter>x<enter>", "t<enter>", " ", " <enter><enter>"} {
				d := screentest.New(t, New(), job, 100, 27)
				d.Type(strings.Repeat("<tab>", of))
				for range 30 {
					d.Type(typed + "<esc><esc>.")
					_ = d.View(100, 27)
				}
			}
		}
	}
}

// What a line begins at, and what the heater burns, have nothing to be typed: Enter says the other as Space does.
func TestEnterSaysTheOtherWhereNothingIsTyped(t *testing.T) {
	d := screentest.New(t, New(), vehicles.Demo(), 100, 27)
	d.Type("<tab><tab>")
	said := 0
	for range 30 {
		if here, ok := d.Screen.(screen).here(d.State); ok && (here.sort == burns || here.sort == from) {
			d.Said = ""
			d.Type("<enter>")
			assert.NotEmpty(t, d.Said)
			assert.NotContains(t, d.View(100, 27), "How far along")
			said++
		}
		d.Type(".")
	}
	assert.GreaterOrEqual(t, said, 2)
}

package form

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/desk"
)

// A tap takes the choice under the finger, whatever others have its letter; it goes on as a letter of its own does.
func TestATapTakesTheChoiceUnderIt(t *testing.T) {
	fields := []Field{
		{Key: "kind", Label: "kind", Choices: []Choice{{'t', "tyre"}, {'a', "air line"}, {'t', "traction battery"}, {'a', "catalyst"}}},
		{Key: "x", Label: "x"},
	}
	for _, width := range []int{30, 60} {
		for _, text := range []string{"", "tyre", "traction battery", "catalyst"} {
			fields[0].Text = text
			f := Form{}.Open("kind", fields)
			rows, taken := strings.Split(ansi.Strip(f.View(fields, width, 12, desk.Settings{}.Styles())), "\n"), 0
			for y, row := range rows[1:] {
				if !strings.HasPrefix(row, "    ") {
					continue // no row of choices
				}
				for _, c := range fields[0].Choices {
					if x := strings.Index(row, " "+c.Name); x >= 0 {
						_, e := f.Tap(fields, width, 12, x+1, y+1)
						assert.Equal(t, Event{Key: "kind", Text: c.Name, Edited: true, Picked: true}, e)
						taken++
					}
				}
			}
			assert.Equal(t, len(fields[0].Choices), taken)
		}
	}
}

// However low the form is, what is chosen of many is seen.
func TestTheChoiceIsSeenInALowForm(t *testing.T) {
	field := Field{Key: "kind", Label: "kind"}
	for _, name := range []string{"air line", "brake line", "catalyst", "driveshaft", "fuel line", "gas pipe", "heat shield", "swage"} {
		field.Choices = append(field.Choices, Choice{rune(name[0]), name})
	}
	fields := []Field{field, {Key: "x", Label: "x"}}
	for _, c := range field.Choices {
		fields[0].Text = c.Name
		f := Form{}.Open("kind", fields)
		for h := 1; h < 12; h++ {
			assert.Contains(t, ansi.Strip(f.View(fields, 20, h, desk.Settings{}.Styles())), c.Name, "%d rows", h)
		}
	}
}

func TestAFieldSaysWhereASharedLetterGoesOn(t *testing.T) {
	field := Field{Key: "kind", Label: "kind", Text: "tyre", Choices: []Choice{{'t', "tyre"}, {'a', "air line"}, {'t', "traction battery"}}}
	f := Form{}.Open("kind", []Field{field})
	seen := func() string { return ansi.Strip(f.View([]Field{field}, 60, 8, desk.Settings{}.Styles())) }
	assert.Contains(t, seen(), "t again: traction battery; Enter: go on")
	field.Text = "traction battery"
	assert.Contains(t, seen(), "t again: tyre; Enter: go on")
	field.Text = "air line"
	assert.NotContains(t, seen(), "again")
}

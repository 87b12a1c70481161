package screentest

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

var verdictFirst = regexp.MustCompile(`(^|│ )(foul|doubtful|clear) {2,}.*`)

// FindingIn is the finding in a row of a picture, "" for none.
func FindingIn(row string) string { return verdictFirst.FindString(row) }

// TappedFinding is a finding of a list that has been tapped.
type TappedFinding struct {
	*Driver
	X, Y         int      // where
	Row          string   // as it stood there
	After        []string // the rows of the picture since
	FirstFinding int      // the first of them that has a finding, -1 for none
}

// EachFindingTapped taps each finding of the sample job that a screen shows in a size and that leads to the screen itself, each in a
// program of its own.
func EachFindingTapped(t *testing.T, screen func() desk.Screen, w, h int, do func(d TappedFinding)) {
	title := screen().Title()
	for y, row := range strings.Split(New(t, screen(), vehicles.Demo(), w, h).View(w, h), "\n") {
		at := verdictFirst.FindStringIndex(row)
		if at == nil {
			continue
		}
		d := TappedFinding{Driver: New(t, screen(), vehicles.Demo(), w, h), X: len([]rune(row[:at[0]])) + 3, Y: y, Row: row}
		if Tapped(d.Driver, d.X, y).Goto != title {
			continue
		}
		d.Tap(d.X, y)
		d.After = strings.Split(d.View(w, h), "\n")
		d.FirstFinding = slices.IndexFunc(d.After, verdictFirst.MatchString)
		do(d)
	}
}

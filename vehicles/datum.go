package vehicles

import (
	"errors"
	"strings"
)

// Named tells whether x starts at another line than the rear bumper's edge.
func (d *Datum) Named() bool { return d.Name != "" }

// Called is what the line that x starts at is called, without an article: "bumper", or its own name.
func (d *Datum) Called() string { return d.called("bumper") }

// NothingBefore is what is wrong with a reading that runs on where nothing stands before it.
func (d *Datum) NothingBefore() error {
	return errors.New("nothing stands before it to run on from: measure from " + zeros(d.Called()))
}

// zeros are the lines that a reading starts at, with datum the one that x does.
func zeros(datum string) string { return "the " + datum + ", the centreline or a side edge" }

// Edge is the same where it is an edge that a tape hooks on, Line where it is a line across the van.
func (d *Datum) Edge() string { return d.called("bumper edge") }
func (d *Datum) Line() string { return d.called("bumper line") }

func (d *Datum) called(bumper string) string {
	if d.Name == "" {
		return bumper
	}
	return strings.TrimPrefix(d.Name, "the ")
}

package vehicles

import "strings"

// Named tells whether x starts at another line than the rear bumper's edge.
func (d *Datum) Named() bool { return d.Name != "" }

// Called is what the line that x starts at is called, without an article: "bumper", or its own name.
func (d *Datum) Called() string { return d.called("bumper") }

// Edge is the same where it is an edge that a tape hooks on, Line where it is a line across the van.
func (d *Datum) Edge() string { return d.called("bumper edge") }
func (d *Datum) Line() string { return d.called("bumper line") }

func (d *Datum) called(bumper string) string {
	if d.Name == "" {
		return bumper
	}
	return strings.TrimPrefix(d.Name, "the ")
}

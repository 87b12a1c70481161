package desk

import "time"

// What screens that never import each other do alike.
const (
	// SideBySide is from how many columns of the body on two panes stand beside each other.
	SideBySide = 100

	// TurnStep is how far one press turns the heater, degrees.
	TurnStep = 15

	// Glance is after how long, and then how often, a person is told how far an answer is: one that comes sooner seems to be
	// there at once.
	Glance = 200 * time.Millisecond
)

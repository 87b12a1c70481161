// Package quiet keeps the program from asking the terminal for its background colour.
//
// The terminal library asks when it is initialised and then waits up to five seconds for an answer; an answer
// that comes later would be typed into a field. Telling it that the background is dark before it is initialised
// stops the question. Go initialises packages that are ready in the order of their import paths, so this
// package may import nothing but lipgloss, and its path must sort before the terminal library's.
// Light or dark is a setting of the workshop instead.
package quiet

import "github.com/charmbracelet/lipgloss"

func init() { lipgloss.SetHasDarkBackground(true) }

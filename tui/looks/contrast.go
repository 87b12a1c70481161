package looks

import (
	"math"
	"sync"
)

// What WCAG 2.1 asks of contrast: 4.5 of text (success criterion 1.4.3), 3 of large text and of what is drawn and means something
// (1.4.11).
const (
	Readable = 4.5
	Visible  = 3
)

// Contrast is the ratio of two colours' luminances, 0xRRGGBB, 1 to 21. WCAG 2.1, "contrast ratio".
func Contrast(a, b int) float64 {
	x, y := Luminance(a), Luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// Luminance is how light a colour is, 0xRRGGBB, 0 to 1. WCAG 2.1, "relative luminance".
func Luminance(colour int) float64 {
	light := linear()
	return 0.2126*light[colour>>16&255] + 0.7152*light[colour>>8&255] + 0.0722*light[colour&255]
}

// linear is the light of each value of a channel, 0 to 1.
var linear = sync.OnceValue(func() *[256]float64 {
	var table [256]float64
	for i := range table {
		v := float64(i) / 255
		if table[i] = math.Pow((v+0.055)/1.055, 2.4); v <= 0.03928 {
			table[i] = v / 12.92
		}
	}
	return &table
})

// Farther is the look's darkest or lightest ink, whichever is told better from a ground.
func (t *Table) Farther(ground int) int {
	if Contrast(t.Last[0], ground) > Contrast(t.Last[1], ground) {
		return t.Last[0]
	}
	return t.Last[1]
}

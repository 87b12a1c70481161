package form

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"bench.example/undermark/vehicles"
)

// Number reads a plain number as it is typed, with a point or a comma. Whatever field takes a number that is no reading and no length
// reads it so, and asks its limits.
func Number(text string) (float64, error) {
	text = strings.TrimSpace(text)
	v, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", "."), 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is no number: write figures, like 12 or 0.5", Quoted(text))
	}
	return v + 0, nil // a negative zero becomes a plain one
}

// NumberIn reads a plain number within limits.
func NumberIn(text string, l vehicles.Limits) (float64, error) {
	v, err := Number(text)
	if err == nil {
		err = l.Takes(v)
	}
	return v, err
}

// ErrNoDate is for a date that can't be read.
var ErrNoDate = errors.New("a date is year, month, day: 2026-11-25")

// Degrees reads an angle.
func Degrees(text string) (float64, error) { return NumberIn(text, vehicles.AnAngle) }

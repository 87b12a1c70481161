package vehicles

import (
	"errors"
	"fmt"

	"bench.example/undermark/geometry/survey"
)

// Limits are what a number of a job must be, in the file and wherever it is typed. They and their words stand here alone.
type Limits struct {
	least, most float64
	open        bool // least itself is not accepted
	says        string
}

// LargestAngle bounds angles either way, degrees: a hundred turns, in which 64-bit numbers still tell a millionth of a
// degree apart by far.
const LargestAngle = 36000

// What bounds numbers that are no lengths: no size of a van or a heater comes near to them, and sums and products of what they let
// through stay numbers.
const (
	mostMeasured = 1_000_000
	mostFigure   = 1_000_000_000
)

// What a number may be.
var (
	ALength   = Limits{-survey.Longest, survey.Longest, false, fmt.Sprintf("a length from -%d to %[1]d mm", survey.Longest)}
	ADistance = Limits{0, survey.Longest, false, fmt.Sprintf("from 0 to %d mm", survey.Longest)}
	ASize     = Limits{0, survey.Longest, true, fmt.Sprintf("more than 0 and at most %d mm", survey.Longest)}
	AnAngle   = Limits{-LargestAngle, LargestAngle, false, fmt.Sprintf("an angle from -%d to %[1]d degrees", LargestAngle)}
	ATilt     = Limits{-180, 180, false, "from -180 to 180 degrees"}
	ABend     = Limits{0, 180, true, "more than 0 and at most 180 degrees"}
	AMeasure  = Limits{0, mostMeasured, true, fmt.Sprintf("more than 0 and at most %d", mostMeasured)}
	ARate     = Limits{0, mostMeasured, false, fmt.Sprintf("from 0 to %d", mostMeasured)}
	AFigure   = Limits{-mostFigure, mostFigure, false, fmt.Sprintf("a number from -%d to %[1]d", mostFigure)}

	anError      = Limits{0, survey.Longest, false, fmt.Sprintf("from 0 to %d", survey.Longest)} // of a tape, mm, or an angle
	aTemperature = Limits{-90, 90, false, "from -90 to 90 degrees Celsius"}
	aShare       = Limits{0, 100, true, "more than 0 and at most 100 percent"}
	aDay         = Limits{0, 24, true, "more than 0 and at most 24 hours"}
)

// hold tells whether v is within the limits; what is no number is not.
func (l Limits) hold(v float64) bool { return v >= l.least && v <= l.most && !(l.open && v == l.least) }

// Takes says why a number can't be v; nil where it can.
func (l Limits) Takes(v float64) error {
	if l.hold(v) {
		return nil
	}
	return errors.New("must be " + l.says)
}

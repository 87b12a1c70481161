package vehicles

import (
	"errors"

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
	ALength   = from("a length ", -survey.Longest, survey.Longest, " mm")
	ADistance = from("", 0, survey.Longest, " mm")
	ASize     = upTo(survey.Longest, " mm")
	AnAngle   = from("an angle ", -LargestAngle, LargestAngle, " degrees")
	ATilt     = from("", -180, 180, " degrees")
	ABend     = upTo(180, " degrees")
	AMeasure  = upTo(mostMeasured, "")
	ARate     = from("", 0, mostMeasured, "")
	AFigure   = from("a number ", -mostFigure, mostFigure, "")

	anError      = from("", 0, survey.Longest, "") // of a tape, mm, or an angle
	aTemperature = from("", -90, 90, " degrees Celsius")
	aShare       = upTo(100, " percent")
	aDay         = upTo(24, " hours")
)

// from are limits that are accepted themselves.
func from(what string, least, most float64, unit string) Limits {
	return Limits{least, most, false, what + "from " + survey.Exact(least) + " to " + survey.Exact(most) + unit}
}

// upTo are those of what must be more than nothing.
func upTo(most float64, unit string) Limits {
	return Limits{0, most, true, "more than 0 and at most " + survey.Exact(most) + unit}
}

// hold tells whether v is within the limits; what is no number is not.
func (l Limits) hold(v float64) bool { return v >= l.least && v <= l.most && !(l.open && v == l.least) }

// Takes says why a number can't be v; nil where it can.
func (l Limits) Takes(v float64) error {
	if l.hold(v) {
		return nil
	}
	return errors.New("must be " + l.says)
}

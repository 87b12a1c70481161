package desk

import (
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
)

// PutRight is said where something needs a job that can be judged.
const PutRight = "First put right what is wrong with the job."

// What is said of what is worked out beside a screen, and came to nothing.
const (
	NotWorkedOut = "It could not be worked out. Nothing was changed; Esc leaves."
	Stopped      = "Stopped. Nothing was changed."
)

// AboveFinished is behind a height that is measured from above.
const AboveFinished = "above the finished floor"

// NoneWithin is said where nothing that was entered is so near, mm, to a part of the heater.
func NoneWithin(mm float64, part string, u survey.Units) string {
	return "Nothing was entered within " + Length(mm, u) + " of the " + part + "."
}

// PlusMinusHead stands above a column of PlusMinus95.
const PlusMinusHead = "± 95 %"

// sidesWords are the van's left and right by the way of speaking.
var sidesWords = [...][2]string{
	LeftRight:     {"left", "right"},
	NearsideLeft:  {"nearside", "offside"},
	NearsideRight: {"offside", "nearside"},
}

// Left is the word for the van's left.
func Left(s Settings) string { return sidesWords[s.Nearside][0] }

// Right is the word for the van's right.
func Right(s Settings) string { return sidesWords[s.Nearside][1] }

// SideOf is the word for the side of the centreline on which y lies, mm.
func SideOf(y float64, s Settings) string {
	switch {
	case y > 0:
		return Left(s)
	case y < 0:
		return Right(s)
	}
	return "centreline"
}

// Across says where y (mm, left positive) lies: "240 mm left".
func Across(y float64, s Settings) string {
	if survey.Format(math.Abs(y), s.Units) == survey.Format(0, s.Units) {
		return "on the centreline"
	}
	return Length(math.Abs(y), s.Units) + " " + SideOf(y, s)
}

// Height says where a drop (mm, downwards positive) lies: "95 mm below floor", "22 mm above floor".
func Height(drop float64, u survey.Units) string {
	switch {
	case drop > 0:
		return Length(drop, u) + " below floor"
	case drop < 0:
		return Length(-drop, u) + " above floor"
	}
	return "at the floor"
}

// Length writes mm with the unit: "652.5 mm", `25 11/16"`.
func Length(mm float64, u survey.Units) string {
	if u == Inches {
		return survey.Format(mm, u)
	}
	return survey.InMM(mm)
}

// Quantity writes a number of any unit a rule has, with the unit: "652.5 mm", "30°", "5 mm/m", "3×".
func Quantity(v float64, unit rules.Unit, u survey.Units) string {
	if unit == rules.MM {
		return Length(v, u)
	}
	return Behind(survey.Figure(v), unit)
}

// Limit writes what a book says, with its unit; other than a length it is written exactly, as the book has it.
func Limit(l rules.Limit, u survey.Units) string {
	switch {
	case !l.Value.Set:
		return "no value"
	case l.AnyDepth():
		return "any depth"
	case l.Unit == rules.MM:
		return Length(l.Value.Value, u)
	}
	return Behind(survey.Exact(l.Value.Value), l.Unit)
}

// Asked is what a book asks, in words: "at least 15 mm"; of a rule that says how deep things count "to 150 mm below", or "any depth".
func Asked(l rules.Limit, u survey.Units) string {
	switch {
	case !l.Value.Set:
		return "no value yet"
	case l.AnyDepth():
		return Limit(l, u)
	case l.IsReach():
		return "to " + Limit(l, u) + " below"
	}
	return "at " + l.Sense.String() + " " + Limit(l, u)
}

// Behind is a figure with its unit behind it.
func Behind(figure string, unit rules.Unit) string {
	if sign := UnitSign(unit); sign != string(unit) {
		return figure + sign
	}
	return figure + " " + string(unit)
}

// UnitSign is what stands behind a figure: two of them are "2×", a square of a deviation over its uncertainty is "9.2u²".
func UnitSign(unit rules.Unit) string {
	switch unit {
	case rules.Degree:
		return "°"
	case rules.Count, rules.Times:
		return "×"
	case rules.Pure:
		return "u²"
	}
	return string(unit)
}

// Units says in which units lengths are shown.
type Units = survey.Units

// The units, so that a screen need not import survey for a name.
const (
	Millimetres = survey.Millimetres
	Inches      = survey.Inches
)

// TwoSided95 is how many standard uncertainties either side 95 % lie within. Source: JCGM 100:2008, table G.1.
const TwoSided95 = 1.96

// PlusMinus95 writes a standard uncertainty of sigma mm as the half width within which 95 % lie: "± 3.5".
func PlusMinus95(sigma float64, u survey.Units) string {
	return "± " + survey.Format(TwoSided95*sigma, u)
}

// Of95 stands behind a ± outside of a column: what lies within it.
const Of95 = " (95 %)"

// Within95 writes a standard uncertainty as PlusMinus95 does, and says what that holds: "± 3.5 (95 %)".
func Within95(sigma float64, u survey.Units) string { return PlusMinus95(sigma, u) + Of95 }

// VerdictWord spells a verdict.
func VerdictWord(v rules.Verdict) string { return v.String() }

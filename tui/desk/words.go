package desk

import (
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
)

// NotMeasured is what stands where a reading is missing.
const NotMeasured = "not measured"

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
	return survey.Format(mm, u) + " mm"
}

// Units says in which units lengths are shown.
type Units = survey.Units

// The units, so that a screen need not import survey for a name.
const (
	Millimetres = survey.Millimetres
	Inches      = survey.Inches
)

// UnitWord is "mm" or "inches".
func UnitWord(u survey.Units) string {
	if u == Inches {
		return "inches"
	}
	return "mm"
}

// PlusMinus95 writes a standard uncertainty of sigma mm as the half width within which 95 % lie: "± 3.5".
// 1.96 is the normal distribution's factor (JCGM 100:2008, table G.1).
func PlusMinus95(sigma float64, u survey.Units) string { return "± " + survey.Format(1.96*sigma, u) }

// VerdictWord spells a verdict.
func VerdictWord(v rules.Verdict) string { return v.String() }

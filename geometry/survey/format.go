package survey

import (
	"fmt"
	"math"
	"strconv"
)

// Units says in which units lengths are shown.
type Units uint8

// The units of a tape.
const (
	Millimetres Units = iota
	Inches
)

// Inch is an inch in mm, exactly. Source: the international yard and pound agreement of 1959.
const Inch = 25.4

// Degree stands behind an angle.
const Degree = "°"

// String is "mm" or "inches".
func (u Units) String() string { return [...]string{"mm", "inches"}[u] }

// Sign is what stands behind a figure: "mm" or "in".
func (u Units) Sign() string { return [...]string{"mm", "in"}[u] }

// Size is how long one of the units is, mm.
func (u Units) Size() float64 { return [...]float64{1, Inch}[u] }

// Exact writes a number so that it reads back as it is: "652", "4.5".
func Exact(v float64) string { return strconv.FormatFloat(v+0, 'f', -1, 64) } // a negative zero becomes a plain one

// Figure writes a number for a person: to a tenth, with the decimal only where it is not 0. Halves round away from zero.
func Figure(v float64) string { return FigureTo(v, 1) }

// Told writes a number for a person as Figure does, with as many decimals more as tell it from 0, up to 9: what is short by little is not short
// by nothing.
func Told(v float64) string {
	decimals := 1
	for decimals < 9 && Rounded(v, decimals) == 0 {
		decimals++
	}
	return FigureTo(v, decimals)
}

// FigureTo writes a number for a person to so many decimals, 0 to 9, as Figure does: without those that say nothing.
func FigureTo(v float64, decimals int) string { return Exact(Rounded(v, decimals)) }

// Fixed writes a number for a person to so many decimals, 0 to 9, all of them: where it says that they are known. Halves round away
// from zero.
func Fixed(v float64, decimals int) string {
	return strconv.FormatFloat(Rounded(v, decimals)+0, 'f', decimals, 64)
}

// Rounded is the number nearest to v that has so many decimals, 0 to 9. Halves round away from zero.
func Rounded(v float64, decimals int) float64 {
	tens := [...]float64{1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9}[decimals]
	return math.Round(v*tens) / tens
}

// Counted is a number of things in words: "1 clip", "3 clips".
func Counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}

// Joined are the texts that are there, with what stands between two.
func Joined(between string, texts ...string) (all string) {
	for _, text := range texts {
		if text != "" && all != "" {
			all += between
		}
		all += text
	}
	return all
}

// InMM writes a length for a person as a Figure with its unit: "652.5 mm".
func InMM(mm float64) string { return InMMTo(mm, 1) }

// InMMTo writes a length for a person as InMM does, to so many decimals, 0 to 9: "652.53 mm".
func InMMTo(mm float64, decimals int) string {
	return FigureTo(mm, decimals) + " " + Millimetres.Sign()
}

// InMMAndInches writes a length that need not be exact for whoever tapes in either: "300 mm (12 in)".
func InMMAndInches(mm float64) string { return InMM(mm) + " (" + FigureTo(mm/Inch, 0) + " in)" }

// InDegrees writes an angle for a person as a Figure with its sign: "12.5°".
func InDegrees(deg float64) string { return Figure(deg) + Degree }

// Format writes a length of mm for a person: as a Figure ("652", "652.5"), or to the nearest sixteenth of an inch in lowest terms (`25 11/16"`, `-3/8"`). Halves round away from zero.
func Format(mm float64, u Units) string {
	if u == Inches && !math.IsNaN(mm) && !math.IsInf(mm, 0) {
		return formatInches(mm)
	}
	return Figure(mm)
}

func formatInches(mm float64) string {
	const sixteenths = 16
	n := math.Round(math.Abs(mm) * sixteenths / Inch)
	sign := ""
	if mm < 0 && n > 0 {
		sign = "-"
	}
	whole, top, bottom := math.Floor(n/sixteenths), int(math.Mod(n, sixteenths)), sixteenths
	for top != 0 && top%2 == 0 {
		top, bottom = top/2, bottom/2
	}
	switch {
	case top == 0:
		return fmt.Sprintf(`%s%.0f"`, sign, whole)
	case whole == 0:
		return fmt.Sprintf(`%s%d/%d"`, sign, top, bottom)
	}
	return fmt.Sprintf(`%s%.0f %d/%d"`, sign, whole, top, bottom)
}

package words

import (
	"math"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// TapesInTheWay says of a mark's tapes on top which can't lie on the floor for what stands there, and what to do instead: a line for that
// from the datum, one for that from the nearer side edge. Nothing for a mark whose tapes are free.
func TapesInTheWay(r *rules.Result, mark rules.Mark, set desk.Settings) (lines []string) {
	if mark.Above == nil {
		return nil
	}
	near, far := rules.FromLeft, rules.FromRight
	if mark.Above.Right < mark.Above.Left {
		near, far = far, near
	}
	for _, way := range [...]rules.TapeWay{rules.FromDatum, near} {
		if met := rules.OnFloor(r, mark, way); len(met.Fittings) > 0 {
			lines = append(lines, standingIn(r, met.Fittings)+" in the way of the tape "+from(r, way, set)+", once fitted: "+instead(r, mark, way, far, met, set)+".")
		}
	}
	return lines
}

func standingIn(r *rules.Result, fittings []int) string {
	names := make([]string, len(fittings))
	for i, f := range fittings {
		names[i] = r.Job.Fittings[f].Name
	}
	if len(names) == 1 {
		return names[0] + " is"
	}
	return strings.Join(names, ", ") + " are"
}

func from(r *rules.Result, way rules.TapeWay, set desk.Settings) string {
	switch way {
	case rules.FromLeft:
		return "from the " + desk.Left(set) + " edge"
	case rules.FromRight:
		return "from the " + desk.Right(set) + " edge"
	}
	return "from the " + r.Job.Datum.Edge()
}

// instead is the way to tape a mark where the usual one is not free: from the other side, beside it, from the pins, or before it stands.
func instead(r *rules.Result, mark rules.Mark, way, far rules.TapeWay, met rules.Standing, set desk.Settings) string {
	free := func(w rules.TapeWay) bool { return len(rules.OnFloor(r, mark, w).Fittings) == 0 }
	switch {
	case way != rules.FromDatum && free(far):
		return "tape " + from(r, far, set) + ", " + desk.Length(mark.Above.By(far), set.Units)
	case met.Aside != nil:
		return "tape " + beside(way, met.Aside.Off, set) + ", where it says " + desk.Length(met.Aside.Reading, set.Units) + ", and carry that line square to the mark"
	case free(rules.FromLeftPin) && free(rules.FromRightPin):
		return "tape from the two pins"
	}
	return "take it out, or make this mark before it goes in"
}

// beside says how far beside its own place a tape is laid.
func beside(way rules.TapeWay, off float64, set desk.Settings) string {
	side := desk.Left(set)
	switch {
	case way != rules.FromDatum && off > 0:
		side = "forward"
	case way != rules.FromDatum:
		side = "back"
	case off < 0:
		side = desk.Right(set)
	}
	return desk.Length(math.Abs(off), set.Units) + " further " + side
}

// Moved says how far a place is from where it was, "" where it is there.
func Moved(by geometry.Point, set desk.Settings) string {
	var parts []string
	add := func(mm float64, plus, minus string) {
		if text := desk.Length(math.Abs(mm), set.Units); math.Abs(mm) >= 0.05 {
			parts = append(parts, text+" "+map[bool]string{true: plus, false: minus}[mm > 0])
		}
	}
	add(by.X, "forward", "back")
	add(by.Y, desk.Left(set), desk.Right(set))
	return strings.Join(parts, ", ")
}

package words

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// TapesInTheWay says of a mark's tapes on top, those of the ways given, which can't lie on the floor for what stands there, and what to do
// instead: a line for those of which the same is to be said. Nothing for a mark whose tapes are free.
func TapesInTheWay(r *rules.Result, mark rules.Mark, set desk.Settings, ways ...rules.TapeWay) []string {
	return taping{r, mark, set, true}.lines(ways)
}

// EveryTape are the ways to tape a mark on top, those that are used first first; none for a mark from below.
func EveryTape(mark rules.Mark) []rules.TapeWay {
	if mark.Above == nil {
		return nil
	}
	near, far := rules.FromLeft, rules.FromRight
	if mark.Above.Right < mark.Above.Left {
		near, far = far, near
	}
	return []rules.TapeWay{rules.FromDatum, near, far, rules.FromLeftPin, rules.FromRightPin}
}

// BlockedTapes says it of all marks and lengths to check, those that share what is to be said on one line behind their names: "cut centre,
// plate 1: shelf is in the way ...". The readings of other tapes stand in the table of the marks.
func BlockedTapes(r *rules.Result, sheet rules.MarkSheet, set desk.Settings) (lines []string) {
	var said []string
	var names [][]string
	onTop := 0
	put := func(name, text string) {
		i := slices.Index(said, text)
		switch {
		case text == "":
		case i < 0:
			said, names = append(said, text), append(names, []string{name})
		default:
			names[i] = append(names[i], name)
		}
	}
	for _, m := range sheet.Marks {
		if m.Above != nil {
			onTop++
		}
		for _, text := range (taping{r, m, set, false}).lines(EveryTape(m)) {
			put(m.Words, text)
		}
	}
	for _, c := range sheet.Checks {
		put(CheckText(c, set), CheckInTheWay(r, c, set))
	}
	for i, text := range said {
		if onTop > 1 && len(names[i]) == onTop {
			names[i] = []string{"every mark on top"}
		}
		lines = append(lines, strings.Join(names[i], ", ")+": "+text)
	}
	return lines
}

// CheckInTheWay says what stands where the tape of a length to check would lie, and what shows the same instead; "" where it is free.
func CheckInTheWay(r *rules.Result, c rules.Check, set desk.Settings) string {
	met := rules.OnCheck(r, c)
	if len(met) == 0 {
		return ""
	}
	instead := "take it out, or check this before it goes in"
	switch c.Name {
	case rules.PlateDiagonal:
		instead = "hold a square to two of the corners instead"
	case rules.PinsApart:
		instead = "tape each pin from its own side edge, " + desk.Length(r.Job.AboveLeft()-r.Job.Pins(), set.Units) + " from the " + desk.Left(set) + ", " +
			desk.Length(r.Job.AboveRight()-r.Job.Pins(), set.Units) + " from the " + desk.Right(set)
	case rules.PinDiagonal:
		if even, ok := rules.EvenPlace(r); ok {
			instead = "tape from both pins to the centreline " + desk.Length(even.Ahead, set.Units) + " ahead of the " + r.Job.Datum.Called() +
				", either says " + desk.Length(even.Length, set.Units)
		}
	}
	return standingIn(r, met) + " in the way of the tape, once fitted: " + instead + "."
}

// TapesMet says of how many tapes on top a fitting stands in the way, "" for none.
func TapesMet(r *rules.Result, sheet rules.MarkSheet, fitting int) string {
	switch n := rules.TapesMet(r, sheet, fitting); n {
	case 0:
		return ""
	case 1:
		return "in 1 tape's way"
	default:
		return fmt.Sprintf("in %d tapes' way", n)
	}
}

// taping is how a mark is taped on top; figures, whether another tape is named with its reading.
type taping struct {
	r       *rules.Result
	mark    rules.Mark
	set     desk.Settings
	figures bool
}

// lines say what stands in the way of some ways' tapes and what to do instead, those together of which the same is to be said.
func (t taping) lines(ways []rules.TapeWay) (lines []string) {
	var standing, instead, from []string
	for _, way := range ways {
		met := rules.OnFloor(t.r, t.mark, way)
		if len(met.Fittings) == 0 {
			continue
		}
		what, other := standingIn(t.r, met.Fittings), t.instead(way, met)
		i := slices.Index(instead, other)
		if i < 0 || standing[i] != what {
			standing, instead, from = append(standing, what), append(instead, other), append(from, t.from(way))
			continue
		}
		from[i] += ", " + t.from(way)
	}
	for i, what := range standing {
		lines = append(lines, what+" in the way of the tape "+from[i]+", once fitted: "+instead[i]+".")
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

func (t taping) from(way rules.TapeWay) string {
	switch way {
	case rules.FromLeft:
		return "from the " + desk.Left(t.set) + " edge"
	case rules.FromRight:
		return "from the " + desk.Right(t.set) + " edge"
	case rules.FromLeftPin:
		return "from the " + desk.Left(t.set) + " pin"
	case rules.FromRightPin:
		return "from the " + desk.Right(t.set) + " pin"
	}
	return "from the " + t.r.Job.Datum.Edge()
}

// instead is another way to tape a mark: from the other side, beside it, from the pins, by the edges, or before it stands.
func (t taping) instead(way rules.TapeWay, met rules.Standing) string {
	free := func(w rules.TapeWay) bool { return len(rules.OnFloor(t.r, t.mark, w).Fittings) == 0 }
	other := map[rules.TapeWay]rules.TapeWay{rules.FromLeft: rules.FromRight, rules.FromRight: rules.FromLeft}
	side := rules.FromLeft
	if !free(side) {
		side = rules.FromRight
	}
	switch far, isSide := other[way]; {
	case isSide && free(far):
		text := "tape " + t.from(far)
		if t.figures {
			text += ", " + desk.Length(t.mark.Above.By(far), t.set.Units)
		}
		return text
	case met.Aside != nil:
		return "tape " + beside(way, met.Aside.Off, t.set) + ", where it says " + desk.Length(met.Aside.Reading, t.set.Units) + ", and carry that line square to the mark"
	case !way.OfPin() && free(rules.FromLeftPin) && free(rules.FromRightPin):
		return "tape from the two pins"
	case way.OfPin() && free(rules.FromDatum) && free(side):
		return "tape " + t.from(rules.FromDatum) + " and " + t.from(side)
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

// BelowSpread says how far off a mark made from below may be, in mm.
func BelowSpread(sigma [2]float64) string {
	return "From below " + desk.PlusMinus95(sigma[0], desk.Millimetres) + " along the van, " + desk.PlusMinus95(sigma[1], desk.Millimetres) + " across it" + desk.Of95 + "."
}

// MarkSpreads say, in mm, how far off the marks may be along their tapes, the worst of each kind: from above, and those that are made from below alone.
func MarkSpreads(r *rules.Result, sheet rules.MarkSheet) (lines []string) {
	var most [2]float64
	pin := 0.0
	for _, m := range sheet.Marks {
		most[0], most[1] = max(most[0], rules.SigmaOf(r, m, rules.FromDatum)), max(most[1], rules.SigmaOf(r, m, rules.FromLeft))
		pin = max(pin, rules.SigmaOf(r, m, rules.FromLeftPin), rules.SigmaOf(r, m, rules.FromRightPin))
	}
	if pin > 0 {
		const mm = desk.Millimetres
		lines = append(lines, "How far off a mark may be. From above "+desk.PlusMinus95(most[0], mm)+" along the van, "+desk.PlusMinus95(most[1], mm)+" across it, "+desk.PlusMinus95(pin, mm)+" from a pin"+desk.Of95+".")
	}
	if below := rules.BelowSpread(sheet); below != [2]float64{} {
		lines = append(lines, BelowSpread(below))
	}
	return lines
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

// MovedMarks are the marks that lie elsewhere since the pilot hole was measured, a line for those that moved alike:
// "Moved since the pilot was measured, 1.5 mm forward: plate 1, plate 2".
func MovedMarks(moved []rules.Moved, set desk.Settings) (lines []string) {
	var ways []string
	for _, m := range moved {
		way := Moved(m.By, set)
		i := slices.Index(ways, way)
		if i < 0 {
			ways, lines = append(ways, way), append(lines, "Moved since the pilot was measured, "+way+": "+m.Words)
			continue
		}
		lines[i] += ", " + m.Words
	}
	return lines
}

// Package looks has the colours of the program, one table a look: what the eye meets in the dark, in the light, in bright sun, at night.
// Nothing is told by them alone: words, letters, patterns and signs say the same without any.
package looks

import (
	"strings"

	"bench.example/undermark/geometry/scene"
)

// Look is one way to colour the screens.
type Look uint8

// The looks. Dark and Light stand on the terminal's own ground; Sun and Night bring theirs, as what a terminal has for ground is not
// made for either.
const (
	Dark  Look = iota
	Light      // for a terminal whose ground is light
	Sun        // strong colours and black on white, for a screen that the sun shines on
	Night      // dim red and amber on black, for eyes that have to see in the dark afterwards
)

// Count is how many there are.
const Count = int(Night) + 1

var names = [Count]string{"dark", "light", "sun", "night"}

// Names are what the looks are called, in their order.
func Names() []string { return names[:] }

func (l Look) String() string { return names[l] }

// Next is the look that the key goes on to.
func (l Look) Next() Look { return (l + 1) % Look(Count) }

// Table returns the look's colours.
func (l Look) Table() *Table { return tables[l] }

var tables = [Count]*Table{&dark, &light, &sun, &night}

// Colour is one of true colour, 0xRRGGBB, and one of a terminal's sixteen, by number.
type Colour struct {
	RGB int
	Of  uint8
}

// Table is all the colours of a look.
type Table struct {
	Paper   Colour // what all stands on; where Own is false about what the terminal has
	Ink     Colour // of words that have no colour of their own
	Own     bool   // the ground is painted
	Last    [2]int // the darkest and the lightest that there is, for a word that can't be told from its ground otherwise; the cut is the one farther from the paper
	Text    Text
	Marks   [Marks]Colour
	Faces   [Faces]int           // 0xRRGGBB
	Cube    Cube                 // marks and faces where there are 256 colours
	Mixed   *[Faces]int          // faces to mix two of; nil for Faces: of 256 colours two make one that is neither
	Sixteen [Faces]uint8         // faces where there are sixteen colours, by number
	Rooms   [scene.Grades]Colour // the dots of shaded floor; 0 where it stays bare
}

// Cube has the marks and faces of a look for a terminal of 256 colours, by number: what is nearest to each by itself would give two of
// them one colour, so they were sought together.
type Cube struct {
	Marks [Marks]uint8
	Faces [Faces]uint8
}

// Text is the colours of words on the screens. Words that say what a mark says have its meaning; Title and Key say where one is and what
// can be pressed, which is what being picked out says.
type Text struct{ Faint, Title, Key, Field, Foul, Doubtful, Clear Colour }

// Mark is what the ink of a line, a sign or a name on a plan says.
type Mark uint8

// The marks. Each but the frames says one thing.
const (
	Foul Mark = iota
	Doubtful
	Room       // there is room to spare
	Picked     // picked out in a list
	Lines      // pipes, wires, tanks
	Hot        // the van's own exhaust
	Exhaust    // the heater's
	Intake     // its combustion air
	Fuel       // its fuel line
	Opening    // where gas could get in
	Tie        // a matching point
	Cut        // the cut, and what is to be marked and drilled
	Rail       // a chassis rail
	Steel      // what else carries
	Moves      // what moves or comes off
	Fitting    // what stands on the floor
	SheetMetal // ribs and swages
	Frame      // the van's outline and the words round the plan
	Wheels     // and what else is only for the eye to find its way
	Grid
	Marks = iota
)

// Face is what a face of a plan says.
type Face uint8

// The faces.
const (
	NoFace Face = iota
	FloorFace
	SteelFace
	RailFace
	LinesFace
	HotFace
	MovesFace
	NoseFace
	BumperFace
	ExhaustFace
	MufflerFace
	IntakeFace
	FuelFace
	FoulFace
	PickedFace
	LittleRoomFace
	FairRoomFace
	MuchRoomFace
	Faces = iota
)

// Parse returns the look of a name, false for a name that none has.
func Parse(name string) (Look, bool) {
	for l, n := range names {
		if n == name {
			return Look(l), true
		}
	}
	return Dark, false
}

// Dress lays the look's own ground under a painted picture: wherever colours are taken off, its paper and ink are put on. base is the
// parameters that do so, "" for a look that stands on the terminal's ground. Each line ends without colours.
func Dress(picture, base string) string {
	if base == "" || picture == "" {
		return picture
	}
	const off = "\x1b[0m"
	on := "\x1b[0;" + base + "m"
	rows := strings.Split(picture, "\n")
	plain := strings.NewReplacer("\x1b[m", off)
	for i, row := range rows {
		rows[i] = on + strings.TrimSuffix(strings.ReplaceAll(beneath(plain.Replace(row), on), off, on), on) + off
	}
	return strings.Join(rows, "\n")
}

// beneath puts a sequence before each other one that begins from nothing, but for those that set ink and ground themselves. It makes none
// longer: terminals hold only so many parameters, and drop what is longer.
func beneath(row, on string) string {
	const nothing = "\x1b[0;"
	var out strings.Builder
	for {
		before, rest, found := strings.Cut(row, nothing)
		out.WriteString(before)
		if !found {
			return out.String()
		}
		parameters, after, _ := strings.Cut(rest, "m")
		if setsBoth(parameters) {
			out.WriteString(nothing + parameters + "m")
		} else {
			out.WriteString(on + "\x1b[" + parameters + "m")
		}
		row = after
	}
}

// setsBoth tells whether the parameters of a sequence set both ink and ground, in true colour or one of 256.
func setsBoth(parameters string) bool {
	ink, ground := false, false
	all := strings.Split(parameters, ";")
	for i := 0; i < len(all); i++ {
		if all[i] == "38" || all[i] == "48" {
			ink, ground = ink || all[i] == "38", ground || all[i] == "48"
			i += 2 // 5 and a number
			if i-1 < len(all) && all[i-1] == "2" {
				i += 2 // or 2 and the three parts of the colour
			}
		}
	}
	return ink && ground
}

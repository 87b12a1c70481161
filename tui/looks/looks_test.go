package looks

import (
	"slices"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene"
)

// meaning is something that colours say: by the ink of marks, and by faces. What only frames the picture has none.
type meaning struct {
	says  string
	marks []Mark
	faces []Face
}

var meanings = []meaning{
	{"foul", []Mark{Foul}, []Face{FoulFace}},
	{"doubtful", []Mark{Doubtful}, nil},
	{"room to spare", []Mark{Room}, []Face{LittleRoomFace, FairRoomFace, MuchRoomFace}},
	{"picked out", []Mark{Picked}, []Face{PickedFace}},
	{"lines and tanks", []Mark{Lines}, []Face{LinesFace}},
	{"van's exhaust", []Mark{Hot}, []Face{HotFace}},
	{"heater's exhaust", []Mark{Exhaust}, []Face{ExhaustFace, MufflerFace}},
	{"heater's air in", []Mark{Intake}, []Face{IntakeFace}},
	{"heater's fuel", []Mark{Fuel}, []Face{FuelFace}},
	{"openings", []Mark{Opening}, nil},
	{"matching points", []Mark{Tie}, nil},
	{"the cut", []Mark{Cut}, nil},
	{"what carries", []Mark{Rail, Steel}, []Face{RailFace, SteelFace}},
	{"what moves", []Mark{Moves}, []Face{MovesFace}},
	{"what stands on the floor", []Mark{Fitting}, nil},
}

// least are how far apart two colours are in a look that say different things, by CIEDE2000 over 100: with normal sight, and with
// one receptor missing, there marks among marks and faces among faces. What is just seen side by side is 0.023 (Mahy, Van Eycken,
// Oosterlinck 1994). Night has no more than red and amber for fifteen meanings: letters, patterns and words carry more of them there.
var least = [Count]struct{ normal, lacking float64 }{
	Dark: {0.14, 0.08}, Light: {0.135, 0.078}, Sun: {0.14, 0.08}, Night: {0.078, 0.049},
}

func TestNoColourHasTwoMeanings(t *testing.T) {
	for l := range Count {
		table := Look(l).Table()
		for s, sight := range sights {
			bound := least[l].lacking
			if sight.name == "normal" {
				bound = least[l].normal
			}
			closest, pair := apart(table, sight, s == 0)
			t.Logf("%s, %s: %.3f, %s", Look(l), sight.name, closest, pair)
			assert.GreaterOrEqual(t, closest, bound, "%s, %s: %s", Look(l), sight.name, pair)
		}
	}
}

// pairs are the colours of two meanings that may stand for each other: marks for marks, faces for faces, and with crossed, either for
// the other.
func pairs(t *Table, one, other meaning, crossed bool) (all [][2]int) {
	marks := func(m meaning) (of []int) {
		for _, k := range m.marks {
			of = append(of, t.Marks[k].RGB)
		}
		return of
	}
	faces := func(m meaning) (of []int) {
		for _, k := range m.faces {
			of = append(of, t.Faces[k])
		}
		return of
	}
	add := func(a, b []int) {
		for _, x := range a {
			for _, y := range b {
				all = append(all, [2]int{x, y})
			}
		}
	}
	add(marks(one), marks(other))
	add(faces(one), faces(other))
	if crossed {
		add(marks(one), faces(other))
		add(faces(one), marks(other))
	}
	return all
}

// What is written can be read, and what is drawn and means something is seen: by WCAG 2.1 on the paper and on the bare floor.
func TestContrast(t *testing.T) {
	quiet := []Mark{Grid, Wheels} // only for the eye to find its way: nothing of them must be seen
	soft := []Face{NoFace, FloorFace, NoseFace, LittleRoomFace, FairRoomFace, MuchRoomFace}
	for l := range Count {
		table := Look(l).Table()
		words, drawn := 99.0, 99.0
		for name, c := range texts(table) {
			words = min(words, Contrast(c.RGB, table.Paper.RGB))
			assert.GreaterOrEqual(t, Contrast(c.RGB, table.Paper.RGB), Readable, "%s: words, %s", Look(l), name)
		}
		for _, ground := range []int{table.Paper.RGB, table.Faces[FloorFace]} {
			for m := range Mark(Marks) {
				if !slices.Contains(quiet, m) {
					drawn = min(drawn, Contrast(table.Marks[m].RGB, ground))
					assert.GreaterOrEqual(t, Contrast(table.Marks[m].RGB, ground), float64(Visible), "%s: mark %d", Look(l), m)
				}
			}
			for f := range Face(Faces) {
				if !slices.Contains(soft, f) {
					drawn = min(drawn, Contrast(table.Faces[f], ground))
					assert.GreaterOrEqual(t, Contrast(table.Faces[f], ground), float64(Visible), "%s: face %d", Look(l), f)
				}
			}
			for g := scene.DoubtfulRoom; g <= scene.MuchRoom; g++ {
				assert.GreaterOrEqual(t, Contrast(table.Rooms[g].RGB, ground), float64(Visible), "%s: room %d", Look(l), g)
			}
		}
		for f := range Face(Faces) { // a word on any face is, at worst, in the look's last ink
			assert.GreaterOrEqual(t, Contrast(table.Farther(table.Faces[f]), table.Faces[f]), Readable, "%s: words on face %d", Look(l), f)
		}
		t.Logf("%s: words %.1f, marks and faces %.1f", Look(l), words, drawn)
	}
}

func texts(t *Table) map[string]Colour {
	return map[string]Colour{
		"ink": t.Ink, "faint": t.Text.Faint, "title": t.Text.Title, "key": t.Text.Key, "field": t.Text.Field, "foul": t.Text.Foul,
		"doubtful": t.Text.Doubtful, "clear": t.Text.Clear,
	}
}

// The verdicts' words, too, are told apart by every eye.
func TestVerdictsAreToldApartInWords(t *testing.T) {
	for l := range Count {
		text := Look(l).Table().Text
		for _, sight := range sights {
			for _, p := range [][2]Colour{{text.Foul, text.Doubtful}, {text.Foul, text.Clear}, {text.Doubtful, text.Clear}} {
				d := seen(p[0].RGB, sight).DistanceCIEDE2000(seen(p[1].RGB, sight))
				assert.GreaterOrEqual(t, d, least[l].lacking, "%s, %s: %06x %06x", Look(l), sight.name, p[0].RGB, p[1].RGB)
			}
		}
	}
}

// The room there is is told by steps of lightness that grow away from the bare floor.
func TestMoreRoomIsFartherFromTheFloor(t *testing.T) {
	for l := range Count {
		table, last := Look(l).Table(), 1.0
		for _, f := range []Face{LittleRoomFace, FairRoomFace, MuchRoomFace} {
			c := Contrast(table.Faces[f], table.Faces[FloorFace])
			assert.Greater(t, c, last*1.1, "%s: face %d", Look(l), f)
			last = c
		}
	}
}

// Eyes that have to see in the dark afterwards meet nothing bright, and red before green before blue.
func TestNightIsDimAndRed(t *testing.T) {
	all := []int{night.Last[0], night.Last[1], night.Paper.RGB}
	all = append(all, night.Faces[1:]...)
	for _, c := range texts(&night) {
		all = append(all, c.RGB)
	}
	for _, c := range night.Marks {
		all = append(all, c.RGB)
	}
	for _, c := range night.Rooms[scene.DoubtfulRoom:] {
		all = append(all, c.RGB)
	}
	for _, c := range all {
		r, g, b := c>>16&255, c>>8&255, c&255
		assert.True(t, r >= g && g >= b && b <= 0x66, "%06x", c)
		assert.LessOrEqual(t, Luminance(c), 0.5, "%06x", c)
	}
	for _, c := range night.Marks {
		assert.NotContains(t, []uint8{7, 15, 4, 12, 6, 14}, c.Of, "neither white nor blue among sixteen")
	}
}

func TestSunIsBlackAndStrongOnWhite(t *testing.T) {
	assert.Equal(t, 1.0, Luminance(sun.Paper.RGB))
	assert.Zero(t, Luminance(sun.Ink.RGB))
	for name, c := range texts(&sun) {
		assert.GreaterOrEqual(t, Contrast(c.RGB, sun.Paper.RGB), 7.0, "%s: WCAG 2.1, success criterion 1.4.6", name)
	}
}

func TestNamesComeBack(t *testing.T) {
	at := Dark
	for _, name := range Names() {
		l, ok := Parse(name)
		require.True(t, ok)
		assert.Equal(t, at, l)
		assert.Equal(t, name, l.String())
		at = at.Next()
	}
	assert.Equal(t, Dark, at, "the last goes on to the first")
	_, ok := Parse("pink")
	assert.False(t, ok)
}

// Contrast against values that WCAG 2.1's own explanations give: black on white 21, #767676 on white 4.54 (from memory).
func TestContrastIsThePublishedOne(t *testing.T) {
	assert.InDelta(t, 21, Contrast(0, 0xffffff), 1e-9)
	assert.InDelta(t, 1, Contrast(0x123456, 0x123456), 1e-9)
	assert.InDelta(t, 4.54, Contrast(0x767676, 0xffffff), 0.005)
}

// The library's difference against pairs of Sharma, Wu, Dalal: The CIEDE2000 color-difference formula, 2005, table 1 (from memory).
func TestTheColourDifferenceIsThePublishedOne(t *testing.T) {
	for _, c := range []struct{ l1, a1, b1, l2, a2, b2, want float64 }{
		{50, 2.6772, -79.7751, 50, 0, -82.7485, 2.0425},
		{50, -1.3802, -84.2814, 50, 0, -82.7485, 1},
		{50, 2.5, 0, 73, 25, -18, 27.1492},
		{60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644},
		{2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082},
	} {
		a, b := colorful.Lab(c.l1/100, c.a1/100, c.b1/100), colorful.Lab(c.l2/100, c.a2/100, c.b2/100)
		assert.InDelta(t, c.want, 100*a.DistanceCIEDE2000(b), 1e-4)
	}
}

func TestADressedPictureKeepsItsTextAndItsGround(t *testing.T) {
	assert.Equal(t, "a\nb", Dress("a\nb", ""), "no ground of its own")
	assert.Equal(t, "\x1b[0;30;107ma\x1b[1mb\x1b[0;30;107mc\x1b[0;30;107m\x1b[1md\x1b[0m\n\x1b[0;30;107me\x1b[0m",
		Dress("a\x1b[1mb\x1b[mc\x1b[0;1md\x1b[0m\ne", "30;107"))
	const whole = "\x1b[0;1;38;2;1;2;3;48;2;4;5;6ma"
	assert.Equal(t, "\x1b[0;38;2;9;9;9;48;2;8;8;8m"+whole+"\x1b[0m", Dress(whole, "38;2;9;9;9;48;2;8;8;8"), "what sets both needs nothing beneath")
	assert.Equal(t, "\x1b[0;30;107m\x1b[0;30;107m\x1b[38;2;48;56;64ma\x1b[0m", Dress("\x1b[0;38;2;48;56;64ma", "30;107"), "48 is the ink's red")
}

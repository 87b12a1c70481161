package looks

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

// leastOfCube is least for 256 colours, of which there are few to choose from.
var leastOfCube = [Count]struct{ normal, lacking float64 }{
	Dark: {0.125, 0.07}, Light: {0.125, 0.07}, Sun: {0.14, 0.07}, Night: {0.07, 0.04},
}

func TestEachOf256ColoursIsNearestToItself(t *testing.T) {
	assert.Equal(t, []int{0, 0x00005f, 0xffffff, 0x080808, 0xeeeeee}, []int{InCube(16), InCube(17), InCube(231), InCube(232), InCube(255)})
	for n := firstOfCube; n <= lastGrey; n++ {
		assert.Equal(t, InCube(uint8(n)), InCube(Nearest(InCube(uint8(n)))))
	}
}

// With 256 colours, too, none says two things, and the floor's room goes by steps away from the bare floor.
func TestNoColourOf256HasTwoMeanings(t *testing.T) {
	for l := range Count {
		table := Look(l).InCube()
		for s, sight := range sights {
			bound := leastOfCube[l].lacking
			if s == 0 {
				bound = leastOfCube[l].normal
			}
			closest, pair := apart(table, sight, s == 0)
			t.Logf("%s, %s: %.3f, %s", Look(l), sight.name, closest, pair)
			assert.GreaterOrEqual(t, closest, bound, "%s, %s: %s", Look(l), sight.name, pair)
		}
		last := table.Faces[FloorFace]
		for _, f := range []Face{LittleRoomFace, FairRoomFace, MuchRoomFace} {
			assert.Greater(t, Contrast(table.Faces[f], table.Faces[FloorFace]), Contrast(last, table.Faces[FloorFace]), "%s: face %d", Look(l), f)
			last = table.Faces[f]
		}
	}
}

// apart is how far apart the two colours are that are nearest to each other and say different things, and which those are.
func apart(table *Table, sight sight, crossed bool) (closest float64, pair string) {
	closest = 1
	for i, one := range meanings {
		for _, other := range meanings[i+1:] {
			for _, p := range pairs(table, one, other, crossed) {
				if d := seen(p[0], sight).DistanceCIEDE2000(seen(p[1], sight)); d < closest {
					closest, pair = d, fmt.Sprintf("%s %06x, %s %06x", one.says, p[0], other.says, p[1])
				}
			}
		}
	}
	return closest, pair
}

// What is drawn and means something is seen with 256 colours, too.
func TestContrastOf256Colours(t *testing.T) {
	for l := range Count {
		table := Look(l).Table()
		cube := Look(l).InCube()
		for _, ground := range []int{table.Paper.RGB, cube.Faces[FloorFace]} {
			for i, m := range meanings {
				for _, k := range m.marks {
					assert.GreaterOrEqual(t, Contrast(cube.Marks[k].RGB, ground), float64(Visible), "%s: %s", Look(l), m.says)
				}
				for _, f := range m.faces {
					if i != 2 { // the floor's room is soft, and goes by steps
						assert.GreaterOrEqual(t, Contrast(cube.Faces[f], ground), float64(Visible), "%s: face, %s", Look(l), m.says)
					}
				}
			}
		}
	}
}

// A name of what is foul keeps its colour on the bare floor, with 256 colours, too: what can't be read there is written in black or white.
func TestFoulNamesKeepTheirColourOf256(t *testing.T) {
	for l := range Count {
		cube := Look(l).InCube()
		assert.GreaterOrEqual(t, Contrast(cube.Marks[Foul].RGB, cube.Faces[FloorFace]), Readable, "%s", Look(l))
	}
}

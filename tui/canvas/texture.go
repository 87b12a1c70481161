package canvas

import "bench.example/undermark/geometry/scene"

// The textures of what hangs below the floor: what a thing is shows without colour, too. All repeat every 8 dots.
func hatched(x, y int) bool   { return (x+y)&3 == 0 }
func lined(x, y int) bool     { return y&3 == 1 }
func chequered(x, y int) bool { return (x+y)&1 == 0 }
func crowded(x, y int) bool   { return (x+y)&1 == 0 || y&1 == 0 }
func speckled(x, y int) bool  { return x&3 == 0 && y&3 == 0 || x&3 == 2 && y&3 == 2 }

func full(x, y int) bool { return true }

// Broken lines. Whatever way a line runs it shows some of each.
func dashed(x, y int) bool { return (x+2*y)&7 < 5 }
func dotted(x, y int) bool { return (x+2*y)&3 == 0 }
func dashDot(x, y int) bool {
	at := (x + 2*y) & 7
	return at < 5 || at == 6
}

// fills and lines are the textures of a pen's fill and of its line. What is filled whole has none: it is drawn with the
// lines, over the areas.
var (
	fills = [scene.Filled + 1]texture{scene.Hatched: hatched, scene.Lined: lined, scene.Chequered: chequered, scene.Speckled: speckled, scene.Dense: crowded}
	lines = [...]texture{scene.Whole: full, scene.Dashed: dashed, scene.Dotted: dotted, scene.DashDot: dashDot}
)

// textureInk is the ink of a role's texture on its face. A tank has none of the colour of pipes.
func textureInk(role scene.Role) Ink {
	if role == scene.Lines {
		role = scene.Bumper
	}
	return Ink{Role: role, Tone: Faint}
}

// fabric is the textures as they lie on one picture.
type fabric struct {
	fills [len(fills)]ink
	lines [len(lines)]ink
}

func newFabric(m *Map) (f fabric) {
	for i, t := range fills {
		if t != nil {
			f.fills[i] = weave(t, m.shiftX, m.shift)
		}
	}
	for i, t := range lines {
		f.lines[i] = weave(t, m.shiftX, m.shift)
	}
	return f
}

package canvas

import "bench.example/undermark/geometry/scene"

// The textures of what hangs below the floor: what a thing is shows without colour, too. All repeat every 8 dots.
func hatched(x, y int) bool   { return (x+y)&3 == 0 }
func lined(x, y int) bool     { return y&3 == 1 }
func chequered(x, y int) bool { return (x+y)&1 == 0 }
func speckled(x, y int) bool  { return x&3 == 0 && y&3 == 0 || x&3 == 2 && y&3 == 2 }

func full(x, y int) bool { return true }

// Broken lines: dashed is behind the floor, dotted is not measured, long is the intake. Whatever way a line runs it
// shows some of each.
func dashed(x, y int) bool { return (x+2*y)&7 < 5 }
func dotted(x, y int) bool { return (x+2*y)&3 == 0 }

// filling is the texture inside an area of a role, if it has one.
func filling(r scene.Role) (t texture, ok bool) {
	switch r {
	case scene.Steel:
		return hatched, true
	case scene.Lines:
		return lined, true
	case scene.Hot:
		return chequered, true
	case scene.Movable:
		return speckled, true
	}
	return nil, false
}

// solid says whether a role is drawn filled.
func solid(r scene.Role) bool { return r == scene.Exhaust || r == scene.Muffler }

// lining is the texture of an item's line, hidden by the floor or not.
func lining(it *scene.Item, hidden bool) texture {
	switch {
	case it.Unsure:
		return dotted
	case hidden, it.Dashed, it.Role == scene.Space, it.Role == scene.Intake:
		return dashed
	case it.Role == scene.Fuel:
		return dotted
	}
	return full
}

// weight says which of the things in a cell gives it its colour, and how much a label would hide there.
func weight(r scene.Role) uint8 {
	switch r {
	case scene.Floor, scene.Wheel, scene.Fitting:
		return 2
	case scene.Steel, scene.Lines, scene.Hot, scene.Movable:
		return 3
	case scene.Space, scene.Body, scene.Plate, scene.Opening:
		return 4
	case scene.Fuel, scene.Intake, scene.Exhaust, scene.Muffler:
		return 5
	case scene.Dimension:
		return 6
	case scene.Cut, scene.CutCentre, scene.Pilot:
		return 8
	}
	return 7
}

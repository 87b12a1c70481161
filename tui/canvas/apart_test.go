package canvas

import (
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
)

// cellsOf are the cells that a text takes.
func cellsOf(w Text) (cells [][2]int) {
	for i := range utf8.RuneCountInString(w.Name + w.Tail) {
		if w.down {
			cells = append(cells, [2]int{w.Col, w.Row + i})
		} else {
			cells = append(cells, [2]int{w.Col + i, w.Row})
		}
	}
	return cells
}

// drawnVan is a van in a picture of any size, seen from anywhere, its cut anywhere.
func drawnVan(t *rapid.T) (Canvas, scene.Scene) {
	s := van(scene.View(rapid.IntRange(0, 1).Draw(t, "view")))
	if rapid.Bool().Draw(t, "crowded") {
		s = crowdedVan()
	}
	look := plainLook
	look.Codes, look.Faces = rapid.Bool().Draw(t, "codes"), rapid.Bool().Draw(t, "faces")
	if !rapid.Bool().Draw(t, "whole") {
		look.Camera = desk.Camera{
			Middle: pt(rapid.Float64Range(0, 3200).Draw(t, "x"), rapid.Float64Range(-800, 800).Draw(t, "y")), Scale: rapid.Float64Range(0.5, 12).Draw(t, "scale"),
		}
	}
	w, h := rapid.IntRange(MinWidth, 170).Draw(t, "w"), rapid.IntRange(MinHeight, 50).Draw(t, "h")
	return Paint(s, w, h, look), s
}

// Whatever is drawn at whatever size, no name runs into another: between two in a row there is a blank, and none lies on another.
func TestNamesNeverTouch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, _ := drawnVan(t)
		of := map[[2]int]int{}
		for i, text := range c.Texts {
			for _, cell := range cellsOf(text) {
				for _, by := range []int{-1, 0, 1} {
					if by != 0 && text.down {
						continue
					}
					other, there := of[[2]int{cell[0] + by, cell[1]}]
					require.False(t, there && other != i+1 && other != 0, "%q and %q", text.Name, c.Texts[max(0, other-1)].Name)
				}
			}
			for _, cell := range cellsOf(text) {
				of[cell] = i + 1
			}
		}
	})
}

// The heater's exhaust is one line from its stub to its end: wherever it is in the picture its cells hang together, the ring and names that
// lie over it aside.
func TestTheHeatersExhaustIsOneLine(t *testing.T) {
	for _, size := range [][2]int{{60, 9}, {60, 17}, {100, 27}, {160, 47}} {
		for _, faces := range []bool{false, true} {
			for _, view := range []scene.View{scene.Below, scene.Above} {
				look := plainLook
				look.Faces = faces
				c := Paint(van(view), size[0], size[1], look)
				cells := map[[2]int]bool{}
				over := map[[2]int]bool{}
				for i, cell := range c.Cells {
					at := [2]int{i % c.Width, i / c.Width}
					cells[at] = ofExhaust(cell)
					switch cell.Ink.Role {
					case scene.Cut, scene.CutCentre, scene.Dimension, scene.Conflict, scene.Hole, scene.Plate:
						over[at] = true
					}
				}
				for _, text := range c.Texts {
					for _, cell := range cellsOf(text) {
						over[cell] = true
					}
				}
				require.Equal(t, 1, clumps(cells, over), "%v, faces %v\n%s", size, faces, c.Encode(desk.NoColour, looks.Dark))
			}
		}
	}
}

// ofExhaust tells whether a cell shows the heater's exhaust: its line, its face, or its face behind a line.
func ofExhaust(cell Cell) bool {
	shows := cell.Ink.Role
	for _, face := range []Ground{cell.Ground, cell.Ink.Face} {
		if face.Set && (face.Role == scene.Exhaust || face.Role == scene.Muffler) {
			return true
		}
	}
	return shows == scene.Exhaust || shows == scene.Muffler || shows == scene.Outlet
}

// clumps are how many parts cells fall into that don't hang together, through those that something lies over.
func clumps(cells, over map[[2]int]bool) (n int) {
	seen := map[[2]int]bool{}
	var fill func(at [2]int)
	fill = func(at [2]int) {
		if seen[at] || !cells[at] && !over[at] {
			return
		}
		seen[at] = true
		for dx := -1; dx <= 1; dx++ {
			for dy := -1; dy <= 1; dy++ {
				fill([2]int{at[0] + dx, at[1] + dy})
			}
		}
	}
	for at := range cells {
		if cells[at] && !seen[at] {
			n++
			fill(at)
		}
	}
	return n
}

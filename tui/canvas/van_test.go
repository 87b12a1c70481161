package canvas

import (
	"testing"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
)

var plainLook = Look{Left: "left", Right: "right"}

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

func box(x0, x1, y0, y1 float64) geometry.Footprint {
	return geometry.NewRectangle(pt(x0, y0), pt(x1, y1), 0)
}

// flat is what a footprint is in space, for pictures that show no heights.
func flat(f geometry.Footprint) scene.Solid { return scene.Upright(f, 0, 0) }

// way is the path from place to place.
func way(places ...geometry.Point) scene.Path {
	var path []geometry.Point3
	for _, p := range places {
		path = append(path, p.At(0))
	}
	return scene.Straight(path...)
}

func line(across float64, path ...geometry.Point) geometry.Footprint {
	return geometry.NewLine(path, across/2)
}

// van is the underside of the travelling tool library's long-wheelbase van.
func van(view scene.View) scene.Scene {
	cut := pt(1210, 240)
	area := func(r scene.Role, name, code string, f geometry.Footprint) scene.Item {
		return scene.Item{Role: r, Label: name, Code: code, Solid: flat(f)}
	}
	items := []scene.Item{
		area(scene.Floor, "", "", box(40, 3240, -890, 890)),
		area(scene.Movable, "spare wheel", "S", geometry.NewRound(pt(420, 0), 345)),
		area(scene.Lines, "fuel tank", "FT", box(1900, 2600, 280, 760)),
		area(scene.Hot, "silencer", "E", box(1800, 2450, -420, -180)),
		area(scene.Steel, "left rail", "R", box(200, 3200, 480, 560)),
		area(scene.Steel, "right rail", "R", box(200, 3200, -560, -480)),
		area(scene.Steel, "rear crossmember", "C", box(800, 884, -850, 850)),
		area(scene.Steel, "middle crossmember", "C", box(1560, 1640, -850, 850)),
		area(scene.Steel, "front crossmember", "C", box(2760, 2840, -850, 850)),
		area(scene.Movable, "driveshaft", "D", line(90, pt(900, -60), pt(3240, -40))),
		area(scene.Hot, "tail pipe", "E", line(55, pt(40, -720), pt(900, -720), pt(1200, -300), pt(1800, -300))),
		area(scene.Lines, "brake pipe, right", "B", line(8, pt(300, -410), pt(1500, -410), pt(2400, -590), pt(3240, -600))),
		area(scene.Lines, "loom", "W", line(20, pt(60, 700), pt(1300, 690), pt(1700, 350), pt(3240, 330))),
	}
	items[11].State, items[11].Selected = scene.Doubtful, false
	items[12].State, items[12].Unsure = scene.Doubtful, true
	items[6].State = scene.Foul
	items = append(items,
		scene.Item{Role: scene.Wheel, Primitive: scene.Outline, Solid: flat(box(555, 1245, 672, 888))},
		scene.Item{Role: scene.Wheel, Primitive: scene.Outline, Solid: flat(box(555, 1245, -888, -672))},
		scene.Item{Role: scene.Opening, Primitive: scene.Stroke, Path: way(pt(1900, -890), pt(3000, -890)), Label: "sliding door"},
		scene.Item{Role: scene.Space, Primitive: scene.Outline, Solid: flat(box(1210-310, 1210+360, 130, 350))},
		scene.Item{Role: scene.Body, Primitive: scene.Outline, Solid: flat(box(1050, 1370, 178, 302))},
		scene.Item{Role: scene.Plate, Primitive: scene.Outline, Solid: flat(box(1115, 1305, 165, 315))},
		scene.Item{Role: scene.Exhaust, Solid: flat(line(26, pt(1245, 265), pt(1100, 620), pt(950, 630), pt(300, 640), pt(0, 700))), Label: "exhaust"},
		scene.Item{Role: scene.Muffler, Solid: flat(box(480, 660, 600, 668)), Label: "muffler"},
		scene.Item{Role: scene.Intake, Solid: flat(line(28, pt(1175, 265), pt(1400, 430), pt(1700, 440)))},
		scene.Item{Role: scene.Fuel, Solid: flat(line(5, pt(2100, 300), pt(1450, 100), pt(1210, 205)))},
		scene.Item{Role: scene.Dimension, Primitive: scene.Stroke, Path: way(pt(1160, 201), pt(884, 120)), Measure: &scene.Measure{Value: 288, Unit: scene.MM, Bare: true}, State: scene.Foul},
		scene.Item{Role: scene.Outlet, Primitive: scene.Spot, At: pt(0, 700).At(0)},
		scene.Item{Role: scene.Mouth, Primitive: scene.Spot, At: pt(1700, 440).At(0)},
		scene.Item{Role: scene.Tie, Primitive: scene.Spot, At: pt(1458, 570).At(0)},
		scene.Item{Role: scene.Cut, Primitive: scene.Outline, Solid: flat(geometry.NewRound(cut, 63.5)), Label: "cut"},
		scene.Item{Role: scene.CutCentre, Primitive: scene.Spot, At: cut.At(0)},
	)
	return scene.Scene{Projection: view.Projection(), Min: pt(-40, -920), Max: pt(3280, 920), Grid: 100, Items: items}
}

func crowdedVan() scene.Scene {
	s := van(scene.Below)
	for i := range 48 {
		x, y := 150+float64(i%12)*250, -800+float64(i/12)*420
		f := box(x, x+120, y, y+90)
		if i%3 == 0 {
			f = line(10, pt(x, y), pt(x+300, y+40), pt(x+600, y-60))
		}
		s.Items = append(s.Items, scene.Item{Role: scene.Steel + scene.Role(i%4), Code: "X", Label: "a thing there", Solid: flat(f)})
	}
	return s
}

// A picture must be painted within a small part of the 8 ms between two frames.
func BenchmarkPaint(b *testing.B) {
	s := crowdedVan()
	for b.Loop() {
		Paint(s, 160, 47, plainLook)
	}
}

func BenchmarkEncode(b *testing.B) {
	p := Paint(van(scene.Below), 160, 47, plainLook)
	for b.Loop() {
		p.Encode(desk.TrueColour, looks.Dark)
	}
}

package rules

import (
	"fmt"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

func at(v float64) survey.Reading { return survey.FromNumber(v, false) }

// box is an obstruction of a kind by its edges, with its drop measured.
func box(name, kind string, near, far, right, left, top, bottom float64) vehicles.Obstruction {
	return vehicles.Obstruction{
		Name: name, Kind: kind, Measured: true, Drop: vehicles.Span{From: top, To: bottom, Set: true},
		Place: vehicles.Place{X: vehicles.Pair{at(near), at(far)}, Y: vehicles.Pair{at(right), at(left)}},
	}
}

func opening(name, kind string, x, y float64) vehicles.Opening {
	return vehicles.Opening{Name: name, Kind: kind, Drop: vehicles.Span{From: -900, To: -20, Set: true}, Place: vehicles.Place{
		Shape: vehicles.Piped, Path: []vehicles.Pair{{at(x), at(y)}, {at(x + 100), at(y)}},
	}}
}

// tidy is a job with something of every kind, that no built-in rule finds fault with.
func tidy() vehicles.Job {
	heater, _ := vehicles.HeaterClass("2 kW")
	job := vehicles.Job{
		Ref:    "TL-07",
		Floor:  vehicles.Floor{From: 40, Length: 3200, Width: 1780, Thickness: 31, Ground: 460, Deck: vehicles.Steel, Layers: vehicles.NoLayers},
		Heater: &heater,
		Cut:    &vehicles.Cut{At: [2]float64{1210, 240}, Across: 127},
		Fittings: []vehicles.Fitting{{
			Name: "battery box", Rise: vehicles.Span{From: 0, To: 400, Set: true},
			Place: vehicles.Place{X: vehicles.Pair{at(1900), at(2300)}, Y: vehicles.Pair{at(300), at(840)}},
		}},
		Ties: []vehicles.Tie{
			{Name: "bolt", Use: true, Below: vehicles.Pair{at(400), at(-500)}, Above: vehicles.Pair{at(400), at(-500)}},
			{Name: "eye", Use: true, Below: vehicles.Pair{at(2800), at(600)}, Above: vehicles.Pair{at(2801), at(600)}},
		},
		Exhaust: &vehicles.Run{
			Across: 26, Bend: vehicles.Some(60),
			Path:    []vehicles.RunPoint{{X: 1245, Y: 265, Drop: 150}, {X: 1245, Y: 500, Drop: 160}, {X: 1245, Y: 900, Drop: 165}},
			Hanging: vehicles.Hanging{Muffler: &vehicles.Muffler{Leg: 3, Start: 100, Length: 180, Across: 68}, Clips: []float64{200, 690}},
		},
		Intake: &vehicles.Run{
			Across: 28, Bend: vehicles.Some(60),
			Path: []vehicles.RunPoint{{X: 1175, Y: 265, Drop: 120}, {X: 1175, Y: -700, Drop: 120}},
		},
		Fuel: &vehicles.Run{
			Across: 4.5, Supply: vehicles.Supply{Kind: "diesel"},
			Path:    []vehicles.RunPoint{{X: 2600, Y: -500, Drop: 60}, {X: 1500, Y: -300, Drop: 60}, {X: 1210, Y: 205, Drop: 45}},
			Hanging: vehicles.Hanging{Pump: &vehicles.Pump{Leg: 1, Start: 200, Tilt: 30}},
		},
		Rules: map[string]float64{"fuel.suction": 1000, "fuel.delivery": 3000},
	}
	for i, kind := range vehicles.Kinds {
		x, y := 100+100*float64(i%5), -800+300*float64(i/5)
		job.Obstructions = append(job.Obstructions, box(fmt.Sprint("a ", kind), kind, x, x+60, y, y+100, 0, 60))
	}
	job.Obstructions[0].X[1] = survey.Reading{Text: "+60", Start: survey.On, Length: 60}
	job.Obstructions[0].Total[0] = at(160)
	for i, kind := range vehicles.OpeningKinds {
		job.Openings = append(job.Openings, opening("a "+kind, kind, 2800+10*float64(i), -890))
	}
	return job
}

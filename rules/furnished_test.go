package rules

import (
	"fmt"
	"math"
	"math/rand/v2"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// furnishing is a kind of floor to seek a place for a turning heater on.
type furnishing struct {
	floor    vehicles.Floor // that of a usual van when it has no length
	name     string
	tight    float64  // what the cut keeps from things below, mm; negative: as the book has it
	fittings int      // strewn over the floor
	low      bool     // most of them hang just above the heater
	size     float64  // of a fitting, mm
	class    string   // of the heater
	roof     float64  // rise of a shelf over all the floor; 0 for none
	aisles   int      // rows of cabinets across the van
	forms    []string // of the fittings: "box", "turned", "disc", "pipe"
}

// furnishings are the shapes that took the search longest, and everyday ones.
var furnishings = []furnishing{
	{name: "everyday", tight: -1, fittings: 6, size: 500, class: "2 kW", forms: []string{"box"}},
	{name: "bare", tight: 0, class: "2 kW"},
	{name: "shelf", tight: 0, fittings: 8, size: 300, class: "2 kW", roof: 260, forms: []string{"box"}},
	{name: "aisles", tight: 0, fittings: 4, size: 200, class: "2 kW", aisles: 5, forms: []string{"box"}},
	{name: "strewn", tight: 0, fittings: 24, size: 120, class: "2 kW", forms: []string{"box", "turned", "disc", "pipe"}},
	{name: "crammed", tight: 0, fittings: 60, size: 120, class: "2 kW", forms: []string{"box", "turned", "disc", "pipe"}},
	{name: "overhead", tight: 0, fittings: 60, size: 300, low: true, class: "2 kW", forms: []string{"box", "turned"}},
	{name: "large", tight: 0, fittings: 24, size: 160, class: "8 kW", forms: []string{"turned", "pipe"}},
	{name: "no headroom", tight: 0, class: "8 kW", roof: 300, aisles: 1},
	{name: "10 mm headroom", tight: -1, fittings: 5, size: 120, class: "4 kW", roof: 230, aisles: 3, forms: []string{"box"}},
}

// furnished is a job with n obstructions strewn over the floor, fittings above it and a heater, the same for the same seed.
func furnished(f furnishing, n int, seed uint64) vehicles.Job {
	r := rand.New(rand.NewPCG(seed, uint64(n)))
	job := crowded(n, false)
	heater, _ := vehicles.HeaterClass(f.class)
	job.Ref, job.Heater, job.Cut, job.Obstructions = f.name, &heater, nil, nil
	if f.floor.Length > 0 {
		job.Floor = f.floor
	}
	for i := range n {
		o := vehicles.Obstruction{Name: fmt.Sprint("thing ", i), Kind: vehicles.Kinds[i%len(vehicles.Kinds)], Measured: true}
		o.Drop = vehicles.Span{From: 30 * r.Float64(), To: 100 + 100*r.Float64(), Set: true}
		o.Place = laid(r, &job.Floor, math.Sqrt(job.Floor.Length*job.Floor.Width/float64(n))/5, []string{"box", "turned", "box", "pipe"}[i%4])
		job.Obstructions = append(job.Obstructions, o)
	}
	for i := range f.fittings {
		t := vehicles.Fitting{Name: fmt.Sprint("fitting ", i), Rise: vehicles.Span{To: 300 + 500*r.Float64(), Set: true}}
		t.Place = laid(r, &job.Floor, f.size, f.forms[i%len(f.forms)])
		if f.low && i%8 != 0 {
			t.Rise.From = tenths(180 + 120*r.Float64())
		}
		t.Rise.To = tenths(max(t.Rise.To, t.Rise.From))
		job.Fittings = append(job.Fittings, t)
	}
	for i := range f.aisles {
		x := 300 + float64(i)*600
		job.Fittings = append(job.Fittings, fitting(fmt.Sprint("cabinet ", i), [4]float64{x, -700, x + 40, 700}, 0, 900))
	}
	if f.roof > 0 {
		job.Fittings = append(job.Fittings, fitting("shelf", [4]float64{110, -950, 3400, 950}, f.roof, f.roof+30))
	}
	if f.tight >= 0 {
		job.Rules = map[string]float64{"cut.clearance": f.tight, "cut.on-floor": 0}
		for _, kind := range vehicles.Kinds {
			job.Rules["cut.clearance."+kind] = f.tight
		}
	}
	return job
}

// fitting is a box on the floor or above it: low x, low y, high x, high y.
func fitting(name string, box [4]float64, from, to float64) vehicles.Fitting {
	f := vehicles.Fitting{Name: name, Rise: vehicles.Span{From: from, To: to, Set: true}}
	f.X = vehicles.Pair{survey.FromNumber(box[0], false), survey.FromNumber(box[2], false)}
	f.Y = vehicles.Pair{survey.FromNumber(box[1], false), survey.FromNumber(box[3], false)}
	return f
}

// laid is a place of a form somewhere on the floor, of about a size.
func laid(r *rand.Rand, floor *vehicles.Floor, size float64, form string) (p vehicles.Place) {
	at := func(v float64) survey.Reading { return survey.FromNumber(tenths(v), false) }
	x, y := floor.From+40+(floor.Length-80)*r.Float64(), (r.Float64()-0.5)*(floor.Width-80)
	across := size * (0.5 + r.Float64())
	switch form {
	case "disc":
		p.Shape, p.Centre, p.Across = vehicles.Disc, vehicles.Pair{at(x), at(y)}, vehicles.Some(tenths(across))
	case "pipe":
		p.Shape, p.Across = vehicles.Piped, vehicles.Some(tenths(8+r.Float64()*12))
		for range 3 {
			p.Path = append(p.Path, vehicles.Pair{at(max(x, 110)), at(y)})
			x, y = x+(r.Float64()-0.5)*4*size, y+(r.Float64()-0.5)*4*size
		}
	default:
		p.X = vehicles.Pair{at(x), at(x + across)}
		p.Y = vehicles.Pair{at(y), at(y + size*(0.5+r.Float64()))}
		if form == "turned" {
			p.Turn = tenths(r.Float64() * 90)
		}
	}
	return p
}

func tenths(v float64) float64 { return math.Round(10*v) / 10 }

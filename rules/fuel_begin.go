package rules

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// beginStep is how far apart the places on a tank's outline are that a line is taken to begin at, mm: a hand's room between two is none.
const beginStep = 20

// usualBegin is where on a tank a usual line begins: of the places on its outline that keep what is asked of the line from all that is beside the
// tank the nearest to the heater's stub. Where none does, clear or as far as is known, it is the nearest of all.
func usualBegin(r *Result, tank int, line vehicles.Run, stub geometry.Point) vehicles.RunPoint {
	places := placesOn(&r.Plan.Obstructions[tank].Prism.Footprint, stub)
	drop := math.Round(-r.Plan.Obstructions[tank].Prism.High) + usualDip
	line.Pump, line.Path = nil, nil
	job := r.Job.WithRun(vehicles.FuelRun, &line)
	j := newJudge(&job, &r.Plan, r.Book)
	for _, bands := range []float64{coverage, 0} {
		t := newTrial(j, vehicles.FuelRun, bands)
		t.rules = []*Rule{fuelKeeps, fullTravel}
		for _, at := range places {
			begin := vehicles.RunPoint{X: at.X, Y: at.Y, Drop: drop}
			line.Path = []vehicles.RunPoint{begin, {X: at.X, Y: at.Y, Drop: drop + beginning}}
			if t.put(&line) && t.short(t.findings(t.rules)) == 0 {
				return begin
			}
		}
	}
	return vehicles.RunPoint{X: places[0].X, Y: places[0].Y, Drop: drop}
}

// placesOn are places on an outline in whole mm, the nearest to a place first: the nearest of all, and others all round it.
func placesOn(f *geometry.Footprint, to geometry.Point) (list []geometry.Point) {
	_, nearest := f.Gap(to)
	list = append(list, nearest)
	switch f.Shape {
	case geometry.Rectangle:
		corners := f.Corners()
		for i, from := range corners {
			side := corners[(i+1)%len(corners)].Sub(from)
			n := math.Ceil(side.Norm() / beginStep)
			for k := range int(n) {
				list = append(list, from.Add(side.Scale(float64(k)/n)))
			}
		}
	case geometry.Round:
		around := math.Ceil(2 * math.Pi * f.Radius / beginStep)
		for n := range int(around) {
			list = append(list, f.Middle.Add(geometry.Point{X: f.Radius}.Turn(float64(n)*360/around)))
		}
	}
	for i := range list {
		list[i] = geometry.Point{X: math.Round(list[i].X), Y: math.Round(list[i].Y)}
	}
	slices.SortStableFunc(list[1:], func(a, b geometry.Point) int { return cmp.Compare(a.Sub(to).Norm(), b.Sub(to).Norm()) })
	return list
}

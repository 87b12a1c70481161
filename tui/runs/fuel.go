package runs

import (
	"cmp"
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// What a fuel line starts with beside the usual, until the fitter says otherwise, mm: common practice, no source.
const (
	fuelBore = 2
	farTank  = 500 // ahead of the stub a line begins that comes from nothing entered
)

// notKnown and none are what stands where nobody knows, and where there is none.
const (
	notKnown = "not known"
	noSource = "nothing entered"
)

func orNotKnown(text string) string { return cmp.Or(text, notKnown) }
func orNone(text string) string     { return cmp.Or(text, noSource) }

// sources are what a fuel line may begin at: the fuel tanks and lines, and what it begins at already.
func sources(j vehicles.Job) (names []string) {
	for _, o := range j.Obstructions {
		if vehicles.HoldsFuel(o.Kind) || j.Fuel != nil && o.Name == j.Fuel.Supply.From {
			names = append(names, o.Name)
		}
	}
	return names
}

// begun is a fuel line from the one tank there is, or from ahead of the stub where there is none or are several, to its stub.
func begun(s desk.State, mouth vehicles.RunPoint) (run vehicles.Run, say string) {
	run = vehicles.UsualRun(vehicles.FuelRun)
	run.Supply.Bore = vehicles.Some(fuelBore)
	start, say := vehicles.RunPoint{X: mouth.X + farTank, Y: mouth.Y, Drop: mouth.Drop}, "Where does it begin? Type its first point, and what it begins at."
	tank := -1
	for i, o := range s.Job.Obstructions {
		if o.Kind == vehicles.FuelTank {
			if tank >= 0 {
				tank = -1
				break
			}
			tank = i
		}
	}
	if tank >= 0 {
		prism := s.Plan.Obstructions[tank].Prism
		_, at := prism.Footprint.Gap(geometry.Point{X: mouth.X, Y: mouth.Y})
		start = vehicles.RunPoint{X: at.X, Y: at.Y, Drop: math.Round(-prism.High) + usualDip}
		run.Supply.From = s.Job.Obstructions[tank].Name
		say = "From " + run.Supply.From + " to the heater: move its first point to where it leaves."
	}
	run.Path = vehicles.List[vehicles.RunPoint]{exactly(start), exactly(mouth)}
	u := s.Settings.Units
	taken := fmt.Sprintf("Taken as a line %s across, %s inside: %s changes it. ", desk.Length(run.Across, u), desk.Length(fuelBore, u), keyPipe.Help().Key)
	return run, taken + say
}

// usualDip is how far below a tank's top a line that is begun leaves it, mm: on its shoulder, where lines leave.
const usualDip = 20

// exactly is a point to 0.01 mm that a job may hold.
func exactly(p vehicles.RunPoint) vehicles.RunPoint {
	return held(vehicles.RunPoint{X: moving.Hundredth(p.X), Y: moving.Hundredth(p.Y), Drop: moving.Hundredth(p.Drop)})
}

package rules

import (
	"fmt"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// What a fuel line has that nobody has laid yet, until the fitter says otherwise, mm. common practice, no source
const (
	usualBore = 2
	usualDip  = 20 // below the tank's top: on its shoulder, where lines leave
)

// UsualFuel is the fuel line that a job begins with which has none: the usual one with its pump, from the one fuel tank there is, where
// that is nearest to the heater's stub of the places that a line can begin at, to the stub. It carries what that tank holds, as far as somebody said. ok is false where no tank, or more than one, was entered; the line then has no path.
func UsualFuel(r *Result, stub geometry.Point3) (line vehicles.Run, ok bool) {
	line = vehicles.UsualWhole(vehicles.FuelRun)
	line.Supply.Bore = vehicles.Some(usualBore)
	tanks := fuelTanks(&r.Job)
	if len(tanks) != 1 {
		return line, false
	}
	line.Supply.From, line.Supply.Kind = r.Job.Obstructions[tanks[0]].Name, r.Job.Obstructions[tanks[0]].Holds
	line.Path = vehicles.List[vehicles.RunPoint]{
		usualBegin(r, tanks[0], line, stub.Plan()),
		{X: hundredth(stub.X), Y: hundredth(stub.Y), Drop: hundredth(-stub.Z)},
	}
	return line, true
}

// FuelLacks says what is not known of where a job's fuel line may begin; "" where it is.
func FuelLacks(job *vehicles.Job) string {
	switch n := len(fuelTanks(job)); n {
	case 0:
		return "no fuel tank is entered"
	case 1:
		return ""
	default:
		return fmt.Sprintf("%d fuel tanks are entered", n)
	}
}

// fuelTanks are which of the obstructions are fuel tanks.
func fuelTanks(job *vehicles.Job) (tanks []int) {
	for i := range job.Obstructions {
		if job.Obstructions[i].Is(vehicles.VanTank) {
			tanks = append(tanks, i)
		}
	}
	return tanks
}

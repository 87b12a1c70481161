package vehicles

import "slices"

// RunKind says which of a job's runs is meant.
type RunKind uint8

// The runs of a job.
const (
	ExhaustRun RunKind = iota
	IntakeRun
	FuelRun
)

// RunKinds are all of them, in the order of the file.
var RunKinds = [...]RunKind{ExhaustRun, IntakeRun, FuelRun}

// String is what a run is called: "fuel line".
func (k RunKind) String() string { return [...]string{"exhaust", "intake", "fuel line"}[k] }

// Table is the run's table in the job file, and what its keys begin with.
func (k RunKind) Table() string { return [...]string{"exhaust", "intake", "fuel"}[k] }

// FarEnd is which point of a path of so many is that away from the heater.
func (k RunKind) FarEnd(points int) int {
	if k == FuelRun {
		return 0
	}
	return points - 1
}

// RunPoint is a point of a run: x, y in plan and drop below the floor, mm.
type RunPoint struct{ X, Y, Drop float64 }

// Run is the exhaust or the combustion-air intake, after its stub, or the heater's fuel line, all of it from the tank to
// the stub.
type Run struct {
	Across float64
	Bend   Number // the fuel line has none: its corners are sharp
	Path   List[RunPoint]
	Taped  List[string] // of a run as it was built: what the tape said of each point, "" for one as planned; nil for nothing. The path is what holds
	Hanging
	Shielded Shields // of the exhaust
	Supply   Supply  // of the fuel line
}

// Shields are the obstructions that a shield stands before, by name; All: whatever there is.
type Shields struct {
	All   bool
	Names []string
}

// For tells whether a shield stands before the obstruction of that name.
func (s Shields) For(name string) bool { return s.All || slices.Contains(s.Names, name) }

// Supply is what the fuel line carries, how wide it is inside, where that is taken from and where it passes the floor.
type Supply struct {
	Kind string
	From string // the obstruction that the line begins at; "" for none
	Hole Number // its own hole through the floor, default 12
	Bore Number
	Tank *Tank
}

// Tank is where the fuel is taken from.
type Tank struct {
	At         [2]float64
	Rise, Drop Span
	Litres     Number // what it holds
	// Where its filler and its breather end: TankInside or TankOutside; "" while nobody has said.
	Filler, Breather string
}

// Figures are its numbers that may be left out.
func (t *Tank) Figures() []Figure { return []Figure{{"litres", &t.Litres, AMeasure}} }

// Figures are its numbers that may be left out.
func (s *Supply) Figures() []Figure {
	return []Figure{{"hole", &s.Hole, ASize}, {"bore", &s.Bore, ASize}}
}

// FuelSources are the names of what a fuel line may begin at: what holds fuel, and what it begins at already.
func (j *Job) FuelSources() (names []string) {
	for i := range j.Obstructions {
		if o := &j.Obstructions[i]; o.Is(HoldsFuel) || j.Fuel != nil && o.Name == j.Fuel.Supply.From {
			names = append(names, o.Name)
		}
	}
	return names
}

// Where a tank's filler and breather may end: with the people, or out of their space.
const (
	TankInside  = "inside"
	TankOutside = "outside"
)

// TankEnds are both.
var TankEnds = []string{TankInside, TankOutside}

// Run is the run of a kind, nil when the job has none.
func (j *Job) Run(k RunKind) *Run { return *j.run(k) }

// WithRun puts a run in; nil takes it out.
func (j Job) WithRun(k RunKind, r *Run) Job {
	*j.run(k) = r
	return j
}

func (j *Job) run(k RunKind) **Run { return [...]**Run{&j.Exhaust, &j.Intake, &j.Fuel}[k] }

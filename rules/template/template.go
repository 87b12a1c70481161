// Package template draws what is to be cut and drilled at its true size, on pages that are taped to the floor: the cut with its pilot,
// plate, bolts and stubs. It comes in two faces, one for the floor and its mirror for the underside.
//
// Places are mm from the middle of the cut as the paper has them: X to the right and Y down, the van's front at the top.
package template

import (
	"errors"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// ErrNoCut is returned for a job that has no cut.
var ErrNoCut = errors.New("no cut")

// Face says which side of the floor a page lies on.
type Face uint8

// The faces.
const (
	Above Face = iota // on the floor, the van's left at the left
	Below             // against the underside, seen by whoever lies there: the van's left at the right
)

// Template is what is drawn, before it is parted into pages.
type Template struct {
	Face     Face
	circles  []circle
	plate    []geometry.Point // corners; nil without a heater
	corners  []string         // their names
	warm     geometry.Point   // a step of 1 mm the way the warm air blows; none without a heater
	low, far geometry.Point   // corners of the box that holds all
}

// circle is a hole, or a pipe that comes through one.
type circle struct {
	at     geometry.Point
	across float64
	name   string
	sort   sort
}

// sort says how a circle is drawn.
type sort uint8

const (
	theCut sort = iota
	drilled
	stub // it stands in the cut and is not cut by itself
)

// room is left round what is drawn, mm: names stand there.
const room = 12

// Of returns the templates of a judged job, for above and for below. Once the pilot is drilled they lie round where it was measured
// to be. Holes of the fuel line farther than far mm from the cut's middle are left out: their place is taped. The error is ErrNoCut.
func Of(result *rules.Result) ([2]Template, error) {
	job, plan := &result.Job, &result.Plan
	if job.Cut == nil {
		return [2]Template{}, ErrNoCut
	}
	var both [2]Template
	for face := range both {
		t := &both[face]
		t.Face = Face(face)
		t.hole(theCut, geometry.Point{}, job.Cut.Across, "cut")
		t.pilots(result)
		for i, at := range rules.Bolts(job, plan) {
			t.hole(drilled, t.place(at.Sub(plan.Cut.At)), job.Heater.Bolt, rules.HoleName(rules.ABolt, i))
		}
		for i, at := range rules.FuelHoles(job, plan) {
			if off := at.Sub(plan.Cut.At); off.Norm() <= far {
				t.hole(drilled, t.place(off), job.Fuel.Supply.HoleAcross(), rules.HoleName(rules.AFuelHole, i))
			}
		}
		if job.Heater != nil {
			t.heater(job, plan)
		}
		t.bound()
	}
	return both, nil
}

// pilots are the pilot hole, and the old one where the centre was moved from it. So near that a guide board leads the saw none is drilled anew: the
// lines to the van's sides cross in the centre.
func (t *Template) pilots(result *rules.Result) {
	across := result.Job.Cut.PilotAcross()
	by, beside, moved := rules.OldPilot(result)
	if !moved || beside > rules.NearTheHole {
		t.hole(drilled, geometry.Point{}, across, "pilot")
	}
	if moved && by <= far {
		t.hole(stub, t.place(result.Plan.Cut.Old.Sub(result.Plan.Cut.At)), across, "old pilot")
	}
}

// far is how far from the cut a hole is still drawn, mm: farther off paper is less true than a tape.
const far = 400

// place is where a step from the cut's middle is on the paper.
func (t *Template) place(off geometry.Point) geometry.Point {
	if t.Face == Below {
		return geometry.Point{X: off.Y, Y: -off.X}
	}
	return geometry.Point{X: -off.Y, Y: -off.X}
}

func (t *Template) hole(of sort, at geometry.Point, across float64, name string) {
	t.circles = append(t.circles, circle{at, across, name, of})
}

// heater lays out the plate, the stubs and the way of the warm air.
func (t *Template) heater(job *vehicles.Job, plan *vehicles.Plan) {
	for _, corner := range rules.Plate(*job, *plan).Corners() {
		off := corner.Sub(plan.Cut.At)
		t.plate = append(t.plate, t.place(off))
		t.corners = append(t.corners, cornerName(off))
	}
	t.warm = t.place(geometry.Point{X: 1}.Turn(job.Heater.Yaw))
	for k := vehicles.ExhaustRun; k <= vehicles.FuelRun; k++ {
		mouth, _ := job.Stub(k) // there is one: cut and heater are
		across := vehicles.UsualRun(k).Across
		if run := job.Run(k); run != nil {
			across = run.Across
		}
		t.hole(stub, t.place(mouth.Plan().Sub(plan.Cut.At)), across, k.String())
	}
}

// cornerName says where a corner of the plate lies as the van has it, from the plate's middle.
func cornerName(off geometry.Point) string {
	const aside = 0.25 // of its distance: less is neither
	least := aside * off.Norm()
	var words []string
	switch {
	case off.X > least:
		words = append(words, "front")
	case off.X < -least:
		words = append(words, "rear")
	}
	switch {
	case off.Y > least:
		words = append(words, "left")
	case off.Y < -least:
		words = append(words, "right")
	}
	return strings.Join(words, " ")
}

// bound finds the box that holds all.
func (t *Template) bound() {
	grow := func(at geometry.Point, by float64) {
		t.low = geometry.Point{X: min(t.low.X, at.X-by), Y: min(t.low.Y, at.Y-by)}
		t.far = geometry.Point{X: max(t.far.X, at.X+by), Y: max(t.far.Y, at.Y+by)}
	}
	for _, c := range t.circles {
		grow(c.at, c.across/2+room)
	}
	for _, corner := range t.plate {
		grow(corner, room)
	}
}

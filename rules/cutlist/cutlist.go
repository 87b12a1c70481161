package cutlist

import (
	"cmp"
	"fmt"
	"slices"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// CutFromAndHungWith is what the list tells.
const CutFromAndHungWith = "what the runs are cut from and hung with"

// List is what the runs of a job are made of.
type List struct {
	Pieces []Piece
	Stock  []Stock
	Parts  []Part
	Absent []string // what the job does not hold, or does not say, so that it is not counted
	Source string   // of what is allowed for, and of what the kit holds
}

// Part is something that is counted.
type Part struct {
	Run   vehicles.RunKind
	Of    Thing
	Count int
	Holds int     // how many the usual kit holds
	Each  float64 // of what is cut from a hose how long one is, mm; 0 of what is only counted
}

// Total is how much hose all of them take, mm.
func (p Part) Total() float64 { return float64(p.Count) * p.Each }

// Lacks is how many more are wanted than the kit holds.
func (p Part) Lacks() int { return max(0, p.Count-p.Holds) }

// Of makes the list of a judged job, with what a kit is taken to hold.
func Of(r *rules.Result, kit *Kit) List {
	m := maker{kit: kit, List: List{Source: kit.Source}}
	for _, of := range vehicles.RunKinds {
		run, laid := r.Job.Run(of), r.Plan.Run(of)
		switch {
		case run == nil:
			m.absent("no %s is laid", of)
		case laid == nil:
			m.absent("the %s has no stub to start from: place a cut and choose a heater", of)
		case of == vehicles.ExhaustRun:
			m.exhaust(run, laid)
		case of == vehicles.IntakeRun:
			m.intake(run, laid)
		default:
			m.fuel(run, laid, len(rules.FuelHoles(&r.Job, &r.Plan)))
		}
	}
	for _, s := range kit.Stock {
		m.pack(s.Of)
	}
	return m.List
}

// maker makes a list.
type maker struct {
	List
	kit *Kit
}

func (m *maker) absent(format string, args ...any) {
	m.Absent = append(m.Absent, fmt.Sprintf(format, args...))
}

// count adds parts of a run.
func (m *maker) count(run vehicles.RunKind, of Thing, n int) {
	if n > 0 {
		kit := m.kit.part(of)
		m.Parts = append(m.Parts, Part{run, of, n, kit.Holds, kit.Each})
	}
}

// piece adds a piece of a run between two places along it; joints is at how many of its ends it goes over something.
func (m *maker) piece(p Piece, laid *vehicles.LaidRun, from, to float64, joints int) {
	if to <= from {
		return // nothing between
	}
	p.Bits = bits(&laid.Line, from, to)
	for _, b := range p.Bits {
		p.Developed += b.Length
	}
	p.Cut = p.Developed + float64(joints)*m.kit.Allow.Overlap + 2*m.kit.Allow.Trim
	p.Short = p.Developed < m.kit.Allow.Least
	m.Pieces = append(m.Pieces, p)
}

func (m *maker) exhaust(run *vehicles.Run, laid *vehicles.LaidRun) {
	p := Piece{Run: vehicles.ExhaustRun, Of: ExhaustPipe, Across: run.Across, From: "stub", To: "outlet"}
	m.count(p.Run, ExhaustClamp, 1+m.pieces(p, run, laid, 1))
	m.clips(p.Run, run)
	m.count(p.Run, EndSleeve, 1)
}

func (m *maker) intake(run *vehicles.Run, laid *vehicles.LaidRun) {
	p := Piece{Run: vehicles.IntakeRun, Of: IntakeHose, Across: run.Across, From: "stub", To: "mouth"}
	m.count(p.Run, IntakeClamp, 1+m.pieces(p, run, laid, 1))
	m.clips(p.Run, run)
	m.count(p.Run, EndCap, 1)
}

// fuel is the line: its pieces butt against what they join, within a joint of hose with a clamp on either side.
func (m *maker) fuel(run *vehicles.Run, laid *vehicles.LaidRun, holes int) {
	p := Piece{Run: vehicles.FuelRun, Of: FuelLine, Across: run.Across, From: "tank", To: "heater"}
	joints := 2 + m.pieces(p, run, laid, 0)
	m.count(p.Run, FuelJoint, joints)
	m.count(p.Run, FuelClamp, 2*joints)
	m.clips(p.Run, run)
	m.count(p.Run, Grommet, holes)
}

// pieces are cut off a run before and behind what sits in it, which is counted; over is by how many overlaps a piece is longer at what it
// goes onto, as all but the run's far end do. joined is at how many places more the run is joined for that.
func (m *maker) pieces(p Piece, run *vehicles.Run, laid *vehicles.LaidRun, over int) (joined int) {
	from := 0.0
	for _, in := range inLine(run, laid) {
		piece := p
		piece.To, p.From = in.name, in.name
		m.piece(piece, laid, from, in.from, 2*over)
		from, joined = in.to, joined+2
		m.count(p.Run, Thing(in.counts[p.Run]), 1)
	}
	m.piece(p, laid, from, laid.Line.Length(), over)
	for _, k := range slices.Backward(vehicles.HangingOn(p.Run)) {
		if k.Lacks != "" && !k.Has(run.Hanging) {
			m.absent("%s", k.Lacks)
		}
	}
	return joined
}

// inserted is what sits in a run, which is cut for it.
type inserted struct {
	name     string
	counts   [len(vehicles.RunKinds)]string // by run
	from, to float64                        // mm along it
}

// inLine are what sits in a run, in order along it.
func inLine(run *vehicles.Run, laid *vehicles.LaidRun) (all []inserted) {
	for _, thing := range run.Hanging.OnLegs().Things() {
		if from, to, ok := thing.Along(laid); ok {
			all = append(all, inserted{thing.Name(), thing.Kind.Counts, from, to})
		}
	}
	slices.SortStableFunc(all, func(a, b inserted) int { return cmp.Compare(a.from, b.from) })
	return all
}

func (m *maker) clips(of vehicles.RunKind, run *vehicles.Run) {
	if run.Clips == nil {
		m.absent("nobody has said where the %s has clips", of)
	}
	m.count(of, Thing(vehicles.AClip.Counts[of]), len(run.Clips))
}

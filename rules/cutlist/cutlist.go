package cutlist

import (
	"cmp"
	"fmt"
	"slices"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

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
	Of    string
	Count int
	Holds int // how many the usual kit holds
}

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
func (m *maker) count(run vehicles.RunKind, of string, n int) {
	if n > 0 {
		m.Parts = append(m.Parts, Part{run, of, n, m.kit.holds(of)})
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
	m.Pieces = append(m.Pieces, p)
}

func (m *maker) exhaust(run *vehicles.Run, laid *vehicles.LaidRun) {
	p := Piece{Run: vehicles.ExhaustRun, Of: "exhaust pipe", Across: run.Across, From: "stub", To: "outlet"}
	end, joints := laid.Line.Length(), 1
	if h := laid.Muffler; h != nil {
		first := p
		first.To, p.From = "muffler", "muffler"
		m.piece(first, laid, 0, h.From, 2)
		m.piece(p, laid, h.To, end, 1)
		joints = 3
		m.count(p.Run, "muffler", 1)
	} else {
		m.piece(p, laid, 0, end, 1)
		m.absent("the exhaust has no muffler")
	}
	m.count(p.Run, "exhaust clamp", joints)
	m.clips(vehicles.ExhaustRun, "exhaust clip", run)
	m.count(p.Run, "end sleeve", 1)
}

func (m *maker) intake(run *vehicles.Run, laid *vehicles.LaidRun) {
	p := Piece{Run: vehicles.IntakeRun, Of: "intake hose", Across: run.Across, From: "stub", To: "mouth"}
	m.piece(p, laid, 0, laid.Line.Length(), 1)
	m.count(p.Run, "intake clamp", 1)
	m.clips(vehicles.IntakeRun, "intake clip", run)
	m.count(p.Run, "end cap", 1)
}

// fuel is the line: its pieces butt against what they join, within a joint of hose with a clamp on either side.
func (m *maker) fuel(run *vehicles.Run, laid *vehicles.LaidRun, holes int) {
	p := Piece{Run: vehicles.FuelRun, Of: "fuel line", Across: run.Across, From: "tank", To: "heater"}
	joints, from := 2, 0.0
	for _, part := range inLine(laid) {
		piece := p
		piece.To, p.From = part.name, part.name
		m.piece(piece, laid, from, part.at, 0)
		from = part.at
		joints += 2
		m.count(p.Run, part.counts, 1)
	}
	m.piece(p, laid, from, laid.Line.Length(), 0)
	if !laid.Pump.Set {
		m.absent("the fuel line has no pump")
	}
	if !laid.Filter.Set {
		m.absent("the fuel line has no filter: one takes two joints more")
	}
	m.count(p.Run, "fuel joint", joints)
	m.count(p.Run, "fuel clamp", 2*joints)
	m.clips(vehicles.FuelRun, "fuel line clip", run)
	m.count(p.Run, "grommet", holes)
}

// linePart is what a fuel line is parted by.
type linePart struct {
	name, counts string
	at           float64 // mm along it
}

// inLine are the parts that sit in a fuel line, in order along it.
func inLine(laid *vehicles.LaidRun) (parts []linePart) {
	if at := laid.Filter; at.Set {
		parts = append(parts, linePart{"filter", "fuel filter", at.Value})
	}
	if at := laid.Pump; at.Set {
		parts = append(parts, linePart{"pump", "pump", at.Value})
	}
	slices.SortStableFunc(parts, func(a, b linePart) int { return cmp.Compare(a.at, b.at) })
	return parts
}

func (m *maker) clips(of vehicles.RunKind, name string, run *vehicles.Run) {
	if run.Clips == nil {
		m.absent("nobody has said where the %s has clips", of)
	}
	m.count(of, name, len(run.Clips))
}

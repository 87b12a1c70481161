package vehicles

import (
	"math"
	"sync"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// Closure is the sum check of a chain of continued readings against one overall reading of where it ends (total).
//
// The misclosure is the chain's end less the overall reading, its variance the sum of both. Where its square over that
// variance is within the limit, the tapes explain it: it is spread over the chain by least squares, each reading's end
// taking the share of its own variance V, and its variance becoming V - V^2 / U^2 (at the end the weighted mean of the
// two ways there). Else the chain stays as it was read and nothing that rests on it is better than doubtful.
// A later overall reading on the same chain starts from the earlier one's end. Source: adjustment of an open traverse
// with one condition; JCGM 102:2011 gives the same by the covariance of two estimates (numbers from memory).
type Closure struct {
	Table      Table // obstruction or fitting
	Index      int   // the thing whose last edge the overall reading was taken to
	Axis       survey.Axis
	Chain      float64 // where the chain ends, mm
	Total      float64 // where the overall reading says it ends
	Misclosure float64 // Chain less Total
	U          float64 // its standard uncertainty, mm
	Statistic  float64 // (Misclosure / U)^2
	Explained  float64 // the greatest misclosure, mm, that is within the limit
	Closes     bool    // within the limit, and so spread
}

// ClosureLimit is the 99 % point of chi-squared with one degree of freedom: the limit of a Closure's statistic when
// no book says otherwise.
var ClosureLimit = sync.OnceValue(func() float64 { return survey.ChiSquared99(1) })

// Totals are overall readings in x and in y of where a chain ends: of a rectangle's second x and second y, a line's last
// point, a round's centre. One that is not there is a zero Reading.
type Totals = Pair

// chains remembers the readings of the chains being reduced and what overall readings made of them. A table is reduced
// again and again until every overall reading has had its say, as each moves readings before it.
type chains struct {
	seq      int // readings reduced so far in this pass
	open     [2][]link
	stale    [2]bool // the open chain was moved in this pass and must be reduced again
	fixed    map[int]end
	again    bool
	closures []Closure
}

// link is a reading of a chain.
type link struct {
	seq int
	end end
}

// chained reduces a table by pass, with its overall readings when there are any.
func (r *reducer) chained(totals bool, pass func()) {
	if !totals {
		pass()
		return
	}
	faults := len(r.faults)
	r.chains = &chains{fixed: map[int]end{}, again: true}
	for c := r.chains; c.again && len(r.faults) == faults; {
		*c = chains{fixed: c.fixed, closures: c.closures}
		if r.trace != nil {
			*r.trace = tracer{table: r.trace.table, index: r.trace.index} // of the last pass only
		}
		pass()
	}
	r.closures = append(r.closures, r.chains.closures...)
	r.chains = nil
}

// link notes a reading, and replaces it where an overall reading has moved it.
func (c *chains) link(axis survey.Axis, start survey.Start, e *end) {
	c.seq++
	if start != survey.On {
		c.open[axis], c.stale[axis] = c.open[axis][:0], false
	}
	if fixed, ok := c.fixed[c.seq]; ok {
		fixed.rightward = e.rightward
		*e = fixed
	}
	c.open[axis] = append(c.open[axis], link{c.seq, *e})
}

// total holds the chains that end with a thing against its overall readings.
func (r *reducer) total(placed *Placed, p *Place, totals *Totals, what *thing, from *side, at spot) {
	if r.chains == nil {
		return
	}
	ends := p.lastReadings()
	for axis := survey.X; axis <= survey.Y; axis++ {
		reading := &totals[axis]
		if reading.Text == "" {
			continue
		}
		if ends[axis].Start != survey.On || reading.Start == survey.On {
			r.faultAt(totalKey(what, axis), what.called(), "total is one reading from "+zeros(r.job.Datum.Called())+", "+
				"of where a chain of + readings ends: measure it so, or take it out")
			continue
		}
		at.y = tapedAt(&placed.Prism.Footprint)
		var e end
		if wrong := from.along(&e, axis, reading, &at, nil); wrong != "" {
			key := totalKey(what, axis)
			r.faultAt(key, what.where(key), reading.String()+": "+wrong)
			continue
		}
		r.chains.close(axis, e, r.closure, what)
	}
}

func totalKey(what *thing, axis survey.Axis) string {
	return joinKey(what.key("total"), [...]string{"x", "y"}[axis])
}

// lastReadings are those the next thing may run on from.
func (p *Place) lastReadings() [2]*survey.Reading {
	switch {
	case p.Shape == Disc:
		return [2]*survey.Reading{&p.Centre[0], &p.Centre[1]}
	case p.Shape == Piped && len(p.Path) > 0:
		end := &p.Path[len(p.Path)-1]
		return [2]*survey.Reading{&end[0], &end[1]}
	}
	return [2]*survey.Reading{&p.X[1], &p.Y[1]}
}

// tapedAt is the y at which x was taped, to a line's last point.
func tapedAt(f *geometry.Footprint) float64 {
	if n := len(f.Path); n > 0 {
		return f.Path[n-1].Y
	}
	return f.Middle.Y
}

// close holds the open chain of an axis against an overall reading, once.
func (c *chains) close(axis survey.Axis, total end, limit float64, what *thing) {
	chain := c.open[axis]
	if _, done := c.fixed[chain[len(chain)-1].seq]; done {
		c.open[axis] = append(chain[:0], chain[len(chain)-1])
		return
	}
	if c.stale[axis] {
		c.again = true
		return
	}
	last := chain[len(chain)-1].end
	variance := last.U*last.U + total.U*total.U
	v := Closure{
		Table: Table(what.table), Index: what.index, Axis: axis, Chain: last.Value, Total: total.Value,
		Misclosure: last.Value - total.Value, U: math.Sqrt(variance),
	}
	if v.Misclosure != 0 {
		v.Statistic = v.Misclosure * v.Misclosure / variance
	}
	v.Explained, v.Closes = math.Sqrt(max(limit, 0))*v.U, v.Statistic <= limit
	for _, l := range chain {
		e := l.end
		if e.unclosed = e.unclosed || !v.Closes; v.Closes && variance > 0 {
			share := e.U * e.U / variance
			e.Value -= share * v.Misclosure
			e.Tilt -= share * (last.Tilt - total.Tilt)
			e.U *= math.Sqrt(1 - share)
		}
		c.fixed[l.seq] = e
	}
	c.closures = append(c.closures, v)
	c.again, c.stale[axis] = true, true
}

// totalUnder and totalAbove tell whether any obstruction or fitting has an overall reading.
func (j *Job) totalUnder() bool {
	for i := range j.Obstructions {
		if t := &j.Obstructions[i].Total; t[0].Text != "" || t[1].Text != "" {
			return true
		}
	}
	return false
}

func (j *Job) totalAbove() bool {
	for i := range j.Fittings {
		if t := &j.Fittings[i].Total; t[0].Text != "" || t[1].Text != "" {
			return true
		}
	}
	return false
}

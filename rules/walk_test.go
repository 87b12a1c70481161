package rules

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/vehicles"
)

// The walk goes along a run in small steps and looks at each: what the rules of the runs work out in closed form it finds
// by counting, from the points of the job file alone. Vectors are x forward, y left, z up.

const pace = 1. // mm

type vector [3]float64

func (a vector) minus(b vector) vector  { return vector{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func (a vector) plus(b vector) vector   { return vector{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func (a vector) times(k float64) vector { return vector{k * a[0], k * a[1], k * a[2]} }
func (a vector) dot(b vector) float64   { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func (a vector) length() float64        { return math.Sqrt(a.dot(a)) }
func (a vector) unit() vector           { return a.times(1 / a.length()) }
func pathOf(list []vehicles.RunPoint) (path []vector) {
	for _, p := range list {
		path = append(path, vector{p.X, p.Y, -p.Drop})
	}
	return path
}

// step is one place of a walk.
type step struct {
	at        vector
	along     float64 // mm from the stub
	radius    float64
	muffler   bool
	pastFirst bool // behind the first bend
}

// walk is a run from its stub's mouth to its end, every corner replaced by an arc, in steps of a pace.
type walk struct {
	corners []vector
	steps   []step
	beside  []step  // along the muffler's axis where the bends at the ends of its leg leave it
	turned  float64 // degrees in all
}

// walked walks along a run whose legs are long enough for its bends.
func walked(stub vector, r *vehicles.Run) walk {
	w := walk{corners: append([]vector{stub}, pathOf(r.Path)...)}
	bend, half := r.Bend.Value, r.Across/2
	last := len(w.corners) - 1
	for i := range last {
		a, b := w.corners[i], w.corners[i+1]
		way, from, to := b.minus(a).unit(), 0., b.minus(a).length()
		if i > 0 {
			from = w.tangent(i, bend)
		}
		if i+1 < last {
			to -= w.tangent(i+1, bend)
		}
		for s := from; s < to; s += pace {
			w.add(a.plus(way.times(s)), half, r.Muffler, i, s, i > 0)
		}
		w.add(a.plus(way.times(to)), half, r.Muffler, i, to, i > 0)
		if i+1 < last {
			w.arc(i+1, bend, half)
		}
		if m := r.Muffler; m != nil && m.Leg == i+1 {
			for s := m.Start; s <= m.Start+m.Length; s += pace {
				w.beside = append(w.beside, step{at: a.plus(way.times(s)), radius: m.Across / 2, muffler: true, pastFirst: i > 0})
			}
		}
	}
	return w
}

// tangent is how far from a corner its arc begins.
func (w *walk) tangent(i int, bend float64) float64 { return bend * math.Tan(w.angle(i)/2) }

// angle is the turn at a corner, radians.
func (w *walk) angle(i int) float64 {
	in, out := w.corners[i].minus(w.corners[i-1]).unit(), w.corners[i+1].minus(w.corners[i]).unit()
	return math.Acos(max(-1, min(1, in.dot(out))))
}

// arc walks round a corner: the centre lies a bend's radius off both legs, on the line that halves them.
func (w *walk) arc(i int, bend, half float64) {
	in, out := w.corners[i].minus(w.corners[i-1]).unit(), w.corners[i+1].minus(w.corners[i]).unit()
	turn := w.angle(i)
	w.turned += turn * 180 / math.Pi
	inward := out.minus(in.times(in.dot(out))).unit() // square to the first leg, towards the second
	begin := w.corners[i].minus(in.times(w.tangent(i, bend)))
	centre := begin.plus(inward.times(bend))
	for s := 0.; s < turn*bend; s += pace {
		at := centre.plus(in.times(bend * math.Sin(s/bend))).minus(inward.times(bend * math.Cos(s/bend)))
		w.add(at, half, nil, 0, 0, i > 1)
	}
}

// add takes a step; leg and far are where on which leg it is, for the muffler.
func (w *walk) add(at vector, half float64, m *vehicles.Muffler, leg int, far float64, pastFirst bool) {
	s := step{at: at, radius: half, pastFirst: pastFirst}
	if m != nil && m.Leg-1 == leg && far >= m.Start && far <= m.Start+m.Length {
		s.radius, s.muffler = m.Across/2, true
	}
	if n := len(w.steps); n > 0 {
		s.along = w.steps[n-1].along + at.minus(w.steps[n-1].at).length()
	}
	w.steps = append(w.steps, s)
}

func (w *walk) length() float64 { return w.steps[len(w.steps)-1].along }

// least is the least of something over the steps that count.
func (w *walk) least(counts func(step) bool, of func(step) float64) float64 {
	least := math.Inf(1)
	for _, s := range slices.Concat(w.steps, w.beside) {
		if counts(s) {
			least = min(least, of(s))
		}
	}
	return least
}

func all(step) bool { return true }

// unheld is the longest way along the run that nothing holds: neither stub, clip, outlet nor the muffler itself.
func (w *walk) unheld(clips []float64) float64 {
	longest, from := 0., 0.
	held := slices.Sorted(slices.Values(clips))
	for i, s := range w.steps {
		for len(held) > 0 && s.along >= held[0] {
			longest, from, held = max(longest, held[0]-from), held[0], held[1:]
		}
		if begins := s.muffler && !w.steps[i-1].muffler; begins || i == len(w.steps)-1 {
			longest = max(longest, s.along-from)
		}
		if s.muffler {
			from = s.along
		}
	}
	return longest
}

// fromBox is how far a place is from a rectangle of the plan with heights.
func (a vector) fromBox(low, high vector) float64 {
	var off vector
	for i := range off {
		off[i] = max(low[i]-a[i], a[i]-high[i], 0)
	}
	return off.length()
}

// wandering draws a job whose exhaust and intake wander about under a floor, their legs long enough for their bends.
func wandering(t *rapid.T) vehicles.Job {
	whole := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
	path := func(name string, x, y float64) (points []vehicles.RunPoint) {
		p := vehicles.RunPoint{X: x, Y: y, Drop: whole(name+" down", 150, 200)}
		points = append(points, p)
		for range rapid.IntRange(1, 4).Draw(t, name+" legs") {
			turn := whole(name+" heading", 0, 359) * math.Pi / 180
			p.X, p.Y, p.Drop = p.X+300*math.Cos(turn), p.Y+300*math.Sin(turn), p.Drop+whole(name+" fall", -20, 20)
			points = append(points, p)
		}
		return points
	}
	job := tidy()
	job.Ties, job.Obstructions, job.Openings, job.Fuel = nil, nil, nil, nil
	job.Floor.Ground = 600
	job.Exhaust.Path, job.Intake.Path = path("exhaust", 1245, 265), path("intake", 1175, 265)
	bend := whole("bend", 5, 40)
	job.Exhaust.Bend, job.Intake.Bend = vehicles.Some(bend), vehicles.Some(bend)
	job.Exhaust.Muffler = nil
	if rapid.Bool().Draw(t, "muffled") {
		job.Exhaust.Muffler = &vehicles.Muffler{Leg: 2, Start: whole("start", 100, 120), Length: whole("long", 20, 60), Across: 68}
	}
	job.Exhaust.Clips = nil
	for range rapid.IntRange(1, 3).Draw(t, "clips") {
		job.Exhaust.Clips = append(job.Exhaust.Clips, whole("clip", 50, 300))
	}
	for i := range 3 {
		x, y, top := whole("x", 500, 1800), whole("y", -700, 700), whole("top", 0, 200)
		job.Obstructions = append(job.Obstructions, box(fmt.Sprint("thing ", i), "other", x, x+whole("long", 5, 200), y, y+whole("wide", 5, 200), top, top+whole("deep", 1, 150)))
	}
	return job
}

// sharpTurns tells whether a corner turns so sharply that its arc would need more than a leg has.
func sharpTurns(w *walk, bend float64) bool {
	for i := 1; i < len(w.corners)-1; i++ {
		if w.tangent(i, bend) > 45 {
			return true
		}
	}
	return false
}

// A muffler may be said to lie where its leg is already bent: the pipe there is still there, and so is the muffler.
func TestAMufflerTakesNoBendAway(t *testing.T) {
	walks := 0
	rapid.Check(t, func(t *rapid.T) {
		job := wandering(t)
		job.Exhaust.Path = slices.Concat(job.Exhaust.Path[:1], vehicles.List[vehicles.RunPoint]{{X: 1000, Y: 500, Drop: 170}}, job.Exhaust.Path[1:])
		job.Exhaust.Clips = nil
		job.Exhaust.Muffler = &vehicles.Muffler{Leg: 2, Start: 0, Length: float64(rapid.IntRange(20, 339).Draw(t, "long")), Across: 50}
		job.Exhaust.Bend = vehicles.Some(float64(rapid.IntRange(20, 80).Draw(t, "round")))
		exhaust := walked(vector{1245, 265, -45}, job.Exhaust)
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		for _, f := range result.Findings {
			if f.ID() == "exhaust.bend-room" && f.Value > 0 {
				return
			}
		}
		walks++
		for _, f := range result.Findings {
			switch f.ID() {
			case "exhaust.clearance":
				o := &job.Obstructions[f.Against.Index]
				low, high := vector{o.X[0].Length, o.Y[0].Length, -o.Drop.To}, vector{o.X[1].Length, o.Y[1].Length, -o.Drop.From}
				assert.InDelta(t, exhaust.least(all, func(s step) float64 { return s.at.fromBox(low, high) - s.radius }), f.Value, pace, o.Name)
			case "exhaust.ground":
				assert.InDelta(t, exhaust.least(all, func(s step) float64 { return job.Floor.Ground + s.at[2] - s.radius }), f.Value, 0.5)
			case "exhaust.floor":
				assert.InDelta(t, exhaust.least(func(s step) bool { return s.pastFirst }, func(s step) float64 { return -s.at[2] - s.radius }), f.Value, 0.5)
			}
		}
	})
	if !testing.Short() {
		assert.Greater(t, walks, 20)
	}
}

func TestTheRulesOfRunsAreWhatAWalkAlongThemFinds(t *testing.T) {
	walks := 0
	rapid.Check(t, func(t *rapid.T) {
		job := wandering(t)
		exhaust, intake := walked(vector{1245, 265, -45}, job.Exhaust), walked(vector{1175, 265, -45}, job.Intake)
		bend := job.Exhaust.Bend.Value
		if sharpTurns(&exhaust, bend) || sharpTurns(&intake, bend) {
			return
		}
		for _, clip := range job.Exhaust.Clips {
			if clip > exhaust.length() {
				return
			}
		}
		walks++
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		found := map[string]float64{}
		for _, f := range result.Findings {
			found[f.ID()+" "+f.Against.String()] = f.Value
		}
		for id, w := range map[string]*walk{"exhaust": &exhaust, "intake": &intake} {
			past := func(s step) bool { return s.pastFirst }
			assert.InDelta(t, w.length(), found[id+".length "], 0.2, id)
			assert.InDelta(t, w.turned, found[id+".bends "], 1e-6, id)
			assert.Zero(t, found[id+".bend-room "], id)
			assert.InDelta(t, w.least(all, func(s step) float64 { return job.Floor.Ground + s.at[2] - s.radius }), found[id+".ground ground"], 0.5, id)
			assert.InDelta(t, w.least(past, func(s step) float64 { return -s.at[2] - s.radius }), found[id+".floor floor"], 0.5, id)
			for _, o := range job.Obstructions {
				low := vector{o.X[0].Length, o.Y[0].Length, -o.Drop.To}
				high := vector{o.X[1].Length, o.Y[1].Length, -o.Drop.From}
				want := w.least(all, func(s step) float64 { return s.at.fromBox(low, high) - s.radius })
				assert.InDelta(t, want, found[id+".clearance "+o.Name], pace, "%s from %s", id, o.Name)
			}
		}
		assert.InDelta(t, exhaust.unheld(job.Exhaust.Clips), found["exhaust.clip-span "], 2*pace)
		mouth, outlet := intake.steps[len(intake.steps)-1].at, exhaust.steps[len(exhaust.steps)-1].at
		apart := exhaust.least(func(s step) bool { return s.muffler }, func(s step) float64 { return s.at.minus(mouth).length() - s.radius })
		assert.InDelta(t, min(apart, outlet.minus(mouth).length()), found["intake.apart exhaust"], pace)
		half := job.Floor.Width / 2
		assert.InDelta(t, min(outlet[0], half-math.Abs(outlet[1])), found["exhaust.edge "], 1e-6)
	})
	if !testing.Short() { // a short run may draw few
		assert.Greater(t, walks, 20)
	}
}

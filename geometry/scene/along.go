package scene

import (
	"math"

	"bench.example/undermark/geometry"
)

// profile is a run laid out straight: the distance along it, and the height, so many times as high as it is.
type profile struct {
	*paced
	stretch float64
}

// paced is a run with its places every pace, the last at its end.
type paced struct {
	run    *geometry.Run
	places []geometry.Point3
}

func pacedOut(run *geometry.Run) *paced {
	n := int(math.Ceil(run.Length() / pace))
	p := &paced{run, make([]geometry.Point3, n+1)}
	for i := range p.places {
		p.places[i] = run.At(float64(i) * pace)
	}
	return p
}

// Beside returns the view of a run laid out straight, its heights stretched so many times, 1 or more, for the eye. It begins at
// one end by name and ends at the other. What has a thickness keeps it there: a run is to be shown by its centreline.
func Beside(run *geometry.Run, stretch float64, begins, ends Way) Projection {
	return Projection{
		Plane: profile{pacedOut(run), stretch}, From: "beside the run",
		Across: Axis{Low: begins, High: ends, Counts: 1}, Up: Axis{Low: ToGround, High: ToRoof, Counts: -1 / stretch}, Slopes: true,
	}
}

// pace is how far apart places of a run are tried, mm: less than half of the thinnest pipe there is.
const pace = 2

// foot is how far along the run the place is that is nearest to p: the best of one every pace, refined.
func (r profile) foot(p geometry.Point3) float64 {
	off := func(s float64) float64 { return r.run.At(s).Sub(p).Norm() }
	best, least := 0.0, math.Inf(1)
	for i, place := range r.places {
		if away := place.Sub(p).Norm(); away < least {
			best, least = float64(i)*pace, away
		}
	}
	low, high := max(0, best-pace), min(best+pace, r.run.Length()) // past its ends every place is as far
	for high-low > 1e-9 {
		third := (high - low) / 3
		if off(low+third) < off(high-third) {
			high -= third
		} else {
			low += third
		}
	}
	return (low + high) / 2
}

func (r profile) Point(p geometry.Point3) geometry.Point {
	return geometry.Point{X: r.foot(p), Y: p.Z * r.stretch}
}

func (r profile) Unproject(q geometry.Point) geometry.Point3 {
	return r.run.At(q.X).Plan().At(q.Y / r.stretch)
}

// Move is along the run in plan and up; where the run stands upright it is up alone.
func (r profile) Move(at geometry.Point3, by geometry.Point) geometry.Point3 {
	s := r.foot(at)
	ahead := r.run.At(s + 0.5).Sub(r.run.At(s - 0.5)).Plan()
	if n := ahead.Norm(); n > 0 {
		return ahead.Scale(by.X / n).At(by.Y / r.stretch)
	}
	return geometry.Point3{Z: by.Y / r.stretch}
}

// Prism is seen where the run passes under or over it.
func (r profile) Prism(p *geometry.Prism) (f geometry.Footprint, ok bool) {
	from, to := p.Footprint.Bounds()
	return r.where(p, func(place geometry.Point3) bool {
		return place.X >= from.X && place.X <= to.X && place.Y >= from.Y && place.Y <= to.Y && p.Footprint.Contains(place.Plan())
	})
}

// near is where a prism is seen that the run comes so near to, in space, or passes under or over: at the run's own stations.
func (r profile) near(p *geometry.Prism, within float64) (f geometry.Footprint, ok bool) {
	low, high := p.Footprint.Bounds()
	return r.where(p, func(place geometry.Point3) bool {
		if place.X < low.X-within || place.X > high.X+within || place.Y < low.Y-within || place.Y > high.Y+within {
			return false
		}
		return p.Footprint.Contains(place.Plan()) || p.GapPoint(place).Gap <= within
	})
}

// where is what a prism covers of the picture, from the first to the last place of the run that meets it.
func (r profile) where(p *geometry.Prism, meets func(geometry.Point3) bool) (f geometry.Footprint, ok bool) {
	low, high := math.Inf(1), math.Inf(-1)
	for i, place := range r.places {
		if meets(place) {
			s := min(float64(i)*pace, r.run.Length())
			low, high = min(low, s), max(high, s)
		}
	}
	if low > high {
		return f, false
	}
	low, high = r.edge(meets, low, low-pace), r.edge(meets, high, high+pace)
	return geometry.NewRectangle(geometry.Point{X: low, Y: p.Low * r.stretch}, geometry.Point{X: high, Y: p.High * r.stretch}, 0), true
}

// edge is where between a place that meets a prism and one past it the run no longer does.
func (r profile) edge(meets func(geometry.Point3) bool, in, past float64) float64 {
	past = max(0, min(past, r.run.Length()))
	for math.Abs(past-in) > 0.1 {
		if middle := (in + past) / 2; meets(r.run.At(middle)) {
			in = middle
		} else {
			past = middle
		}
	}
	return in
}

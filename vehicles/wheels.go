package vehicles

// AtRear tells whether a wheel is of the rear axle: it stands behind the middle of the floor.
func (j *Job) AtRear(w Wheel) bool { return w.At[0] < j.Floor.From+j.Floor.Length/2 }

// WithAxle puts the wheels of an axle at x; of an axle that has none, one on either side, like the others, or so many mm inside the
// floor's edge where there are none at all. Without an x it takes that axle's wheels out.
func (j Job) WithAxle(rear bool, x Number, inset float64) Job {
	var wheels List[Wheel]
	there := false
	for _, w := range j.Wheels {
		if j.AtRear(w) == rear {
			if w.At[0], there = x.Value, true; !x.Set {
				continue
			}
		}
		wheels = append(wheels, w)
	}
	if !there && x.Set {
		like := Wheel{At: [2]float64{0, j.Floor.Width/2 - inset}}
		if len(wheels) > 0 {
			like = wheels[0]
		}
		y := max(like.At[1], -like.At[1])
		for _, at := range []float64{y, -y} {
			wheels = append(wheels, Wheel{At: [2]float64{x.Value, at}, Across: like.Across, Width: like.Width})
		}
	}
	j.Wheels = wheels
	return j
}

package geometry

import (
	"math"
	"math/rand"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What an outline answers is what every meeting point of any two pieces comes to.
func TestAnOutlineKnowsTheWayOutThatAllMeetingPointsGive(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	inside := 0
	for range 400 {
		path := make([]Point, 2+r.Intn(shortPath))
		for i := range path {
			path[i] = Point{r.Float64() * 300, r.Float64() * 300}
			if r.Intn(3) == 0 { // whole places: legs that lie on each other, points twice
				path[i] = Point{float64(r.Intn(4) * 60), float64(r.Intn(4) * 60)}
			}
		}
		f := NewLine(path, 5+r.Float64()*70)
		o := NewOutline(&f)
		for range 40 {
			p := Point{r.Float64() * 300, r.Float64() * 300}
			if f.offPath(p) >= f.Radius {
				continue
			}
			inside++
			want, _ := f.wayOut(p)
			gap, nearest := o.WayOut(p)
			require.InDelta(t, want, gap, 1e-9, "%v in %v, %v", p, path, f.Radius)
			assert.InDelta(t, -gap, nearest.Sub(p).Norm(), 1e-9)
			assert.InDelta(t, f.Radius, f.offPath(nearest), 1e-6)
		}
	}
	assert.Greater(t, inside, 3000)
}

// A path that comes back beside its first leg hides that leg's side, from whichever of its ends it is gone.
func TestTheLastLegHidesASideOfTheFirst(t *testing.T) {
	path := []Point{{0, 0}, {200, 0}, {300, 5}, {200, 10}, {0, 10}}
	for range 2 {
		f := NewLine(path, 20)
		gap, nearest := NewOutline(&f).WayOut(Point{100, 8})
		assert.InDelta(t, -22, gap, 1e-9)
		assert.InDelta(t, 0, nearest.Sub(Point{100, 30}).Norm(), 1e-9)
		slices.Reverse(path)
	}
}

// A path of thousands of points that covers the whole floor has its way out at the floor's side, and is asked 4,000 times
// while one waits: what grew with the square of the points took minutes.
func TestAPathAllOverTheFloorIsAskedForItsWayOut(t *testing.T) {
	const n = 9000
	path := make([]Point, n)
	for i := range path {
		path[i] = Point{50 + float64(i)*3000/n, float64(800 - 1600*(i%2))}
	}
	f := NewLine(path, 4)
	o := NewOutline(&f)
	start := time.Now()
	for i := range 4000 {
		p := Point{200 + float64(i%100)*28, -700 + float64(i/100)*35}
		want := math.Min(math.Min(p.X-46, 3054-p.X), 804-math.Abs(p.Y))
		gap, _ := o.WayOut(p)
		require.InDelta(t, -want, gap, 0.7, "at %v", p) // the ends of legs are round, and 0.3 mm apart
	}
	assert.Less(t, time.Since(start), 20*time.Second)
	t.Log(time.Since(start))
}

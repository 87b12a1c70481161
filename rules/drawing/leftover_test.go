package drawing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// tied is a van with four ties, one of which is left out; above lies as below, and the last two are 6 and 20 mm off.
func tied(t testing.TB) (survey.Fit, scene.Scene) {
	place := func(x, y float64) vehicles.Pair {
		return vehicles.Pair{survey.FromNumber(x, false), survey.FromNumber(y, false)}
	}
	result := van(t, func(j *vehicles.Job) {
		j.Datum.HookBelow, j.Datum.HookAbove = vehicles.Number{}, vehicles.Number{}
		j.Ties = []vehicles.Tie{
			{Name: "a", Use: true, Below: place(500, -500), Above: place(500, -500)},
			{Name: "b", Use: true, Below: place(2500, 500), Above: place(2500, 500)},
			{Name: "c", Use: true, Below: place(500, 500), Above: place(506, 500)},
			{Name: "d", Below: place(2500, -500), Above: place(2500, -480)},
		}
	})
	return result.Plan.Fit, Draw(result, Options{LeftOver: &LeftOver{Times: 10, Tie: 2}})
}

func TestArrowsRunFromATieTheWayItIsOff(t *testing.T) {
	fit, s := tied(t)
	arrows := map[int]scene.Item{}
	for _, it := range s.Items {
		if it.Role == scene.Tie && it.Primitive == scene.Stroke {
			arrows[it.Ref] = it
		}
	}
	require.Len(t, arrows, 4)
	for _, r := range append(fit.Residuals, fit.LeftOut...) {
		it := arrows[int(r.Name[0]-'a')]
		by := it.Path[0].B.Sub(it.Path[0].A).Plan()
		want := geometry.Point{X: r.DX, Y: r.DY}.Scale(10)
		assert.InDelta(t, want.Norm(), by.Norm(), 1e-9, r.Name)
		assert.InDelta(t, 0, by.Sub(want.Turn(-fit.Theta)).Norm(), 1e-9, "in the frame below")
		assert.Equal(t, !r.Used, it.Unsure, "what is left out is drawn broken")
		assert.InDelta(t, want.Norm()/10, it.Measure.Value, 1e-9, "the figure is not drawn out as the arrow is")
		assert.Equal(t, scene.MM, it.Measure.Unit)
		for _, barb := range []geometry.Piece{it.Path[1], it.Path[3]} { // its head is seen as one: barbs on either side, a quarter as long
			back := barb.B.Sub(barb.A).Plan()
			assert.InDelta(t, want.Norm()/4, back.Norm(), 1e-9, r.Name)
			assert.InDelta(t, -math.Cos(math.Pi/6), back.Dot(by)/back.Norm()/by.Norm(), 1e-9, r.Name)
		}
	}
	assert.True(t, arrows[2].Selected)
	assert.Equal(t, pt(500, 500), arrows[2].Path[0].A.Plan())
}

func TestHowManyTimesArrowsAreDrawn(t *testing.T) {
	of := func(mm float64) survey.Fit { return survey.Fit{Residuals: []survey.Residual{{DX: mm}}} }
	for mm, want := range map[float64]float64{0: 200, 1: 200, 2: 100, 3: 50, 42.5: 5, 251: 1, 5000: 1} {
		assert.Equal(t, want, Times(of(mm)), "%v mm", mm)
	}
}

func TestWhereTheCentreMayGo(t *testing.T) {
	drilled := van(t, func(j *vehicles.Job) {
		cut := *j.Cut
		cut.Drilled = &vehicles.Pair{survey.FromNumber(1240, false), survey.FromNumber(230, false)}
		j.Cut = &cut
	})
	assert.Empty(t, find(Draw(drilled, Options{}), scene.Wish, "centre may go"))
	assert.Empty(t, find(Draw(van(t, nil), Options{MayMove: true}), scene.Wish, "centre may go"))
	disc := find(Draw(drilled, Options{MayMove: true}), scene.Wish, "centre may go")[0].Solid.Prism.Footprint
	assert.Equal(t, drilled.Plan.Cut.At, disc.Middle)
	assert.Equal(t, 56.5, disc.Radius, "127/2 - 6/2 - 4: with the kerf")
}

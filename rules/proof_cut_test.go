package rules_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

func random(t *testing.T, stream uint64) *rand.Rand {
	t.Logf("seed %d, stream %d", proofSeed, stream)
	return rand.New(rand.NewPCG(proofSeed, stream))
}

// plan is one way of surveying a van and judging its cut.
type plan struct {
	name    string
	van     *van
	class   string // of the tape, "" for II
	drilled bool
}

func (p plan) hand(draw *rand.Rand) *hand {
	if p.class == "III" {
		return newHand(draw, classIII)
	}
	return newHand(draw, classII)
}

// once surveys the van, lets the mark be put as the product says, drills if it is to be, and judges. It returns the
// result and where the cut truly is.
func (p plan) once(t require.TestingT, h *hand) (rules.Result, complex128) {
	v := visit{p.van, h}
	job := v.survey(vehicles.Tape{Class: p.class})
	bare := job
	bare.Obstructions = nil
	told, faults := rules.Judge(bare, rules.Builtin())
	require.Empty(t, faults)
	landed := v.land(rules.Marks(told).Marks[0].Above)
	if p.drilled {
		hole := v.below(landed)
		job.Cut.Drilled = &hole
	}
	job.Rules = make(map[string]float64, len(v.things))
	for i := range v.things {
		job.Rules["cut.clearance."+v.things[i].kind] = v.clearance(i, landed)
	}
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	return result, landed
}

// clearance is the true one of a cut from a thing.
func (v *van) clearance(thing int, cut complex128) float64 {
	return v.things[thing].gap(cut) - v.radius
}

// simulate makes n surveys and returns what came of each thing, and of how many the ties did not agree.
func (p plan) simulate(t *testing.T, draw *rand.Rand, n int) (things []outcome, apart int) {
	things = make([]outcome, len(p.van.things))
	nominal, _ := p.once(t, p.hand(nil))
	eachCut(nominal, func(f *rules.Finding) {
		things[f.Against.Index].sigma = f.Sigma
		require.InDelta(t, 0, f.Margin.Value, 1e-6, "%s: a hand that never errs predicts the truth", f.Against)
	})
	h := p.hand(draw)
	for range n {
		result, landed := p.once(t, h)
		eachCut(result, func(f *rules.Finding) { things[f.Against.Index].add(f, p.van.clearance(int(f.Against.Index), landed)) })
		for i := range result.Findings {
			if f := &result.Findings[i]; f.ID() == "ties.fit" && f.Verdict != rules.Clear {
				apart++
			}
		}
	}
	return things, apart
}

func eachCut(r rules.Result, do func(*rules.Finding)) {
	for i := range r.Findings {
		if f := &r.Findings[i]; f.ID() == "cut.clearance" {
			do(f)
		}
	}
}

// Six ways of bringing the cut to the frame below, each against every shape: 66000 surveys.
func TestProofOfTheCut(t *testing.T) {
	ways := []plan{
		{name: "no ties", van: panelVan(0)}, {name: "2 ties", van: panelVan(2)}, {name: "3 ties", van: panelVan(3)},
		{name: "4 ties", van: panelVan(4)}, {name: "5 ties", van: panelVan(5)}, {name: "drilled", van: panelVan(0), drilled: true},
	}
	found := make([][]outcome, len(ways))
	t.Run("each", func(t *testing.T) {
		for i, p := range ways {
			t.Run(p.name, func(t *testing.T) {
				t.Parallel()
				n := surveys(11000)
				things, apart := p.simulate(t, random(t, uint64(i)), n)
				for k := range things {
					things[k].check(t, p.van.things[k].name, promised)
				}
				found[i] = things
				// One in a hundred of normal errors is beyond the 99 % point, fewer of even ones.
				assert.LessOrEqual(t, apart, n/100+3*int(math.Sqrt(float64(n)/100)), "ties that don't agree")
			})
		}
	})
	shapes := make([]pool, len(found[0]))
	for i, things := range found {
		var way pool
		for k := range things {
			way.add(&things[k])
			shapes[k].add(&things[k])
		}
		way.check(t, ways[i].name)
	}
	for k := range shapes {
		shapes[k].check(t, ways[0].van.things[k].name)
	}
}

package rules_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// The proof of what is drilled beside the cut, of what runs inside the floor, and of what lies behind the datum.

// aside is a way of surveying a van and judging something else than its cut from below.
type aside struct {
	plan
	id    string                                     // of the rule
	value string                                     // under which its value is given, the kind left out
	mark  string                                     // by which it is put: that of the cut, or its own
	dress func(v *visit, job *vehicles.Job)          // what the job has besides
	truth func(v *van, i int, at complex128) float64 // the clearance, the mark having come out there
	kinds []string
}

// once is that of a plan, for this.
func (a aside) once(t require.TestingT, h *hand) (found []rules.Finding, landed complex128) {
	v := visit{a.van, h}
	job := v.survey(vehicles.Tape{})
	a.dress(&v, &job)
	bare := job
	bare.Obstructions, bare.Fittings = nil, nil
	told, faults := rules.Judge(bare, rules.Builtin())
	require.Empty(t, faults)
	for _, m := range rules.Marks(told).Marks {
		if m.Name == a.mark {
			landed = v.land(m.Above)
		}
	}
	require.NotZero(t, landed, a.mark)
	if a.drilled {
		hole := v.below(landed)
		job.Cut.Drilled = &hole
	}
	job.Rules = map[string]float64{}
	for i, kind := range a.kinds {
		job.Rules[a.value+"."+kind] = a.truth(a.van, i, landed)
	}
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	found = make([]rules.Finding, len(a.kinds))
	seen := 0
	for _, f := range result.Findings {
		if f.ID() == a.id {
			found[f.Against.Index] = f
			seen++
		}
	}
	require.Equal(t, len(a.kinds), seen, "one for each thing")
	return found, landed
}

func (a aside) prove(t *testing.T, stream uint64, n int, want []bounds) {
	things := make([]outcome, len(a.kinds))
	nominal, _ := a.once(t, newHand(nil, classII))
	for i := range nominal {
		things[i].sigma = nominal[i].Sigma
		require.InDelta(t, 0, nominal[i].Margin.Value, 1e-6, "%s: a hand that never errs predicts the truth", a.kinds[i])
	}
	h := newHand(random(t, stream), classII)
	for range n {
		found, landed := a.once(t, h)
		for i := range found {
			things[i].add(&found[i], a.truth(a.van, i, landed))
		}
	}
	for i := range things {
		b := promised
		if want != nil {
			b = want[i]
		}
		things[i].check(t, a.kinds[i], b)
	}
}

func kindsOf(v *van) (kinds []string) {
	for i := range v.things {
		kinds = append(kinds, v.things[i].kind)
	}
	return kinds
}

// beside is a van whose things reach up to the floor, so that a bit may meet them.
func beside(ties int) *van {
	v := panelVan(ties)
	v.things = v.things[:3]
	v.things[2].top = 0
	return v
}

// bolted has a bolt whose hole goes with the cut, 110 mm from it.
func bolted(ties int, drilled bool) aside {
	const bolt, across = 80 + 75i, 7
	v := beside(ties)
	return aside{
		plan: plan{name: "bolt", van: v, drilled: drilled}, id: "hole.clearance", value: "hole.clearance", mark: "cut centre", kinds: kindsOf(v),
		dress: func(_ *visit, job *vehicles.Job) {
			h, _ := vehicles.HeaterClass("2 kW")
			h.Bolts, h.Bolt, h.Given = vehicles.List[[2]float64]{{real(bolt), imag(bolt)}}, across, h.Given|vehicles.HasBolts
			job.Heater = &h
		},
		truth: func(v *van, i int, at complex128) float64 { return v.things[i].gap(at+bolt) - across/2. },
	}
}

// fuelled has a hole for the fuel line with a mark of its own, half a metre from the cut, whether that is drilled or not.
func fuelled(ties int, drilled bool) aside {
	const hole, across = 1640 - 10i, 14
	v := beside(ties)
	v.things[2] = wheel("round", "spare wheel", 1900-200i, 200)
	v.things[2].top = 0
	return aside{
		plan: plan{name: "fuel hole", van: v}, id: "hole.clearance", value: "hole.clearance", mark: "fuel hole 1", kinds: kindsOf(v),
		dress: func(s *visit, job *vehicles.Job) {
			x, y := real(hole), imag(hole)
			job.Fuel = &vehicles.Run{Across: 5, Path: vehicles.List[vehicles.RunPoint]{{X: x, Y: y, Drop: -60}, {X: x, Y: y, Drop: 60}}}
			job.Fuel.Supply.Hole = vehicles.Some(across)
			if drilled {
				at := s.below(s.cut + 3 - 4i) // nothing to the fuel line's hole
				job.Cut.Drilled = &at
			}
		},
		truth: func(v *van, i int, at complex128) float64 { return v.things[i].gap(at) - across/2. },
	}
}

// floored has a loom and a cable duct under the mat, taped from above, where they truly are.
func floored(drilled bool) aside {
	v := panelVan(4)
	v.things = nil
	loom, far := (&visit{van: v}).up(1330+330i), (&visit{van: v}).up(1240-200i)
	duct := fromBox(real(far)-400, real(far)+400, imag(far)-30, imag(far)+30)
	return aside{
		plan: plan{name: "in the floor", van: v, drilled: drilled}, id: "cut.fitting", value: "cut.clearance", mark: "cut centre",
		kinds: []string{"wiring", "air line"},
		dress: func(s *visit, job *vehicles.Job) {
			low, high := s.above(far-400-30i), s.above(far+400+30i)
			rise := vehicles.Span{From: -10, Set: true}
			job.Fittings = vehicles.List[vehicles.Fitting]{
				{Name: "loom", Kind: "wiring", Rise: rise, Place: vehicles.Place{Shape: vehicles.Disc, Centre: s.above(loom), Across: vehicles.Some(20)}},
				{Name: "duct", Kind: "air line", Rise: rise, Place: vehicles.Place{X: vehicles.Pair{low[0], high[0]}, Y: vehicles.Pair{low[1], high[1]}}},
			}
		},
		truth: func(v *van, i int, at complex128) float64 {
			above := (&visit{van: v}).up(at)
			return []float64{fromRound(loom, 10)(above), duct(above)}[i] - v.radius
		},
	}
}

// behind has a datum in the middle of the van: what lies to its rear is taped with a minus, from a zero that hangs 150 lower.
func behind(ties int, drilled bool, cut complex128, near float64) aside {
	v := panelVan(ties)
	v.cut = cut
	back := func(s *visit, x, drop float64) float64 { return -s.hand.tape(math.Hypot(x, s.hookBelow-drop), true) }
	edge := func(name, kind string, rear, front, drop float64) truth {
		return truth{
			name: name, kind: kind, bottom: drop, tapeAt: drop, gap: fromBox(rear, front, -850, 850),
			tape: func(s *visit, at float64) vehicles.Place {
				return vehicles.Place{
					X: vehicles.Pair{plainReading(back(s, rear, at)), plainReading(back(s, front, at))},
					Y: vehicles.Pair{s.fromCentre(-850), s.fromCentre(850)},
				}
			},
		}
	}
	v.things = []truth{edge("near", "crossmember", near-84, near, 60), edge("far", "axle", -1500, -1240, 60)}
	return aside{
		plan: plan{name: "behind the datum", van: v, drilled: drilled}, id: "cut.clearance", value: "cut.clearance", mark: "cut centre", kinds: kindsOf(v),
		dress: func(_ *visit, job *vehicles.Job) { job.Floor.From, job.Datum.Name = -2000, "door step" },
		truth: func(v *van, i int, at complex128) float64 { return v.clearance(i, at) },
	}
}

// 50000 surveys. Where the contract's sum is off, what came of 20000 is what is held.
func TestProofOfWhatIsDrilledBesideTheCut(t *testing.T) {
	for i, c := range []struct {
		name string
		aside
		want []bounds // nil: what the product promises
	}{
		{"bolt, no ties", bolted(0, false), nil},
		{"bolt, 3 ties", bolted(3, false), nil},
		{"bolt, drilled", bolted(0, true), nil},
		{"fuel hole, 3 ties", fuelled(3, false), nil},
		{"fuel hole, 3 ties, cut drilled", fuelled(3, true), nil},
		{"in the floor", floored(false), nil},
		// The hole's tapes and those of the ties below have one zero, whose height mostly cancels.
		{"in the floor, drilled", floored(true), []bounds{about(1.043, 0.041), about(1.043, 0.041)}},
		{"behind the datum, 4 ties", behind(4, false, 560+240i, -300), nil},
		// One zero between hole and thing: its height brings them together or apart, and the sum takes it for two errors.
		{"astride the datum, drilled", behind(0, true, 560+240i, -300), []bounds{about(0.935, 0.061), about(0.981, 0.053)}},
		{"astride the datum, steep, drilled", behind(0, true, 300+240i, -200), []bounds{about(0.894, 0.070), about(0.982, 0.053)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			c.prove(t, uint64(300+i), surveys(5000), c.want)
		})
	}
}

package vehicles

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// hangs is what a run has by a plain model: of each kind the places of what hangs there, on a leg or, with leg 0, along the run.
type hangs map[*HangingKind][]hangsAt

type hangsAt struct {
	leg   int
	start float64
}

// modelOf is what a run says hangs on it.
func modelOf(h Hanging) hangs {
	m := hangs{}
	for _, one := range h.Things() {
		m[one.Kind] = append(m[one.Kind], hangsAt{one.Leg(), one.Start()})
	}
	return m
}

// copied is a model that shares nothing with this one.
func (m hangs) copied() hangs {
	c := hangs{}
	for k, list := range m {
		c[k] = slices.Clone(list)
	}
	return c
}

// hungAnyhow is one edit of what hangs on a run, done to the run and to the model.
func hungAnyhow(t *rapid.T, of RunKind, h *Hanging, m hangs) {
	k := rapid.SampledFrom(HangingOn(of)).Draw(t, "kind")
	leg, at := rapid.IntRange(1, 3).Draw(t, "leg"), float64(rapid.IntRange(0, 900).Draw(t, "at"))
	switch list := m[k]; rapid.IntRange(0, 2).Draw(t, "edit") {
	case 0: // hung there
		if !k.Many() {
			k.Hang(h, leg, at)
			m[k] = []hangsAt{{leg, at}}
			return
		}
		places := k.List(h)
		*places = append(slices.Clone(*places), at)
		m[k] = append(list, hangsAt{0, at})
	case 1: // slid
		if len(list) > 0 {
			i := rapid.IntRange(0, len(list)-1).Draw(t, "which")
			h.Thing(k, i).Put(leg, at)
			if m[k][i] = (hangsAt{leg, at}); k.Many() {
				m[k][i].leg = 0
			}
		}
	default: // taken off
		if len(list) > 0 {
			i := rapid.IntRange(0, len(list)-1).Draw(t, "which")
			k.Without(h, i)
			if m[k] = slices.Delete(slices.Clone(list), i, i+1); len(m[k]) == 0 {
				delete(m, k)
			}
		}
	}
}

// Whatever is hung on a run, slid and taken off, it has what a plain model says, in the order of the file; no run before it has changed,
// and the file says it all.
func TestWhatHangsOnARunAgainstAModel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		of := rapid.SampledFrom(RunKinds[:]).Draw(t, "of")
		job, model := underStubs(), hangs{}
		run := *job.Run(of)
		run.Hanging = Hanging{}
		run.Path = append(run.Path, RunPoint{X: 100, Y: 100, Drop: 200}, RunPoint{X: 100, Y: 900, Drop: 210})
		var before []Hanging
		var were []hangs
		for range rapid.IntRange(1, 15).Draw(t, "edits") {
			before, were = append(before, run.Hanging), append(were, model.copied())
			hungAnyhow(t, of, &run.Hanging, model)
			require.Equal(t, model, modelOf(run.Hanging))
		}
		for i := range before {
			require.Equal(t, were[i], modelOf(before[i]), "a run before it is as it was")
		}
		for _, k := range HangingKinds {
			require.Equal(t, len(model[k]) > 0, k.Has(run.Hanging), k.Name)
			require.Nil(t, run.Hanging.Thing(k, len(model[k])), "there are no more")
		}
		last := -1
		for _, one := range run.Hanging.Things() {
			now := slices.Index(HangingKinds, one.Kind)
			require.GreaterOrEqual(t, now, last, "in the order of the file")
			last = now
		}
		for _, one := range run.Hanging.OnLegs().Things() {
			require.Positive(t, one.Leg())
		}
		job.Ref = "TL-52"
		written := job.WithRun(of, &run)
		read, faults := parse(written.Format(), "a.toml") // whether it fits there is asked when it is laid
		require.Empty(t, faults)
		require.Equal(t, model, modelOf(read.Run(of).Hanging), "the file says it all")
	})
}

// Where the last clip goes somebody has said that there are none; where the last drain goes nobody has said anything.
func TestTheLastOfManyIsTakenOff(t *testing.T) {
	for _, k := range HangingKinds {
		if !k.Many() {
			continue
		}
		var h Hanging
		*k.List(&h) = []float64{300}
		k.Without(&h, 0)
		require.Equal(t, k.SaysNone, *k.List(&h) != nil, k.Name)
		require.Empty(t, *k.List(&h))
	}
	require.True(t, AClip.SaysNone)
	require.False(t, ADrain.SaysNone)
}

// What is made otherwise stands in place of what is planned, table by table; what is as planned stays, and a job as built has nothing
// that was made otherwise.
func TestAsBuiltTableByTable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var made, planned Job
		anyThings(t, &planned)
		made.Obstructions = planned.Obstructions
		anyPlans(t, &planned)
		anyPlans(t, &made)
		built := Built{}
		if rapid.Bool().Draw(t, "heater otherwise") {
			built.Heater = made.Heater
		}
		if rapid.Bool().Draw(t, "cut otherwise") {
			built.Cut = made.Cut
		}
		for _, k := range RunKinds {
			if rapid.Bool().Draw(t, k.String()+" otherwise") {
				built = built.WithRun(k, made.Run(k))
			}
		}
		is := planned.WithBuilt(built).AsBuilt()
		require.Nil(t, is.Built)
		require.Equal(t, is, is.AsBuilt())
		one := func(otherwise, plan any, there bool) any {
			if there {
				return otherwise
			}
			return plan
		}
		require.Equal(t, one(built.Heater, planned.Heater, built.Heater != nil), any(is.Heater))
		require.Equal(t, one(built.Cut, planned.Cut, built.Cut != nil), any(is.Cut))
		for _, k := range RunKinds {
			require.Equal(t, one(built.Run(k), planned.Run(k), built.Run(k) != nil), any(is.Run(k)), k.String())
		}
		require.Equal(t, planned.Obstructions, is.Obstructions)
		require.Equal(t, built, planned.WithBuilt(built).BuiltOtherwise())
	})
}

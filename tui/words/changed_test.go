package words

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

func TestWhatBecameOfAJobInWords(t *testing.T) {
	demo := vehicles.Demo()
	demo.Obstructions[0].Name = "tank: left"
	moved := *demo.Cut
	moved.At[0] += 10
	renamed, measured := demo.Obstructions[0], demo.Obstructions[0]
	renamed.Name, measured.Drop = "tank", vehicles.Span{From: 10, To: 20, Set: true}
	with := func(edit func(j *vehicles.Job)) vehicles.Job {
		job := demo
		edit(&job)
		return job
	}
	at := survey.Reading{Text: "1200", Length: 1200, Number: true}
	refusal := vehicles.Refusal{Of: "obstruction tank: left", Name: "tank: left", Field: "drop", Label: "top", Text: "x", Why: "no number"}
	for want, after := range map[string]vehicles.Job{
		"":                   demo,
		"cut moved":          demo.WithCut(moved),
		"pilot measured":     demo.WithDrilled(&vehicles.Pair{at, at}),
		"tank: left: drop":   with(func(j *vehicles.Job) { j.Obstructions = j.Obstructions.With(0, measured) }),
		"tank: left deleted": with(func(j *vehicles.Job) { j.Obstructions = j.Obstructions.Without(0) }),
		"tank: left renamed tank": with(func(j *vehicles.Job) {
			j.Obstructions = j.Obstructions.With(0, renamed)
		}),
		"not looked for tow bar":      demo.WithLooked("tow bar", false),
		"cut taken away":              with(func(j *vehicles.Job) { j.Cut = nil }),
		"exhaust taken away":          with(func(j *vehicles.Job) { j.Exhaust = nil }),
		"battery off done":            demo.WithDone(vehicles.Done{Step: "battery-off", At: "2026-11-27"}),
		"CO inside: noted":            demo.WithDone(vehicles.Done{Step: "co-inside", Value: vehicles.Some(0)}),
		"as built: cut":               demo.WithBuilt(vehicles.Built{Cut: &moved}),
		"floor: length":               with(func(j *vehicles.Job) { j.Floor.Length += 5 }),
		"how the tape is held":        demo.WithHeld("below", vehicles.HeldLevel),
		"job: fitter":                 with(func(j *vehicles.Job) { j.Fitter = "A" }),
		"top of tank: left (refused)": demo.WithRefused([]vehicles.Refusal{refusal}),
		"cut moved; pilot measured; job: fitter, notes": with(func(j *vehicles.Job) {
			*j = j.WithCut(moved).WithDrilled(&vehicles.Pair{at, at})
			j.Fitter, j.Notes = "A", "n"
		}),
	} {
		assert.Equal(t, want, Changed(demo, after))
	}
	i := slices.IndexFunc(demo.Obstructions, func(o vehicles.Obstruction) bool { return o.Y[1].Text != "" })
	side := demo.Obstructions[i]
	side.Y[1] = at
	assert.Equal(t, side.Name+": other side", Changed(demo, with(func(j *vehicles.Job) { j.Obstructions = j.Obstructions.With(i, side) })))
	done := demo.WithDone(vehicles.Done{Step: "battery-off", At: "2026-11-27"})
	assert.Equal(t, "battery off not done", Changed(done, demo))
	assert.Equal(t, "battery off: time, note", Changed(done, demo.WithDone(vehicles.Done{Step: "battery-off", At: "2026-11-28", Note: "n"})))
	noted := demo.WithDone(vehicles.Done{Step: "battery-off", Note: "n"})
	assert.Equal(t, "battery off: nothing noted any more", Changed(noted, demo))
	assert.Equal(t, "cut placed", Changed(with(func(j *vehicles.Job) { j.Cut = nil }), demo))
	assert.Equal(t, "tank: left entered", Changed(with(func(j *vehicles.Job) { j.Obstructions = j.Obstructions.Without(0) }), demo))
	assert.Equal(t, "top of tank: left (refused no more)", Changed(demo.WithRefused([]vehicles.Refusal{refusal}), demo))
	longer := refusal
	longer.Text = "xy"
	other := refusal
	other.Field += "2"
	assert.Equal(t, "top of tank: left and 1 more (refused)", Changed(demo, demo.WithRefused([]vehicles.Refusal{refusal, other})), "a pasted page has a hundred")
	assert.Equal(t, "top of tank: left (refused)", Changed(demo.WithRefused([]vehicles.Refusal{refusal}), demo.WithRefused([]vehicles.Refusal{longer})))
	longer.Text, longer.Why = "x", "no figure"
	assert.NotEmpty(t, Changed(demo.WithRefused([]vehicles.Refusal{refusal}), demo.WithRefused([]vehicles.Refusal{longer})))
	assert.Equal(t, "looked for tow bar", Changed(demo.WithLooked("tow bar", false), demo))
}

// Whatever name a thing has, and whatever else differs, a difference is never told as none.
func TestADifferenceIsNeverSilent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job, name := vehicles.Demo(), rapid.StringN(1, 20, 40).Draw(t, "name")
		o := job.Obstructions[0]
		o.Name = name
		job.Obstructions = job.Obstructions.With(0, o)
		assert.Equal(t, len(vehicles.Differences(vehicles.Demo(), job)) > 0, Changed(vehicles.Demo(), job) != "")
	})
}

// What is not whole yet is called by its name or kind, with what was typed of it.
func TestWhatBecameOfUnfinishedThings(t *testing.T) {
	job := func(texts ...map[string]string) vehicles.Job {
		j := vehicles.NewJob("TL-07")
		for _, of := range texts {
			j.Unfinished.Obstructions = append(j.Unfinished.Obstructions, vehicles.Begun{Texts: of})
		}
		return j
	}
	begun, typed := map[string]string{"kind": "crossmember"}, map[string]string{"kind": "crossmember", "x0": "652"}
	assert.Equal(t, "crossmember begun", Changed(job(), job(begun)))
	assert.Equal(t, "fuel line begun", Changed(job(typed), job(map[string]string{"kind": "fuel line"}, typed)), "the newest first")
	assert.Equal(t, "crossmember, unfinished: gone", Changed(job(begun), job()))
	assert.Equal(t, "crossmember, unfinished: 652", Changed(job(begun), job(typed)))
	assert.Equal(t, "crossmember, unfinished: 652 taken out", Changed(job(typed), job(begun)))
	tie := vehicles.NewJob("TL-07")
	tie.Unfinished.Ties = append(tie.Unfinished.Ties, vehicles.Begun{Texts: map[string]string{"bx": "652"}})
	assert.Equal(t, "matching point begun", Changed(job(), tie), "of two words, and without a name")
	assert.Equal(t, "crossmember, unfinished: 653", Changed(job(typed), job(map[string]string{"kind": "crossmember", "x0": "653"})))
}

package vehicles

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const twoPipes = head + `
[[obstruction]]
name = "brake pipe"
kind = "brake line"
path = [[300, "R 410"], [1500, "R 410"]]
across = 8
drop = [20, 30]

[[obstruction]]
name = "loom"
kind = "wiring"
path = [[300, 0], [1500, "L 410"]]
across = 8

[cut]
at = [1210, 240]
across = 127
`

// told are differences as people read them: where, and what either file says.
func told(of []Difference) (texts [][3]string) {
	for _, d := range of {
		texts = append(texts, [3]string{d.Where, d.One, d.Other})
	}
	return texts
}

func TestDifferencesSayWhereTwoJobsDiffer(t *testing.T) {
	one, err := ParseJob([]byte(twoPipes), "one")
	require.NoError(t, err)
	other := one.WithCut(Cut{At: [2]float64{1256, 240}, Across: 127})
	pipe := other.Obstructions[0]
	pipe.Drop, pipe.Measured = Span{From: 20, To: 35, Set: true}, false
	other.Obstructions = other.Obstructions.With(0, pipe).Without(1)
	other.Fitter = "A"
	assert.Equal(t, [][3]string{
		{"cut: at", "[1210, 240]", "[1256, 240]"},
		{"job: fitter", "", `"A"`},
		{`obstruction "brake pipe": drop`, "[20, 30]", "[20, 35]"},
		{`obstruction "brake pipe": measured`, "", "false"},
		{`obstruction "loom"`, "there", ""},
	}, told(Differences(one, other)))
	assert.Empty(t, Differences(one, one))

	turned := one
	turned.Obstructions = turned.Obstructions.Move(0, 1)
	assert.Equal(t, [][3]string{{"the order of its things", "one", "another"}}, told(Differences(one, turned)))
}

// Whoever tells of a difference asks what it is of by its subject, whose name and key are those of the thing alone.
func TestADifferenceHasASubject(t *testing.T) {
	type of struct {
		of        Subject
		name, key string
	}
	seen := map[Subject]bool{}
	for text, want := range map[string]of{
		"[[obstruction]]\nname = \"a: b\"\nkind = \"other\"\nx = [1, 2]\ny = [1, 2]\ndrop = [0, 5]\n": {OfObstruction, "a: b", ""},
		"[[opening]]\nname = \"vent\"\nkind = \"vent\"\nx = [1, 2]\ny = [1, 2]\ndrop = [0, 5]\n":      {OfOpening, "vent", ""},
		"[[fitting]]\nname = \"bed \\\"x\\\"\"\nx = [1, 2]\ny = [1, 2]\nrise = [0, 5]\n":              {OfFitting, `bed "x"`, ""},
		"[[tie]]\nname = \"bolt\"\nbelow = [1, 2]\nabove = [1, 2]\n":                                  {OfTie, "bolt", ""},
		"[[surface]]\nname = \"roof\"\narea = 2\nlies = \"roof\"\n":                                   {OfSurface, "roof", ""},
		"[[done]]\nstep = \"stands\"\nat = 2026-11-27T10:15:00\n":                                     {OfStep, "stands", ""},
		"[[wheel]]\nat = [1, 2]\nacross = 600\nwidth = 200\n":                                         {OfOther, "wheel 1", "at"},
		"[cut]\nat = [1210, 240]\nacross = 127\n":                                                     {OfCut, "cut", "across"},
		"[heater]\nyaw = 90\n": {OfHeater, "heater", "yaw"},
		"[exhaust]\nacross = 24\npath = [[1, 2, 3], [400, 2, 3]]\n": {OfExhaust, "exhaust", "path"},
		"[intake]\nacross = 24\npath = [[1, 2, 3], [400, 2, 3]]\n":  {OfIntake, "intake", "path"},
		"[fuel]\nacross = 24\npath = [[1, 2, 3], [400, 2, 3]]\n":    {OfFuel, "fuel", "path"},
		"[built.cut]\nat = [1210, 240]\nacross = 127\n":             {OfBuilt, "built", "cut: across"},
		"[looked]\n\"tow bar\" = true\n":                            {OfLookedAtCut, "looked", "tow bar"},
		"[looked_runs]\n\"tow bar\" = true\n":                       {OfLookedAtRuns, "looked_runs", "tow bar"},
		"[looked_openings]\nvent = true\n":                          {OfLookedAtOutlet, "looked_openings", "vent"},
		"[[extra.\"unfinished obstruction\"]]\nx0 = \"1\"\n":        {OfBegunObstruction, "extra", "unfinished obstruction 1: x0"},
		"[[extra.\"unfinished opening\"]]\nx0 = \"1\"\n":            {OfBegunOpening, "extra", "unfinished opening 1: x0"},
		"[[extra.\"unfinished fitting\"]]\nname = \"bed\"\n":        {OfBegunFitting, "extra", `unfinished fitting "bed"`},
		"[[extra.\"unfinished matching point\"]]\nbx = \"1\"\n":     {OfBegunTie, "extra", "unfinished matching point 1: bx"},
		"[[extra.refused]]\ntext = \"x\"\n":                         {OfRefused, "extra", "refused 1: text"},
		"[extra]\nguesses = [\"floor.width\"]\n":                    {OfGuesses, "extra", "guesses"},
		"[extra.\"tape held\"]\nbelow = \"level\"\n":                {OfHeld, "extra", "tape held: below"},
		"[extra.\"looked round\"]\n\"tow bar\" = [1, 2]\n":          {OfLookedRound, "extra", "looked round: tow bar"},
		"[[extra.\"looked round runs\"]]\nkinds = [\"tow bar\"]\n":  {OfLookedRound, "extra", "looked round runs 1: kinds"},
		"[extra]\nother = \"refused\"\n":                            {OfOthers, "extra", "other"},
	} {
		job, err := ParseJob([]byte(head+text), "a.toml")
		require.NoError(t, err, text)
		var got []of
		for _, d := range Differences(NewJob("TL-07"), job) {
			got = append(got, of{d.Of, d.Name, d.Key})
			seen[d.Of] = true
		}
		assert.Contains(t, got, want, text)
	}
	assert.Len(t, seen, int(OfOthers)+1, "each subject")
}

// There is a difference when, and only when, the files are not the same; and it is the same from both sides.
func TestJobsDifferWhenTheirFilesDo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one, other := anyJob(t), anyJob(t)
		if rapid.Bool().Draw(t, "same") {
			other = one
		}
		there, back := Differences(one, other), Differences(other, one)
		require.Equal(t, !bytes.Equal(one.Format(), other.Format()), len(there) > 0)
		require.Len(t, back, len(there))
		for i := range there {
			if there[i].Where != "the order of its things" {
				turned := there[i]
				turned.One, turned.Other = turned.Other, turned.One
				require.Equal(t, turned, back[i])
			}
		}
	})
}

// When something was done is told to the minute and the second: two files that differ in nothing else differ in that.
func TestDifferencesTellTheTimeOfTheDay(t *testing.T) {
	one := NewJob("TL-43").WithDone(Done{Step: "stands", At: "2026-11-27T10:15:00", Due: "2026-12-01"})
	other := one.WithDone(Done{Step: "stands", At: "2026-11-27T11:15:00", Due: "2026-12-01"})
	day := one.WithDone(Done{Step: "stands", At: "2026-11-27", Due: "2026-12-02"})
	assert.Equal(t, [][3]string{{`done "stands": at`, "2026-11-27T10:15:00", "2026-11-27T11:15:00"}}, told(Differences(one, other)))
	assert.Equal(t, [][3]string{
		{`done "stands": at`, "2026-11-27T10:15:00", "2026-11-27"}, {`done "stands": due`, "2026-12-01", "2026-12-02"},
	}, told(Differences(one, day)))

	kept := func(text string) Job {
		job, err := ParseJob([]byte(head+"[extra]\nwhen = "+text+"\n"), "a.toml")
		require.NoError(t, err)
		return job
	}
	for a, b := range map[string]string{
		"07:32:00": "07:32:00.5", "2026-11-27T10:15:00Z": "2026-11-27T10:15:00+01:00", "2026-11-27": "2026-11-27T00:00:00", "1979-05-27T00:32:00.25": "1979-05-27T00:32:00",
	} {
		assert.Equal(t, [][3]string{{"extra: when", a, b}}, told(Differences(kept(a), kept(b))), "what others keep, too")
	}
}

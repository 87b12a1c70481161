package work

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// doneWell is a step done as it should be: with a value between its limits where one is measured.
func doneWell(s *Step) vehicles.Done {
	d := vehicles.Done{Step: s.ID, At: "2026-11-27T10:15:00"}
	if s.Measures() {
		e := s.Expected
		switch {
		case e.Least.Set && e.Most.Set:
			d.Value = vehicles.Some((e.Least.Value + e.Most.Value) / 2)
		case e.Least.Set:
			d.Value = e.Least
		default:
			d.Value = vehicles.Some(e.Most.Or(1))
		}
	}
	return d
}

// clearOf is the sample with its cut where nothing at it is foul.
func clearOf(job vehicles.Job) vehicles.Job {
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	return job.WithCut(cut)
}

// Whoever leaves one step out is told so at each step that waits for it, in its place and with what comes of it, and at no other; done as well, all is said
// to be in order. A value that is amiss is as a step left out.
func TestAStepThatIsLeftOutIsMissedWhereItIsWaitedFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := clearOf(rapid.SampledFrom([]vehicles.Job{demo, seats, timber, found("gas pipe"), found("high-voltage cable")}).Draw(t, "job"))
		all := Of(judged(t, job))
		skipped := rapid.IntRange(0, len(all)-1).Draw(t, "left out")
		amiss := all[skipped].Expected.Most.Set && rapid.Bool().Draw(t, "amiss")
		for i := range all {
			d := doneWell(&all[i])
			if i == skipped {
				if !amiss {
					continue
				}
				d.Value = vehicles.Some(all[i].Expected.Most.Value + 1)
			}
			job = job.WithDone(d)
		}
		l := Of(judged(t, job))
		name := l[skipped].Name()
		for i := range l {
			waits := slices.Contains(l[i].After, l[skipped].ID)
			wrong := l.Wrong(i)
			switch {
			case i == skipped && amiss != (wrong != ""):
				t.Fatalf("%s itself: %q", name, wrong)
			case i == skipped:
			case l[i].Foul != "":
				t.Fatalf("%s is foul where nothing at the cut is: %s", l[i].ID, l[i].Foul)
			case waits && (!strings.Contains(wrong, "not done before it: "+name) || !strings.Contains(wrong, l[i].Danger)):
				t.Fatalf("%s waits for %s: %q", l[i].ID, name, wrong)
			case !waits && wrong != "":
				t.Fatalf("%s does not wait for %s: %q", l[i].ID, name, wrong)
			}
		}
		if done, next := l.Count(), l.Next(); amiss && (done != len(l) || next != -1) || !amiss && (done != len(l)-1 || next != skipped) {
			t.Fatalf("%d of %d are done, and %d is next, with %s left out", done, len(l), next, name)
		}
	})
}

// What is wanted says what is measured, in what, and what is expected of it by whom; in short the trade's own word is left out, as a sheet says it once.
func TestWhatIsWantedInFullAndInShort(t *testing.T) {
	of := func(id string) (full, short string) {
		rows := Of(judged(t, demo)).Rows()
		i := Of(judged(t, demo)).Index(id)
		return rows[i].Wanted, rows[i].Briefly
	}
	for id, want := range map[string][2]string{
		"template-laid": {"Difference of the plate's diagonals, mm: 3 mm at most (common practice, no source).", "Difference of the plate's diagonals, mm: 3 mm at most."},
		"depth":         {"Depth of the floor, mm: 8 to 34 mm (the job's floor, ±3 mm: common practice, no source).", "Depth of the floor, mm: 8 to 34 mm (the job's floor, ±3 mm)."},
		"supply-laid":   {"Length one way, m: 4.2 m at most (as it is sized, from the job).", "Length one way, m: 4.2 m at most (as it is sized, from the job)."},
		"fuse": {
			"Fuse, A: 15 A by what is sized, unless the heater's instructions say another (common practice, no source; sizes from memory: ISO 8820-3, blade fuses).",
			"Fuse, A: 15 A by what is sized, unless the heater's instructions say another (sizes from memory: ISO 8820-3, blade fuses).",
		},
		"deburred": {"", ""},
	} {
		full, short := of(id)
		assert.Equal(t, want, [2]string{full, short}, id)
	}
	for _, jobs := range examples {
		for _, row := range Of(judged(t, *jobs[0])).Rows() {
			assert.NotContains(t, row.Briefly, rules.Practice, row.Name)
			assert.Equal(t, row.Wanted == "", row.Briefly == "", row.Name)
			assert.NotRegexp(t, `\(\)|: \)|; \)|\s\s|\.\.`, row.Briefly, row.Name)
			assert.NotRegexp(t, `\s\s|\.\.`, row.Do, row.Name)
		}
	}
}

// Whoever packs by the list of tools can do what the steps say: the bits and the saw are those of the steps, whatever the job asks.
func TestToolsAreAsLargeAsTheSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := demo
		cut, heater := *job.Cut, *job.Heater
		half := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) / 2 }
		cut.Across, cut.Pilot, heater.Bolt = half("across", 100, 320), vehicles.Some(half("pilot", 6, 24)), half("bolt", 10, 24)
		job = job.WithCut(cut).WithHeater(heater)
		r, faults := rules.Judge(job, rules.Builtin())
		if len(faults) > 0 {
			t.Skip(faults[0].Text)
		}
		l, tools := Of(&r), strings.Join(Tools(&r), "; ")
		for id, tool := range map[string]string{"pilot-drilled": "bit of %, board", "sawn": "hole saw of %", "bolts-drilled": "bit of % for the bolts"} {
			of := l[l.Index(id)].Of
			size := regexp.MustCompile(`([0-9.]+ mm) across`).FindStringSubmatch(of)
			if size == nil || !strings.Contains(tools, strings.Replace(tool, "%", size[1], 1)) {
				t.Fatalf("%s: %q; at hand is %s", id, of, tools)
			}
		}
		if want := survey.InMM(cut.Across); !strings.HasPrefix(l[l.Index("sawn")].Of, want+" across") {
			t.Fatalf("%q is sawn, planned are %s", l[l.Index("sawn")].Of, want)
		}
	})
}

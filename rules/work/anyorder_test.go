package work

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Steps are ticked, taken back and noted in any order, also such as the job has not. After each the list says what a plain record of it
// would: which are done, how many, which is next, which were done before their time and after what, and what is no step of the job; and
// each record is on paper once.
func TestStepsInAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := rapid.SampledFrom([]vehicles.Job{demo, seats, bare, timber, under("fuel tank")}).Draw(t, "job")
		steps := Of(judged(t, job))
		record := map[string]vehicles.Done{}
		for range rapid.IntRange(1, 12).Draw(t, "times") {
			step := rapid.SampledFrom(vehicles.StepKinds).Draw(t, "step").ID
			d := vehicles.Done{Step: step}
			if rapid.Bool().Draw(t, "ticked") {
				d.At = "2026-11-27"
			}
			if rapid.Bool().Draw(t, "noted") {
				d.Note = "noted of " + step
			}
			record[step] = d
			if job = job.WithDone(d); d.At == "" && d.Note == "" {
				delete(record, step)
			}
		}
		r := judged(t, job)
		l := Of(r)
		if !slices.EqualFunc(l, steps, func(a, b Step) bool { return a.ID == b.ID && slices.Equal(a.After, b.After) }) {
			t.Fatalf("which steps there are rests on what is done")
		}
		asRecorded(t, r, l, record)
		onPaperOnce(t, &job, l, record)
	})
}

// asRecorded holds a list to a record.
func asRecorded(t *rapid.T, r *rules.Result, l List, record map[string]vehicles.Done) {
	done, next := 0, -1
	for i := range l {
		s := &l[i]
		ticked := record[s.ID].At != ""
		if ticked != s.Ticked() || s.Done.Note != record[s.ID].Note {
			t.Fatalf("%s: %v, recorded is %v", s.ID, s.Done, record[s.ID])
		}
		if ticked {
			done++
		} else if next < 0 {
			next = i
		}
		var before []string
		for _, id := range s.After {
			if first := l[l.Index(id)]; record[id].At == "" && first.Known == "" {
				before = append(before, first.Name())
			}
		}
		warned := l.Warning(i)
		for _, name := range before {
			if !strings.Contains(warned, name) {
				t.Fatalf("%s: %q does not name %q", s.ID, warned, name)
			}
		}
		if early := len(before) > 0; early != (len(l.Early(i)) > 0) || early && ticked && !strings.Contains(l.Wrong(i), before[0]) {
			t.Fatalf("%s: before it %v should have been done; said is %q", s.ID, before, l.Wrong(i))
		}
	}
	if l.Count() != done || l.Next() != next {
		t.Fatalf("%d done and %d next, recorded are %d and %d, in %s", l.Count(), l.Next(), done, next, r.Job.Ref)
	}
}

// onPaperOnce looks that each record, of a step of the job or of none, has one row.
func onPaperOnce(t *rapid.T, job *vehicles.Job, l List, record map[string]vehicles.Done) {
	rows := append(l.Rows(), l.Unplaced(job)...)
	for id, d := range record {
		found := 0
		for _, row := range rows {
			if row.Name == vehicles.StepName(id) && row.Note == d.Note && row.Ticked == (d.At != "") {
				found++
			}
		}
		if found != 1 {
			t.Fatalf("%s is on paper %d times", id, found)
		}
	}
	parts := map[string]bool{}
	for _, row := range l.Rows() {
		if row.Part != "" && parts[row.Part] {
			t.Fatalf("the part %q begins twice", row.Part)
		}
		parts[row.Part] = true
	}
}

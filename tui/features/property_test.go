package features

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

var allLists = []List{Obstructions, Openings, Fittings, Ties}

// Texts and feature are the same said twice: a feature made of its own texts is the feature, whatever it is shaped like.
func TestAThingIsWhatItsTextsSay(t *testing.T) {
	for _, job := range []vehicles.Job{screentest.Full(t), screentest.Van(t), vehicles.Demo()} {
		for _, l := range allLists {
			for i := range l.Len(job) {
				feature := l.At(job, i)
				x := textsOf(feature)
				again, missing, wrong := l.build(Feature{}, nil, x)
				require.Empty(t, missing, feature.Name)
				require.Empty(t, wrong, feature.Name)
				assert.Equal(t, x, textsOf(again), feature.Name)
				kept, _, _ := l.build(feature, x, x)
				assert.Equal(t, feature, kept, "untouched, it is what the file has")
			}
		}
	}
}

// A feature whose texts come one by one, in any order, is the same feature in the end as the one they are of, and it is in no list of the
// job before it is whole.
func TestTheOrderOfTheTextsDoesNotMatter(t *testing.T) {
	full := screentest.Full(t)
	rapid.Check(t, func(rt *rapid.T) {
		l := rapid.SampledFrom([]List{Obstructions, Openings, Fittings}).Draw(rt, "list")
		from := l.At(full, rapid.IntRange(0, l.Len(full)-1).Draw(rt, "thing"))
		from.Total, from.TapedAt, from.Turn = vehicles.Totals{}, vehicles.Number{}, 0 // no part of a new feature
		if !from.Span.Set {
			return // height may be left out: the feature is whole before it
		}
		from.Name = "another"
		x := textsOf(from)
		var keys []string
		for _, key := range []string{"name", "holds", "x0", "x1", "y0", "y1", "p0x", "p0y", "p1x", "p1y", "p2x", "p2y", "cx", "cy", "across", "top", "low"} {
			if x[key] != "" {
				keys = append(keys, key)
			}
		}
		s := screentest.Judged(desk.State{}, full)
		record := Record{}
		job, next, err := New(l, s.Job).Set(s, map[string]string{"kind": x["kind"], "form": x["form"]})
		require.NoError(rt, err)
		for _, key := range pointsInOrder(rapid.Permutation(keys).Draw(rt, "order")) {
			record = next.(Record)
			require.Equal(rt, record.Real(job), l.Len(job) > l.Len(full), "till it is whole it is in no list")
			s.Job = job
			if job, next, err = record.Set(s, map[string]string{key: x[key]}); err != nil {
				rt.Skip("a reading alone may contradict the sketch: the field says so")
			}
		}
		record = next.(Record)
		require.True(rt, record.Real(job), record.Lacks(job))
		got := l.At(job, record.Row)
		want := from
		want.Measured = true
		assert.Equal(rt, textsOf(want), textsOf(got))
		assert.Empty(rt, l.unfinished(job))
	})
}

// Down and up again, and a copy that is deleted, leave the file as it was.
func TestActsThatTakeEachOtherBack(t *testing.T) {
	s := screentest.Judged(desk.State{}, screentest.Full(t))
	was := string(s.Job.Format())
	for _, l := range allLists {
		for i := range l.Len(s.Job) {
			h := Record{l, i, false}
			if down, moved, err := h.Move(s, 1); err == nil {
				up, back, err := moved.Move(screentest.Judged(desk.State{}, down), -1)
				require.NoError(t, err)
				assert.Equal(t, h, back)
				assert.Equal(t, was, string(up.Format()))
			}
			job, copied, err := h.Duplicate(s)
			require.NoError(t, err)
			gone, err := copied.Delete(screentest.Judged(desk.State{}, job))
			require.NoError(t, err)
			assert.Equal(t, was, string(gone.Format()), "%s: a copy that is deleted", h.ID())
			if l.Confirmable() {
				once, first, err := h.Confirm(s.Job)
				require.NoError(t, err)
				twice, second, err := h.Confirm(once)
				require.NoError(t, err)
				assert.NotEqual(t, first, second)
				assert.Equal(t, was, string(twice.Format()))
			}
		}
	}
	assert.Equal(t, was, string(s.Job.Format()), "the old job is as it was")
}

// What can't be done says why, and gives back the job that there was.
func TestActsOnWhatIsNotThere(t *testing.T) {
	s := screentest.Judged(desk.State{}, screentest.Full(t))
	for _, l := range allLists {
		none := Record{l, l.Rows(s.Job), false}
		assert.True(t, none.Gone(s.Job))
		_, _, err := none.Duplicate(s)
		assert.ErrorContains(t, err, "nothing to duplicate")
		_, err = none.Delete(s)
		assert.ErrorContains(t, err, "nothing to delete")
		_, _, err = none.Move(s, 1)
		assert.ErrorContains(t, err, "not finished")
		_, _, err = none.Confirm(s.Job)
		assert.Error(t, err)
		job, _, err := none.Set(s, map[string]string{"name": "ghost"})
		assert.ErrorContains(t, err, "gone")
		assert.Equal(t, s.Job, job)
		_, _, err = Record{l, 0, false}.Move(s, -1)
		assert.ErrorContains(t, err, "end of the list")
		_, _, err = Record{l, l.Len(s.Job) - 1, false}.Move(s, 1)
		assert.ErrorContains(t, err, "end of the list")
	}
}

// Every field a form shows has a label of its own and is one the feature can take.
func TestFieldsOfAFormAreToldApart(t *testing.T) {
	s := screentest.Judged(desk.State{}, screentest.Full(t))
	for _, l := range allLists {
		for i := range l.Len(s.Job) {
			keys, names := map[string]bool{}, map[string]bool{}
			for _, f := range (Record{l, i, false}).Fields(s, nil) {
				assert.False(t, keys[f.Key], f.Key)
				assert.False(t, names[f.Label], f.Label)
				keys[f.Key], names[f.Label] = true, true
				if len(f.Choices) > 0 {
					assert.Contains(t, namesOf(f.Choices), f.Text, "what is chosen is one of the choices")
				}
			}
		}
	}
}

func namesOf(choices []form.Choice) (names []string) {
	for _, c := range choices {
		names = append(names, c.Name)
	}
	return names
}

// pointsInOrder are keys with those of a line's points in their order: a row left blank between two is no point, and those behind it
// move up.
func pointsInOrder(keys []string) []string {
	var points []string
	for _, key := range keys {
		if _, _, is := pointOf(key); is {
			points = append(points, key)
		}
	}
	slices.Sort(points)
	out := slices.Clone(keys)
	for i, key := range out {
		if _, _, is := pointOf(key); is {
			out[i], points = points[0], points[1:]
		}
	}
	return out
}

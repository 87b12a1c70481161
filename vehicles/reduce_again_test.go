package vehicles

import (
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
)

// Whatever was edited, and in whatever order, a job reduced after another comes to what it comes to by itself, its faults too.
func TestReducingAfterAnEditIsReducing(t *testing.T) {
	if testing.Short() {
		t.Skip("starts no goroutine, and what it counts is of the whole run")
	}
	again, stayed := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		job := bare()
		for range rapid.IntRange(1, 6).Draw(t, "things") {
			job.Obstructions = append(job.Obstructions, anySurveyed(t))
		}
		var before Plan
		for range rapid.IntRange(10, 25).Draw(t, "edits") {
			want, faults := Reduce(job)
			got, also := ReduceAfter(&before, &job, ClosureLimit())
			require.Equal(t, want, got)
			require.Equal(t, faults, also)
			known := before.reduced.of(&job)
			for i := range got.Obstructions {
				if known.has(job.Obstructions, i) {
					again++
				}
			}
			if len(before.Obstructions) > 0 && len(got.Obstructions) > 0 && &before.Obstructions[0] == &got.Obstructions[0] {
				stayed++
			}
			before, job = got, anyEdit(t, job)
		}
	})
	assert.Greater(t, again, 100, "places were taken over one by one")
	assert.Greater(t, stayed, 10, "and all of them")
}

// anySurveyed is an obstruction, mostly without a fault; many run on from the one before.
func anySurveyed(t *rapid.T) Obstruction {
	reading := func(axis survey.Axis, texts ...string) survey.Reading {
		r, err := survey.Parse(rapid.SampledFrom(texts).Draw(t, "text"), axis)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	point := func() Pair {
		return Pair{reading(survey.X, "400", "700.5", "1200", "+84"), reading(survey.Y, "100", "-300", "L 240", "R 310", "+20")}
	}
	o := Obstruction{Name: "thing", Kind: "other", Drop: anySpan(t), Measured: rapid.Bool().Draw(t, "measured")}
	switch o.Shape = Shape(rapid.IntRange(0, 2).Draw(t, "shape")); o.Shape {
	case Piped:
		for range rapid.IntRange(0, 5).Draw(t, "points") {
			o.Path = append(o.Path, point())
		}
		o.Across = Some(20)
	case Disc:
		o.Centre, o.Across = point(), Some(60)
	default:
		near := point()
		o.X, o.Y = Pair{near[0], reading(survey.X, "+60", "+90", "1300")}, Pair{near[1], reading(survey.Y, "+40", "400")}
		o.Turn = rapid.SampledFrom([]float64{0, 0, 30}).Draw(t, "turn")
	}
	if rapid.IntRange(0, 9).Draw(t, "total") == 0 {
		o.Total[survey.X] = reading(survey.X, "1250")
	}
	return o
}

// anyEdit edits a job in one of the ways that change what its readings come to, or how, or neither.
func anyEdit(t *rapid.T, job Job) Job {
	n := len(job.Obstructions)
	i := rapid.IntRange(0, n).Draw(t, "at")
	switch rapid.IntRange(0, 12).Draw(t, "edit") {
	case 0:
		job.Datum = anyDatum(t)
	case 1:
		job.Datum = Datum{}
	case 2:
		job.Bow = anyBow(t)
	case 3:
		job.Tape.Read = Some(rapid.Float64Range(0.5, 3).Draw(t, "read"))
	case 4:
		job.Floor.Width = rapid.Float64Range(1500, 1900).Draw(t, "width")
	case 5:
		job.Floor.Ground = rapid.Float64Range(300, 600).Draw(t, "ground")
	case 6:
		job.Obstructions = job.Obstructions.Without(i)
	case 7:
		job.Obstructions = job.Obstructions.Insert(i, anySurveyed(t))
	case 8:
		job.Cut = &Cut{At: [2]float64{rapid.Float64Range(500, 900).Draw(t, "cut"), 100}, Across: 127}
	case 9:
		if i < n {
			o := job.Obstructions[i]
			o.Name, o.Drop, o.TapedAt = "another", anySpan(t), Some(40)
			job.Obstructions = job.Obstructions.With(i, o)
		}
	case 10:
		job.Obstructions = slices.Clone(job.Obstructions)
	default:
		if i < n {
			job.Obstructions = job.Obstructions.With(i, anySurveyed(t))
		}
	}
	return job
}

// Each field of an obstruction is compared, or is one that its place does not rest on: a new one is a question of which.
func TestEveryFieldOfAPlaceIsCompared(t *testing.T) {
	unasked := []string{"Name", "Kind", "Holds", "Travel", "Total"} // what has an overall reading is never taken over
	o := Obstruction{Place: Place{Path: []Pair{{}}}}
	var each func(v reflect.Value, name string)
	each = func(v reflect.Value, name string) {
		switch v.Kind() {
		case reflect.Struct:
			for i := range v.NumField() {
				if f := v.Type().Field(i); !slices.Contains(unasked, f.Name) {
					each(v.Field(i), name+"."+f.Name)
				}
			}
			return
		case reflect.Array, reflect.Slice:
			for i := range v.Len() {
				each(v.Index(i), name)
			}
			return
		}
		was := reflect.ValueOf(v.Interface())
		same := o
		same.Path = slices.Clone(o.Path)
		v.Set(other(v))
		assert.False(t, o.reducesAs(&same), name)
		v.Set(was)
		assert.True(t, o.reducesAs(&same), name)
	}
	each(reflect.ValueOf(&o).Elem(), "obstruction")
}

// other is another value than one of its type's zero.
func other(v reflect.Value) reflect.Value {
	switch v.Kind() {
	case reflect.Bool:
		return reflect.ValueOf(true).Convert(v.Type())
	case reflect.String:
		return reflect.ValueOf("other").Convert(v.Type())
	}
	return reflect.ValueOf(1).Convert(v.Type())
}

package sheet

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// read reads a tape's words as they stand on paper.
func read(t require.TestingT, text string, axis survey.Axis) survey.Reading {
	if v, err := strconv.ParseFloat(text, 64); err == nil && !strings.HasPrefix(text, "+") {
		return survey.FromNumber(v, v == float64(int(v)))
	}
	r, err := survey.Parse(text, axis)
	require.NoError(t, err, text)
	return r
}

// readPair reads two of them that stand in one cell.
func readPair(t require.TestingT, text string, axis survey.Axis) vehicles.Pair {
	low, high, both := strings.Cut(text, " to ")
	require.True(t, both, text)
	return vehicles.Pair{read(t, low, axis), read(t, high, axis)}
}

// placed is the place that a row of what was surveyed tells: its cells are number, name, kind, along, across, height, remarks.
func placed(t require.TestingT, cells []string) (p vehicles.Place) {
	for _, remark := range strings.Split(cells[6], ", ") {
		words := strings.Fields(remark)
		switch {
		case remark == "round":
			p.Shape = vehicles.Disc
		case remark == "a line":
			p.Shape = vehicles.Piped
		case len(words) == 2 && words[0] == "turned":
			v, err := strconv.ParseFloat(strings.TrimSuffix(words[1], survey.Degree), 64)
			require.NoError(t, err)
			p.Turn = v
		case len(words) == 2 && words[1] == "across":
			v, err := strconv.ParseFloat(words[0], 64)
			require.NoError(t, err)
			p.Across = vehicles.Some(v)
		}
	}
	switch p.Shape {
	case vehicles.Disc:
		p.Centre = vehicles.Pair{read(t, cells[3], survey.X), read(t, cells[4], survey.Y)}
	case vehicles.Piped:
		xs, ys := strings.Split(cells[3], "; "), strings.Split(cells[4], "; ")
		require.Len(t, ys, len(xs))
		for i := range xs {
			p.Path = append(p.Path, vehicles.Pair{read(t, xs[i], survey.X), read(t, ys[i], survey.Y)})
		}
	default:
		p.X, p.Y = readPair(t, cells[3], survey.X), readPair(t, cells[4], survey.Y)
	}
	return p
}

// height is the range that a row tells; not set where it was not measured.
func height(t require.TestingT, text string) (s vehicles.Span) {
	if text == "not measured" {
		return s
	}
	low, high, both := strings.Cut(text, " to ")
	require.True(t, both, text)
	from, err := strconv.ParseFloat(low, 64)
	require.NoError(t, err)
	to, err := strconv.ParseFloat(high, 64)
	require.NoError(t, err)
	return vehicles.Span{From: from, To: to, Set: true}
}

// enteredAgain is a job whose things are where its paper says that they are, and nothing of the job itself.
func enteredAgain(t require.TestingT, s *source) vehicles.Job {
	job := s.Job
	job.Obstructions, job.Openings, job.Fittings = nil, nil, nil
	for i, row := range s.obstructions().Rows {
		require.Equal(t, strconv.Itoa(i+1), row.Cells[0])
		o := s.Job.Obstructions[i]
		require.Equal(t, []string{o.Name, o.Kind}, row.Cells[1:3])
		o.Place, o.Drop = placed(t, row.Cells), height(t, row.Cells[5])
		o.Measured = !strings.Contains(row.Cells[6], notHere)
		job.Obstructions = append(job.Obstructions, o)
	}
	for i, row := range s.openings().Rows {
		o := s.Job.Openings[i]
		require.Equal(t, []string{o.Name, o.Kind}, row.Cells[1:3])
		o.Place, o.Drop, o.Unconfirmed = placed(t, row.Cells), height(t, row.Cells[5]), strings.Contains(row.Cells[6], notHere)
		job.Openings = append(job.Openings, o)
	}
	for i, row := range s.fittings().Rows {
		o := s.Job.Fittings[i]
		require.Equal(t, []string{o.Name, o.Kind}, row.Cells[1:3])
		o.Place, o.Rise, o.Unconfirmed = placed(t, row.Cells), height(t, row.Cells[5]), strings.Contains(row.Cells[6], notHere)
		job.Fittings = append(job.Fittings, o)
	}
	return job
}

// asFound holds the places and findings of a job that was entered again from paper to those of the job that was printed.
func asFound(t require.TestingT, s *source) {
	again := judged(t, enteredAgain(t, s))
	for i := range s.Plan.Obstructions {
		require.Equal(t, s.Plan.Obstructions[i].Prism, again.Plan.Obstructions[i].Prism, s.Job.Obstructions[i].Name)
	}
	require.Len(t, again.Findings, len(s.Findings))
	for i := range s.Findings {
		was, is := &s.Findings[i], &again.Findings[i]
		require.Equal(t, was.About(), is.About())
		require.Equal(t, was.Verdict, is.Verdict, was.About())
		require.InDelta(t, was.Value, is.Value, 1e-9, was.About())
	}
	require.Equal(t, s.Verdict, again.Verdict)
}

// Whoever has nothing but the paper has the survey: what it says of obstructions, openings and fittings, entered again, is in the same places and is judged
// the same, in every sample job.
func TestTheSurveyCanBeEnteredAgainFromPaper(t *testing.T) {
	cases(t, func(_ string, s *source, _ *expected) { asFound(t, s) })
	asFound(t, paperOf(t, vehicles.Demo()))
	rapid.Check(t, func(t *rapid.T) {
		job := vehicles.Demo()
		tenth := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) / 10 }
		for range rapid.IntRange(1, 5).Draw(t, "more things") {
			o := job.Obstructions[0]
			o.Name = "thing " + strconv.Itoa(len(job.Obstructions))
			x, y := tenth("x", 1600, 25000), tenth("y", -7000, 7000)
			at := func(v float64) survey.Reading { return survey.FromNumber(v, false) }
			switch rapid.IntRange(0, 2).Draw(t, "shape") {
			case 0:
				o.Place = vehicles.Place{X: vehicles.Pair{at(x), at(x + tenth("long", 10, 3000))}, Y: vehicles.Pair{at(y), at(y + tenth("wide", 10, 900))}, Turn: tenth("turn", -890, 890)}
			case 1:
				o.Place = vehicles.Place{Shape: vehicles.Disc, Centre: vehicles.Pair{at(x), at(y)}, Across: vehicles.Some(tenth("across", 10, 3000))}
			default:
				o.Place = vehicles.Place{Shape: vehicles.Piped, Path: vehicles.List[vehicles.Pair]{{at(x), at(y)}, {at(x + tenth("on", 10, 900)), at(y)}}, Across: vehicles.Some(tenth("thick", 10, 300))}
			}
			if o.Drop = (vehicles.Span{From: tenth("top", 0, 500), To: tenth("bottom", 501, 3000), Set: true}); rapid.IntRange(0, 4).Draw(t, "height") == 0 {
				o.Drop = vehicles.Span{}
			}
			o.Measured = rapid.Bool().Draw(t, "measured")
			job.Obstructions = job.Obstructions.Insert(len(job.Obstructions), o)
		}
		asFound(t, paperOf(t, job))
	})
}

// The matching points are on paper as they were taped on either side, and say where one is left out.
func TestMatchingPointsAreOnPaperAsTheyWereTaped(t *testing.T) {
	s := paperOf(t, vehicles.Demo())
	rows := s.ties().Rows
	require.Len(t, rows, 2)
	assert.Equal(t, []string{"", "seat bolt, front left", "2954", "L 328", "2952", "L 325", ""}, rows[0].Cells)
	assert.Equal(t, []string{"", "lashing eye, rear right", "455", "R 287", "434", "R 283", ""}, rows[1].Cells)
	job := vehicles.Demo()
	job.Ties = job.Ties.With(0, vehicles.Tie{Name: "bolt", Below: job.Ties[0].Below, Above: job.Ties[0].Above})
	assert.Equal(t, "left out", paperOf(t, job).ties().Rows[0].Cells[6])
}

// A number on a picture from below is that of the thing in the list: each thing near the cut has its own there, none has another's, and none is named.
func TestNumbersOnThePictureAreThoseOfTheList(t *testing.T) {
	cases(t, func(name string, s *source, _ *expected) {
		rows := s.obstructions().Rows
		seen := map[string]bool{}
		for _, picture := range each[Picture](s.below()) {
			for _, it := range picture.Scene.Items {
				if it.Code != "" && it.Role != scene.Fitting {
					t.Errorf("%s: %q keeps its code %q", name, it.Label, it.Code)
				}
				if n, err := strconv.Atoi(it.Label); err == nil {
					require.LessOrEqual(t, n, len(rows), name)
					assert.Equal(t, it.Ref, n-1, name)
					seen[it.Label] = true
				}
			}
		}
		for _, row := range rows {
			assert.True(t, seen[row.Cells[0]], "%s: %s is on no picture", name, row.Cells[1])
		}
	})
}

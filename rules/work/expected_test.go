package work

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// limits are the figures in what is said of a value that is amiss: "35 mm: 8 to 34 mm is expected" has 35, 8 and 34.
var limits = regexp.MustCompile(`-?[0-9]+(\.[0-9]+)?`)

// What is said of a value that is amiss never contradicts itself: the value as it is told lies outside of the limits as they are told, by however
// little it is outside of them.
func TestAValueThatIsAmissIsToldApartFromItsLimit(t *testing.T) {
	for _, c := range []struct {
		job   vehicles.Job
		step  string
		value float64
		want  string
	}{
		{demo, "fall", 19.96, "19.96 mm/m: 20 mm/m at least is expected"},
		{demo, "co-inside", 0.04, "0.04 ppm: 0 ppm at most is expected"},
		{demo, "pump-hung", 90.04, "90.04 °: 15 to 90 ° is expected"},
		{with(func(j *vehicles.Job) { j.Electrics.Cable = vehicles.Some(4275) }), "supply-laid", 4.29, "4.29 m: 4.275 m at most is expected"},
		{with(func(j *vehicles.Job) { j.Stack, j.Floor.Thickness = nil, 31.75 }), "depth", 34.77, "34.77 mm: 28.75 to 34.75 mm is expected"},
	} {
		list := Of(judged(t, c.job.WithDone(vehicles.Done{Step: c.step, Value: vehicles.Some(c.value)})))
		assert.Equal(t, c.want, list[list.Index(c.step)].Amiss())
	}
	rapid.Check(t, func(t *rapid.T) {
		thousandth := func(name string, low, high int) float64 {
			return float64(rapid.IntRange(low, high).Draw(t, name)) / 1000
		}
		job := demo.WithRule("exhaust.fall", thousandth("fall asked", 0, 60_000))
		job.Electrics.Cable = vehicles.Some(float64(rapid.IntRange(100, 9000).Draw(t, "cable")))
		job.Stack, job.Floor.Thickness = nil, thousandth("thick", 10_000, 60_000)
		step := rapid.SampledFrom([]string{"fall", "pump-hung", "supply-laid", "depth", "co-inside", "ran", "template-laid"}).Draw(t, "step")
		list := Of(judged(t, job))
		s := list[list.Index(step)]
		limit := rapid.SampledFrom([]vehicles.Number{s.Expected.Least, s.Expected.Most}).Draw(t, "limit")
		if !limit.Set {
			t.Skip("no such limit")
		}
		exact := survey.Rounded(limit.Value, 3)
		if s.Done.Value = vehicles.Some(exact); s.Amiss() != "" {
			t.Fatalf("%s: the limit itself is not amiss: %s", step, s.Amiss())
		}
		if beside := thousandth("beside it", -200, 200); beside != 0 {
			s.Done.Value = vehicles.Some(survey.Rounded(exact+beside, 3))
			asToldApart(t, &s)
		}
	})
}

// Limits that were added up may be off by a millionth: what is beside one by no more is not amiss.
func TestByHowMuchALimitMayBeOff(t *testing.T) {
	s := Step{Expected: Expected{Least: vehicles.Some(10), Most: vehicles.Some(20)}}
	for value, amiss := range map[float64]bool{
		10: false, 20: false, 10 - 0.95e-6: false, 10 - 1.05e-6: true, 20 + 0.95e-6: false, 20 + 1.05e-6: true,
	} {
		s.Done.Value = vehicles.Some(value)
		assert.Equal(t, amiss, s.Amiss() != "", "%v", value)
	}
}

// asToldApart reads what is said of a step's value, and holds it to what the value and its limits are.
func asToldApart(t *rapid.T, s *Step) {
	v, e := s.Done.Value.Value, s.Expected
	said := s.Amiss()
	if outside := e.Least.Set && v < e.Least.Value || e.Most.Set && v > e.Most.Value; outside != (said != "") {
		t.Fatalf("%s: %v of %v to %v: %q", s.ID, v, e.Least, e.Most, said)
	}
	if said == "" {
		return
	}
	var told []float64
	for _, text := range limits.FindAllString(strings.ReplaceAll(said, s.Unit, ""), -1) {
		v, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		told = append(told, v)
	}
	low, high := told[1], told[len(told)-1]
	switch {
	case e.Least.Set && e.Most.Set && told[0] >= low && told[0] <= high, !e.Most.Set && told[0] >= low, !e.Least.Set && told[0] <= high:
		t.Fatalf("%s: %q, of %v", s.ID, said, s.Done.Value)
	}
}

// A value is told as it was noted, with its unit, and one that was not noted is no text.
func TestAValueIsToldAsItWasNoted(t *testing.T) {
	for _, c := range []struct {
		step  string
		value vehicles.Number
		want  string
	}{
		{"co-inside", vehicles.Some(0), "0 ppm"}, {"glow-voltage", vehicles.Some(11.25), "11.25 V"}, {"fall", vehicles.Some(-3), "-3 mm/m"}, {"ran", vehicles.Number{}, ""},
	} {
		list := Of(judged(t, demo.WithDone(vehicles.Done{Step: c.step, At: "2026-11-27", Value: c.value})))
		s := list[list.Index(c.step)]
		assert.Equal(t, c.want, s.Value())
		assert.Equal(t, !c.value.Set, s.Lacks() != "", "%s is ticked: a value that is measured and not noted is lacking", c.step)
		s.Done.At = ""
		assert.Empty(t, s.Lacks(), "what is not done lacks nothing yet")
	}
}

// Each way in which something is expected is told in words that say which way the limit goes.
func TestLimitsInWords(t *testing.T) {
	some := vehicles.Some
	for want, e := range map[string]Expected{
		"15 to 90 °": {Least: some(15), Most: some(90)}, "20 ° at least": {Least: some(20)}, "4.275 ° at most": {Most: some(4.275)}, "0 ° at most": {Most: some(0)},
		"as it comes": {Words: "as it comes"}, "": {}, "3 ° at most": {Most: some(3), Words: "not said where there is a figure"},
		"11.2 ° at least": {Least: some(5.6 + 5.6000000000001)},
	} {
		assert.Equal(t, want, e.Text("°"))
	}
	assert.Equal(t, "31.8", survey.Figure(31.75), "a tenth is not enough for a limit in inches")
}

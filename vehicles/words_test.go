package vehicles

import (
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
)

// apart is a slow twin of unlike, from the definition of the optimal string alignment distance: the last letters match,
// or one is put in, left out or changed, or the last two changed places.
func apart(a, b string) int {
	switch {
	case a == "":
		return len(b)
	case b == "":
		return len(a)
	}
	m, n := len(a)-1, len(b)-1
	change := 1
	if a[m] == b[n] {
		change = 0
	}
	least := min(apart(a[:m], b)+1, apart(a, b[:n])+1, apart(a[:m], b[:n])+change)
	if m > 0 && n > 0 && a[m] == b[n-1] && a[m-1] == b[n] {
		least = min(least, apart(a[:m-1], b[:n-1])+1)
	}
	return least
}

func TestHowUnlikeTwoWordsAre(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"drop", "dorp", 1}, {"across", "acros", 1}, {"path", "pahtt", 2}, {"kitten", "sitting", 3}, {"ca", "abc", 3}} {
		assert.Equal(t, c.want, unlike([]rune(c.a), []rune(c.b)), "%s, %s", c.a, c.b)
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.StringMatching(`[abc]{0,6}`).Draw(t, "a"), rapid.StringMatching(`[abc]{0,6}`).Draw(t, "b")
		require.Equal(t, apart(a, b), unlike([]rune(a), []rune(b)))
		require.Equal(t, apart(a, b), unlike([]rune(b), []rune(a)), "either way round")
	})
}

// A short word may be off by two letters, a longer one by two in five.
func TestTheNearestWordIsNotFarfetched(t *testing.T) {
	words := []string{"name", "kind", "path", "crossmember", "cut.clearance"}
	for word, want := range map[string]string{
		"nmae": "name", "kin": "kind", "knd": "kind", "Path": "path", "pth": "path", "wxyz": "", "kid": "kind",
		"crosmember": "crossmember", "crssmmbr": "crossmember", "crmember": "crossmember", "crbr": "", "cut": "cut.clearance",
		"": "", strings.Repeat("name", 16): "",
	} {
		assert.Equal(t, want, Nearest(word, words), word)
	}
	assert.Equal(t, "abc", Nearest("abd", []string{"abc", "abe"}), "the first of several as near")
	assert.Equal(t, "abcde", Nearest("abcxy", []string{"abcde"}), "two of five")
	assert.Empty(t, Nearest("abxyz", []string{"abcde"}), "three of five")
	assert.Equal(t, "abcdefghij", Nearest("abcdefwxyz", []string{"abcdefghij"}), "four of ten")
	assert.Empty(t, Nearest("abcdevwxyz", []string{"abcdefghij"}), "five of ten")
	long := strings.Repeat("a", survey.LongestQuote)
	assert.Equal(t, long, Nearest(long, []string{long}))
	assert.Empty(t, Nearest(long+"a", []string{long + "a"}), "what is not quoted in full is not guessed at")
}

func TestWhatIsFoundIsSaidShortly(t *testing.T) {
	for want, value := range map[string]any{
		`"a \"b\"\n"`: "a \"b\"\n", "7": int64(7), "-1.5": -1.5, "nan": nan(), "true": true, "a date or time": time.Now(),
		`[1, "x", [2.5]]`: []any{int64(1), "x", []any{2.5}}, "a list of tables": []map[string]any{{}}, "a table": map[string]any{},
	} {
		assert.Equal(t, want, found(value))
	}
	long := strings.Repeat("é", survey.LongestQuote)
	assert.Equal(t, `"`+long+`"`, found(long), "letters count, not bytes")
	assert.Equal(t, `"`+long+`..."`, found(long+"x"))
	assert.LessOrEqual(t, len(found([]any{long, long, long})), 2*survey.LongestQuote+5)
}

func nan() float64 {
	zero := 0.0
	return zero / zero
}

// The path of a key says where it stands, whatever its parts are called.
func TestKeyPathsInWords(t *testing.T) {
	names := map[string][]string{"obstruction": {"rail", "", `a "b"`}}
	for path, want := range map[string]string{
		"":                               "the file",
		"floor":                          "floor",
		"floor.width":                    "floor: width",
		"obstruction[0].x":               `obstruction "rail": x`,
		"obstruction[1].x[1]":            "obstruction 2: x, value 2",
		"obstruction[2].path[1][0]":      `obstruction "a \"b\"": path, point 2, x`,
		"obstruction[7].path[0][1]":      "obstruction 8: path, point 1, y",
		"exhaust.path[2][2]":             "exhaust: path, point 3, drop",
		"exhaust.muffler.leg":            "exhaust: muffler.leg",
		`rules."cut.clearance"`:          `rules: "cut.clearance"`,
		"obstruction[0].centre[1]":       `obstruction "rail": centre, y`,
		"obstruction[0].total.x":         `obstruction "rail": total.x`,
		"exhaust.path[0][3]":             "exhaust: path, point 1, value 4",
		`extra."a.b"[0]."c d".e[3]`:      `extra: "a.b", value 1."c d".e, value 4`,
		"obstruction[3].x":               "obstruction 4: x",
		`obstruction[0]."1 strange key"`: `obstruction "rail": "1 strange key"`,
	} {
		assert.Equal(t, want, describe(path, names), path)
	}
}

func TestKeyPathsAreTakenApartAsTheyWerePutTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path, parents := "", []string{""}
		for range rapid.IntRange(1, 5).Draw(t, "parts") {
			if path != "" && rapid.Bool().Draw(t, "index") {
				path = joinIndex(path, rapid.IntRange(0, 99).Draw(t, "i"))
			} else {
				path = joinKey(path, rapid.StringMatching(`[a-z ."\\é\[\]-]{1,5}`).Draw(t, "key"))
			}
			parents = append(parents, path)
		}
		for n := len(parents) - 1; n > 0; n-- {
			require.Equal(t, parents[n-1], parentKey(parents[n]))
		}
	})
}

func TestErrorsOfAFileStandOnTheirLines(t *testing.T) {
	e := FileErrors{{File: "a.toml", Line: 3, Text: "one"}, {File: "a.toml", Text: "two", reading: true}, {File: "a\nb", Line: 1, Text: "three"}}
	assert.Equal(t, "a.toml:3: one\na.toml: two\na␊b:1: three", e.Error())
	assert.False(t, e.WholeJob())
	assert.True(t, e[1:2].WholeJob())
}

// What was begun on the screen keeps a job from being settled, whoever wrote it and in whatever shape.
func TestWhatIsUnfinishedIsCounted(t *testing.T) {
	job := Job{}
	assert.True(t, job.Settled())
	for n, list := range []*List[Begun]{&job.Unfinished.Obstructions, &job.Unfinished.Openings, &job.Unfinished.Fittings, &job.Unfinished.Ties} {
		*list = list.Insert(0, Begun{})
		assert.Equal(t, n+1, job.UnfinishedCount())
	}
	assert.False(t, job.Settled())
	assert.Equal(t, 2, extraRead(t, map[string]any{"unfinished opening": []map[string]any{{"name": "a"}, {"x0": int64(7)}}, "other": []any{1}}).UnfinishedCount())
	odd := extraRead(t, map[string]any{"unfinished opening": []any{map[string]any{"name": "a"}, 7, "x"}, "unfinished fitting": "none"})
	assert.Equal(t, 1, odd.UnfinishedCount(), "what is no table is nobody's thing")
}

func TestRefusedReadingsAreSaidInOneLine(t *testing.T) {
	one := Refusal{Name: "fuel tank", Label: "bottom", Text: "203"}
	two := Refusal{Name: "floor", Label: "width"}
	assert.Empty(t, RefusedWords(nil))
	assert.Equal(t, "one reading was refused and is not in the job: bottom of fuel tank, 203", RefusedWords([]Refusal{one}))
	assert.Equal(t, "2 readings were refused and are not in the job: bottom of fuel tank, 203; width of floor, emptied",
		RefusedWords([]Refusal{one, two}))
	assert.False(t, Job{}.WithRefused([]Refusal{one}).Settled())
	assert.True(t, Job{}.WithRefused([]Refusal{one}).WithRefused(nil).Settled())
}

// A heater of each class has every size; a size in the file takes the place of the class's and of no other.
func TestAHeatersOwnSizesStandInForItsClass(t *testing.T) {
	set := map[string]struct {
		text string
		has  HeaterKeys
		put  func(*Heater)
	}{
		"yaw":          {"90", HasYaw, func(h *Heater) { h.Yaw = 90 }},
		"body":         {"[1, 2, 3]", HasBody, func(h *Heater) { h.Body = [3]float64{1, 2, 3} }},
		"body_at":      {"[4, 5]", HasBodyAt, func(h *Heater) { h.BodyAt = [2]float64{4, 5} }},
		"plate":        {"[6, 7]", HasPlate, func(h *Heater) { h.Plate = [2]float64{6, 7} }},
		"turret":       {"8", HasTurret, func(h *Heater) { h.Turret = Some(8) }},
		"stub_drop":    {"9", HasStubDrop, func(h *Heater) { h.StubDrop = 9 }},
		"exhaust_stub": {"[1, -1]", HasExhaustStub, func(h *Heater) { h.ExhaustStub = [2]float64{1, -1} }},
		"intake_stub":  {"[2, -2]", HasIntakeStub, func(h *Heater) { h.IntakeStub = [2]float64{2, -2} }},
		"fuel_stub":    {"[3, -3]", HasFuelStub, func(h *Heater) { h.FuelStub = [2]float64{3, -3} }},
		"space":        {"{ rear = 4 }", HasRearSpace, func(h *Heater) { h.Space.Rear = 4 }},
		"duct":         {`["rear"]`, HasDuct, func(h *Heater) { h.Duct = Ends{Rear: true} }},
		"duct_across":  {"75", HasDuctAcross, func(h *Heater) { h.DuctAcross = 75 }},
		"return_area":  {"61.5", HasReturnArea, func(h *Heater) { h.ReturnArea = Some(61.5) }},
		"air":          {`"locker"`, HasAir, func(h *Heater) { h.Air = Locker }},
		"stored":       {`["lead batteries", "petrol"]`, HasStored, func(h *Heater) { h.Stored = Stored{Petrol: true, Lead: true} }},
	}
	for _, class := range HeaterClasses() {
		plain, ok := HeaterClass(class)
		require.True(t, ok)
		assert.Positive(t, min(plain.Body[0], plain.Body[1], plain.Body[2], plain.Plate[0], plain.Plate[1], plain.Turret.Value, plain.StubDrop))
		for key, s := range set {
			job, faults := parse([]byte(head+"[heater]\nclass = \""+class+"\"\n"+key+" = "+s.text), "a.toml")
			require.Empty(t, faults)
			want := plain
			s.put(&want)
			want.Given |= s.has
			assert.Equal(t, want, *job.Heater, "%s of %s", key, class)
		}
	}
	// A larger class is no smaller anywhere, its pipes go through the usual hole side by side, and it asks for no room that no
	// van has.
	for i, class := range HeaterClasses() {
		h, _ := HeaterClass(class)
		for _, stub := range [][2]float64{h.ExhaustStub, h.IntakeStub, h.FuelStub} {
			assert.LessOrEqual(t, math.Hypot(stub[0], stub[1])+13, UsualAcross/2., "%s: %v", class, stub)
		}
		assert.Equal(t, [2]float64{-h.ExhaustStub[0], h.ExhaustStub[1]}, h.IntakeStub, class)
		assert.Zero(t, h.FuelStub[0])
		s := h.Space
		assert.LessOrEqual(t, max(s.Front, s.Rear, s.Sides, s.Top), 400., class)
		assert.GreaterOrEqual(t, min(s.Front, s.Rear, s.Sides, s.Top), 50., class)
		assert.GreaterOrEqual(t, min(h.Plate[0], h.Plate[1]), UsualAcross+20., "the flange covers the hole")
		if i == 0 {
			continue
		}
		before, _ := HeaterClass(HeaterClasses()[i-1])
		sizes := func(h Heater) []float64 {
			return []float64{h.Body[0], h.Body[1], h.Body[2], h.Plate[0], h.Plate[1], h.Space.Front, h.Space.Rear, h.Space.Sides, h.Space.Top, h.Turret.Value, h.StubDrop}
		}
		for k, size := range sizes(h) {
			assert.GreaterOrEqual(t, size, sizes(before)[k], "%s, %d", class, k)
		}
	}
	_, ok := HeaterClass("3 kW")
	assert.False(t, ok)
	job, faults := parse([]byte(head+"[heater]\nyaw = 5"), "a.toml")
	require.Empty(t, faults)
	assert.Equal(t, "2 kW", job.Heater.Class)
	assert.Equal(t, HasYaw, job.Heater.Given, "the class was not in the file")
}

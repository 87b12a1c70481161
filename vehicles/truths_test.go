package vehicles

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What a floor is made of, of every layer and every pair of layers with all that somebody may have said of deck and layers: metal makes
// the deck steel unless somebody said otherwise, anything else may burn, and metal alone bears nothing that does.
func TestWhatLayersSayOfTheDeck(t *testing.T) {
	stacks := [][]string{nil}
	for _, a := range LayerKinds {
		stacks = append(stacks, []string{a})
		for _, b := range LayerKinds {
			stacks = append(stacks, []string{a, b})
		}
	}
	metal := func(kind string) bool { return kind == "sheet" || kind == "swage" }
	other := func(kind string) bool { return !metal(kind) }
	for _, kinds := range stacks {
		for _, deck := range []string{"", Steel, Timber} {
			for _, layers := range []string{"", Wood, NoLayers} {
				job := Job{Floor: Floor{Deck: deck, Layers: layers}}
				for _, kind := range kinds {
					job.Stack = append(job.Stack, Layer{Kind: kind, Thick: 1})
				}
				wantDeck := deck
				if deck == "" && slices.ContainsFunc(kinds, metal) {
					wantDeck = Steel
				}
				assert.Equal(t, wantDeck, job.Deck(), "%v, said to be %q", kinds, deck)
				wantOn := layers
				switch {
				case slices.ContainsFunc(kinds, other):
					wantOn = Wood
				case len(kinds) > 0 && layers == "":
					wantOn = NoLayers
				}
				assert.Equal(t, wantOn, job.OnDeck(), "%v, said to bear %q", kinds, layers)
			}
		}
	}
}

// A moment reads back as it was written, moments stand in the order of their texts, and a step is as long ago as the clock says.
func TestMomentsReadBackInTheirOrder(t *testing.T) {
	zone := time.FixedZone("there", -5*3600)
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) time.Time {
			return time.Unix(rapid.Int64Range(0, 4e9).Draw(t, name), rapid.Int64Range(0, 1e9-1).Draw(t, name+" ns")).In(zone)
		}
		a, b := draw("a"), draw("b")
		text := Moment(a)
		again, ok := ParseMoment(text)
		require.True(t, ok)
		require.Equal(t, text, again)
		spaced, ok := ParseMoment(" " + text[:10] + " " + text[11:] + " ")
		require.True(t, ok, "as people type it")
		require.Equal(t, text, spaced)
		require.Equal(t, a.Truncate(time.Minute).Before(b.Truncate(time.Minute)), text < Moment(b))
		ago, ok := Done{At: text}.Ago(b)
		require.Equal(t, !a.Truncate(time.Minute).After(b), ok)
		if ok {
			require.Equal(t, b.Sub(a.Truncate(time.Minute)), ago)
		}
	})
}

// A photo's name is a file's name alone, on whatever system the job is opened next: nothing of it leads to another folder, and nothing
// of it parts a list that is typed with commas.
func TestAPhotosNameLeadsNowhere(t *testing.T) {
	for _, name := range []string{"pilot-1.jpg", "a b.png", "é.heic", "...jpg", ".hidden", "x"} {
		assert.Empty(t, WrongPhoto(name), name)
	}
	for _, name := range []string{"", " ", " a.jpg", "a.jpg ", ".", "..", "../a.jpg", "/a.jpg", `c:\a.jpg`, "c:a.jpg", "a,b.jpg", "a\nb.jpg", "a\x00.jpg", "\ta"} {
		assert.NotEmpty(t, WrongPhoto(name), "%q", name)
	}
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.StringMatching(`[a-z./\\:, ]{0,6}`).Draw(t, "name")
		if WrongPhoto(name) != "" {
			return
		}
		job := Job{}.WithDone(Done{Step: "stands", At: "2026-11-27", Photos: List[string]{name}})
		read, err := ParseJob(withHead(job), "a.toml")
		require.NoError(t, err, name)
		require.Equal(t, List[string]{name}, read.DoneOf("stands").Photos)
	})
}

// withHead is the file of a job with a floor.
func withHead(j Job) []byte {
	whole, err := ParseJob([]byte(head), "a.toml")
	if err != nil {
		panic(err)
	}
	whole.Done = j.Done
	return whole.Format()
}

// A fan's curve goes on with more flow and no more pressure, two points at least; any two of its points are in that order, too.
func TestAFansCurveFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var fan []FanPoint
		for range rapid.IntRange(0, 5).Draw(t, "points") {
			fan = append(fan, FanPoint{float64(rapid.IntRange(0, 6).Draw(t, "flow")), float64(rapid.IntRange(0, 6).Draw(t, "pressure"))})
		}
		want := len(fan) >= 2
		for i := range fan {
			for k := range i {
				want = want && fan[k].Flow < fan[i].Flow && fan[k].Pressure >= fan[i].Pressure
			}
		}
		require.Equal(t, want, FanFalls(fan), "%v", fan)
	})
}

// What is said of one tape is said of that one alone, and taken back leaves the job as it was.
func TestWhatIsSaidOfATape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job, said := NewJob("TL-51"), map[string]string{}
		job.Held = nil
		for range rapid.IntRange(1, 8).Draw(t, "times") {
			tape := rapid.SampledFrom(HeldTapes).Draw(t, "tape")
			how := rapid.SampledFrom([]string{"", HeldLevel, NotSaid}).Draw(t, "how")
			before, text := job, string(job.Format())
			job = job.WithHeld(tape, how)
			require.Equal(t, text, string(before.Format()), "the job before is as it was")
			if said[tape] = how; how == "" {
				delete(said, tape)
			}
			read, err := ParseJob(job.Format(), "a.toml")
			require.NoError(t, err)
			require.Len(t, read.Held, len(said))
			for tape, how := range said {
				require.Equal(t, how, read.Held[tape])
			}
		}
		for _, tape := range HeldTapes {
			job = job.WithHeld(tape, "")
		}
		require.Nil(t, job.Held)
	})
}

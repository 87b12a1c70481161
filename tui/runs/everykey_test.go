package runs

import (
	"maps"
	"reflect"
	"slices"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// hand is how a key of a run's table is put in by hand, and changed: which part is picked for that, and what is pressed there.
type hand struct {
	enters  string // at the first point of a run that has nothing but its path, or at part; "": it comes with the run
	part    string
	changes string // at that part
}

// withPipe adds the hands for what exhaust and intake have alike.
func withPipe(own map[string]hand) map[string]hand {
	maps.Copy(own, map[string]hand{
		"across": {part: "pipe", changes: "t30<enter><enter>"},
		"bend":   {enters: "k<enter>70<enter>", part: "pipe", changes: "t<enter>80<enter>"},
		"path":   {part: "point 1", changes: "<right>"},
		"drains": {enters: "w", part: "drain 1", changes: "<right>"},
		"clips":  {enters: "c", part: "clip 1", changes: "<right>"},
	})
	return own
}

// hands are those of each key that the file has of a run, by its path in the run's table.
var hands = map[vehicles.RunKind]map[string]hand{
	vehicles.ExhaustRun: withPipe(map[string]hand{
		"muffler.leg":    {enters: "m", part: "muffler", changes: "t3<enter>10<enter><enter><enter><enter>"},
		"muffler.start":  {enters: "m", part: "muffler", changes: "<right>"},
		"muffler.length": {enters: "m", part: "muffler", changes: "t<enter><enter>140<enter><enter><enter>"},
		"muffler.across": {enters: "m", part: "muffler", changes: "t<enter><enter><enter>61<enter><enter>"},
		"muffler.drain":  {enters: "m<space>", part: "muffler", changes: "<space>"},
		"shielded":       {enters: "h<space><esc>", part: "shields", changes: "<enter><space><esc>"},
	}),
	vehicles.IntakeRun: withPipe(map[string]hand{}),
	vehicles.FuelRun: {
		"kind":             {enters: "<space>", part: "begins at", changes: "<space>,<space>"}, // a tank that holds diesel allows nothing else
		"from":             {enters: "<space>", part: "begins at", changes: "<space>"},
		"hole":             {enters: "k<enter><enter>14<enter>", part: "pipe", changes: "t<enter><enter>15<enter>"},
		"across":           {part: "pipe", changes: "t6<enter><enter><enter>"},
		"bore":             {enters: "k<enter>3<enter><enter>", part: "pipe", changes: "t<enter>3<enter><enter>"},
		"path":             {part: "point 1", changes: "<right>"},
		"tank.at":          {enters: "t1000<enter>300<enter><enter><enter><enter>", part: "tank", changes: "t1000<enter>300<enter><enter><enter><enter>"},
		"tank.drop":        {enters: "t1000<enter>300<enter><enter>50<enter>210<enter>", part: "tank", changes: "t<enter><enter><enter>70<enter><enter>"},
		"tank.rise":        {enters: "t1000<enter>300<enter>a50<enter>210<enter>", part: "tank", changes: "t<enter><enter><enter>70<enter><enter>"},
		"filter.leg":       {enters: "<enter>", part: "filter", changes: "t2<enter>10<enter>"},
		"filter.start":     {enters: "<enter>", part: "filter", changes: "<right>"},
		"pump.leg":         {enters: "m", part: "pump", changes: "t1<enter>10<enter><enter><enter><enter>"},
		"pump.start":       {enters: "m", part: "pump", changes: "<right>"},
		"pump.tilt":        {enters: "m", part: "pump", changes: "t<enter><enter>25<enter><enter><enter>"},
		"pump.ml_per_1000": {enters: "mt<enter><enter><enter>20<enter><enter>", part: "pump", changes: "t<enter><enter><enter>21<enter><enter>"},
		"pump.hz":          {enters: "mt<enter><enter><enter><enter>4<enter>", part: "pump", changes: "t<enter><enter><enter><enter>2<enter>"},
		"clips":            {enters: "c", part: "clip 1", changes: "<right>"},
	},
}

// atPart are the keys that are entered at a part of their own, which stands in the list before it has anything.
var atPart = map[string]string{"kind": "fuel", "from": "begins at", "tank.at": "tank", "tank.drop": "tank", "tank.rise": "tank", "filter.leg": "filter", "filter.start": "filter"}

// elsewhere are the keys of runs that another screen has, with which.
var elsewhere = map[string]string{
	"tank.litres":   "Sizing, with how long the fuel lasts",
	"tank.filler":   "Sizing, with the tank",
	"tank.breather": "Sizing, with the tank",
	"taped":         "Work: of a run as it was built",
}

// keysOf are the keys of a run in the file as the job is written, with their values.
func keysOf(t *testing.T, job vehicles.Job, of vehicles.RunKind) map[string]any {
	var file map[string]any
	_, err := toml.Decode(string(job.Format()), &file)
	require.NoError(t, err)
	keys := map[string]any{}
	table, _ := file[of.Table()].(map[string]any)
	for key, value := range table {
		inner, nested := value.(map[string]any)
		if !nested {
			keys[key] = value
		}
		for under, value := range inner {
			keys[key+"."+under] = value
		}
	}
	return keys
}

// whole are vans whose runs have a value under every key of their tables: a tank is below the floor or above it, not both.
func whole(t *testing.T) (jobs []vehicles.Job) {
	job := screentest.Full(t)
	fuel := *job.Fuel
	fuel.Filter = &vehicles.Filter{Leg: 1, Start: 20}
	below := job.WithRun(vehicles.FuelRun, &fuel)
	tank := *fuel.Supply.Tank
	tank.Rise, tank.Drop = tank.Drop, vehicles.Span{}
	fuel.Supply.Tank = &tank
	return []vehicles.Job{below, below.WithRun(vehicles.FuelRun, &fuel)}
}

// Nothing that a run can have is missing from those jobs: a key that the file learns has to be learned here.
func TestWholeRunsHaveAllThereIs(t *testing.T) {
	job := whole(t)[0]
	runs := map[string]bool{}
	for _, of := range vehicles.RunKinds {
		run := *job.Run(of)
		for _, k := range vehicles.HangingOn(of) {
			require.True(t, k.Has(run.Hanging), "%s %s", of, k.Name)
			for _, thing := range run.Hanging.Things() {
				for _, d := range thing.Details() {
					assert.NotNil(t, d.Value(), "%s %s %s", of, thing.Name(), d.Key)
				}
			}
		}
		for _, part := range []any{run, run.Supply} {
			for i, v := 0, reflect.ValueOf(part); i < v.NumField(); i++ {
				if !v.Field(i).IsZero() {
					runs[v.Type().Field(i).Name] = true
				}
			}
		}
	}
	for _, of := range []any{vehicles.Run{}, vehicles.Supply{}} {
		for i, v := 0, reflect.TypeOf(of); i < v.NumField(); i++ {
			if name := v.Field(i).Name; name != "Taped" { // as built
				assert.True(t, runs[name], name)
			}
		}
	}
}

// pickNamed goes through the list to a part, as a fitter does.
func pickNamed(t *testing.T, d *screentest.Driver, part string) {
	for range 60 {
		if here, _ := d.Screen.(screen).here(d.State); name(here) == part {
			return
		}
		d.Type(".")
	}
	require.Fail(t, "not in the list: "+part, d.View(100, 27))
}

// undone takes all back and holds the job to what it was.
func undone(t *testing.T, d *screentest.Driver, was vehicles.Job, key string) {
	require.NotEmpty(t, d.Steps(), "%s: nothing was done: %s", key, d.Said)
	for len(d.Steps()) > 0 {
		d.Undo()
	}
	assert.Equal(t, string(was.Format()), string(d.State.Job.Format()), key)
}

// Every key that the file has of exhaust, intake and fuel line is put in, changed and taken back on this screen, or another has it.
func TestEveryKeyOfARunsTableIsReachedByHand(t *testing.T) {
	for _, job := range whole(t) {
		for _, of := range vehicles.RunKinds {
			for _, key := range slices.Sorted(maps.Keys(keysOf(t, job, of))) {
				if elsewhere[key] != "" {
					continue
				}
				how, known := hands[of][key]
				require.True(t, known, "%s: %s can't be entered", of, key)
				changedByHand(t, job, of, key, how)
				enteredByHand(t, job, of, key, how)
			}
		}
	}
}

func changedByHand(t *testing.T, job vehicles.Job, of vehicles.RunKind, key string, how hand) {
	d := screentest.New(t, showing(of), job, 100, 27)
	was := d.State.Job
	pickNamed(t, d, how.part)
	d.Type(how.changes)
	now := keysOf(t, d.State.Job, of)
	assert.NotEqual(t, keysOf(t, was, of)[key], now[key], "%s: %s, %s: %s", of, key, how.changes, d.Said)
	for other, where := range elsewhere {
		assert.Equal(t, keysOf(t, was, of)[other], now[other], "%s: %s is for %s", key, other, where)
	}
	_, err := vehicles.ParseJob(d.State.Job.Format(), "by-hand.toml")
	require.NoError(t, err, key)
	undone(t, d, was, of.String()+": "+key)
}

// enteredByHand enters a key: one that each run has by beginning the run.
func enteredByHand(t *testing.T, job vehicles.Job, of vehicles.RunKind, key string, how hand) {
	bare := *job.Run(of)
	bare.Hanging, bare.Shielded, bare.Supply, bare.Bend = vehicles.Hanging{}, vehicles.Shields{}, vehicles.Supply{}, vehicles.Number{}
	begun := &bare
	if how.enters == "" {
		how.enters, begun = "a", nil
	}
	d := screentest.New(t, showing(of), job.WithRun(of, begun), 100, 27)
	was := d.State.Job
	require.NotContains(t, keysOf(t, was, of), key)
	if part := atPart[key]; part != "" {
		pickNamed(t, d, part)
	}
	d.Type(how.enters)
	assert.Contains(t, keysOf(t, d.State.Job, of), key, "%s: %s: %s", of, how.enters, d.Said)
	undone(t, d, was, of.String()+": "+key)
}

// showing is the screen with a run at hand.
func showing(of vehicles.RunKind) screen {
	m := New().(screen)
	m.of = of
	return m
}

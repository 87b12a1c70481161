package tui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// wholly is a job's file as a list of what it says, "obstruction.tank.holds" = "diesel": a thing goes by its name, so that its
// place in the list is said once, under "obstruction.order".
func wholly(t testing.TB, j vehicles.Job) map[string]string {
	var tables map[string]any
	_, err := toml.Decode(string(j.Format()), &tables)
	require.NoError(t, err)
	out := map[string]string{}
	flatten(out, "", tables)
	return out
}

func flatten(out map[string]string, at string, value any) {
	switch v := value.(type) {
	case map[string]any:
		for key, inner := range v {
			flatten(out, strings.TrimPrefix(at+"."+key, "."), inner)
		}
	case []map[string]any:
		var order []string
		for i, item := range v {
			name, named := item["name"].(string)
			if !named {
				name = fmt.Sprint(i)
			}
			order = append(order, name)
			flatten(out, at+"."+name, item)
		}
		out[at+".order"] = strings.Join(order, "; ")
	default:
		out[at] = fmt.Sprint(v)
	}
}

// differing are the keys of two jobs that do not say the same, in order.
func differing(t testing.TB, before, after vehicles.Job) (keys []string) {
	was, now := wholly(t, before), wholly(t, after)
	for key, text := range was {
		if other, there := now[key]; !there || other != text {
			keys = append(keys, key)
		}
	}
	for key := range now {
		if _, there := was[key]; !there {
			keys = append(keys, key)
		}
	}
	slices.Sort(keys)
	return keys
}

// onScreen is a job before the program's screen of that title.
func onScreen(t testing.TB, title string, job vehicles.Job, w, h int) *screentest.Driver {
	for _, s := range Screens() {
		if s.Title() == title {
			return screentest.New(t, s, job, w, h)
		}
	}
	require.Fail(t, title)
	return nil
}

// undone takes all steps back and holds that the job is what it was, to the byte.
func undone(t testing.TB, r *screentest.Driver, job vehicles.Job, because ...any) {
	for len(r.Steps()) > 0 {
		r.Undo()
	}
	require.Equal(t, string(job.Format()), string(r.State.Job.Format()), because...)
}

// only holds that nothing but what stands under these keys has changed.
func only(t testing.TB, before, after vehicles.Job, because string, under ...string) {
	for _, key := range differing(t, before, after) {
		mine := slices.ContainsFunc(under, func(u string) bool { return key == u || strings.HasPrefix(key, u+".") })
		assert.True(t, mine, "%s changed %s: %q, now %q", because, key, wholly(t, before)[key], wholly(t, after)[key])
	}
}

// things are the lists of the screens: the rows before the first thing, and its names in the order of the rows.
func things(j vehicles.Job) []struct {
	screen, list string
	first        int
	names        []string
} {
	var obstructions, openings, fittings, ties []string
	for _, o := range j.Obstructions {
		obstructions = append(obstructions, o.Name)
	}
	for _, o := range j.Openings {
		openings = append(openings, o.Name)
	}
	for _, f := range j.Fittings {
		fittings = append(fittings, f.Name)
	}
	for _, tie := range j.Ties {
		ties = append(ties, tie.Name)
	}
	return []struct {
		screen, list string
		first        int
		names        []string
	}{
		{"Underneath", "obstruction", 0, obstructions}, {"Underneath", "opening", len(obstructions), openings},
		{"On top", "fitting", 5, fittings}, {"Match", "tie", 0, ties},
	}
}

// A key in a list does to the thing it is at what it says, and to nothing else that the file holds: not what holds fuel, not
// the tapes, drains, shields, wheels, rules, or what others keep.
func TestAKeyInAListChangesNothingElse(t *testing.T) {
	ofWholeRun(t)
	job := screentest.Full(t)
	for _, l := range things(job) {
		for i, name := range l.names {
			at, order := l.list+"."+name, l.list+".order"
			for keys, under := range map[string][]string{
				"m": {at + ".measured"}, "o": {at + ".use"}, "d": {l.list + "." + name + " 2", order}, "[": {order}, "]": {order},
				"<enter><esc>": nil, "<enter><down><down><down><up><esc>": nil, "p<esc>": nil, "v": nil, "f": nil, "g": nil, "+": nil,
				"x": {at, order, "cut.direct", "exhaust.shielded", "fuel.from"},
			} {
				if keys == "o" && l.list != "tie" || keys == "m" && l.list == "tie" {
					continue
				}
				r := onScreen(t, l.screen, job, 100, 27)
				r.Type(strings.Repeat("<down>", l.first+i) + keys)
				only(t, job, r.State.Job, l.screen+", "+name+", "+keys, under...)
				undone(t, r, job, l.screen, name, keys)
			}
		}
	}
}

// What names a deleted thing goes with it, and only that.
func TestDeletingTakesWhatNamesTheThingAndNothingMore(t *testing.T) {
	job := screentest.Full(t)
	for row, gone := range map[int][]string{0: {"cut.direct"}, 1: nil, 2: {"exhaust.shielded"}, 3: {"fuel.from"}, 4: nil, 5: nil} {
		name := job.Obstructions[row].Name
		r := onScreen(t, "Underneath", job, 60, 17)
		r.Type(strings.Repeat("<down>", row) + "x")
		require.Len(t, r.State.Job.Obstructions, len(job.Obstructions)-1, r.Said)
		for _, key := range differing(t, job, r.State.Job) {
			if !strings.HasPrefix(key, "obstruction.") {
				assert.Contains(t, gone, key, name)
			}
		}
		now := wholly(t, r.State.Job)
		for _, key := range gone {
			assert.NotContains(t, now[key], name)
		}
	}
}

// A copy says all that the thing says but its name, that somebody measured it, and the reading its chain was held against.
func TestACopyHasAllTheThingHas(t *testing.T) {
	job := screentest.Full(t)
	for _, l := range things(job) {
		for i, name := range l.names {
			r := onScreen(t, l.screen, job, 60, 17)
			r.Type(strings.Repeat("<down>", l.first+i) + "d")
			now := wholly(t, r.State.Job)
			for key, text := range wholly(t, job) {
				if rest, of := strings.CutPrefix(key, l.list+"."+name+"."); of && rest != "name" && rest != "measured" && !strings.HasPrefix(rest, "total") {
					assert.Equal(t, text, now[l.list+"."+name+" 2."+rest], key)
				}
			}
			if l.list != "tie" {
				assert.Equal(t, "false", now[l.list+"."+name+" 2.measured"], name)
			}
		}
	}
}

// What only shows something leaves the job alone, whatever is pressed there; Marks takes what one says one has looked for.
func TestScreensThatOnlyShowChangeNothing(t *testing.T) {
	job := screentest.Full(t)
	for title, under := range map[string][]string{"Marks": {"looked", "extra.looked round"}, "Checks": nil} {
		r := onScreen(t, title, job, 100, 27)
		for _, keys := range strings.Fields("<down> <enter> w n e p <esc> <esc> v g l f + - [ ] x m d <space> <tab> <enter> <down> <end> <home> <pgdown> <enter> <esc> <delete> <back> <wipe>") {
			r.Type(keys)
			only(t, job, r.State.Job, title+", "+keys, under...)
		}
		undone(t, r, job, title)
	}
}

// What is moved on Place takes along what must follow, and leaves the rest as it is.
func TestAKeyOnPlaceChangesNothingElse(t *testing.T) {
	job := screentest.Full(t)
	hung := func(run string) []string {
		return []string{run + ".path", run + ".muffler", run + ".clips", run + ".drains", run + ".pump"}
	}
	leaving := []string{"cut.at", "cut.drilled", "cut.old_pilot", "cut.direct", "job.notes"} // the hole is an old one, and its tapes are noted
	for keys, under := range map[string][]string{
		"<up>": nil, "r<up>": leaving, "r<left>": leaving, "rs<right>": leaving, "s": nil, ",": {"heater.yaw"}, ".": {"heater.yaw"},
		"t<esc>": nil, "k<esc>": nil, "m<esc>": nil, "t1250<enter>l600<enter>": leaving,
		"k35<enter>130<enter>": {"heater.turret", "cut.across"}, "o": slices.Concat(hung("exhaust"), hung("intake"), hung("fuel")),
		"m1221<enter>241<enter>": {"cut.drilled"},
	} {
		r := onScreen(t, "Place", job, 100, 27)
		r.Type(keys)
		only(t, job, r.State.Job, keys, under...)
		if len(under) > 0 {
			assert.NotEmpty(t, differing(t, job, r.State.Job), "%s: %s", keys, r.Said)
		}
		undone(t, r, job, keys)
	}
}

// What is laid on Runs takes along what hangs on it, and leaves the rest as it is.
func TestAKeyOnRunsChangesNothingElse(t *testing.T) {
	job := screentest.Full(t)
	hung := func(run string) []string {
		return []string{run + ".path", run + ".muffler", run + ".clips", run + ".drains", run + ".pump"}
	}
	for keys, under := range map[string][]string{
		"<down>": hung("exhaust"), "n<left>": hung("exhaust"), "o": slices.Concat(hung("exhaust"), hung("intake"), hung("fuel")), "s": nil, "t<esc>": nil,
		"a": hung("exhaust"), "nx": hung("exhaust"), "d": hung("exhaust"), "r": hung("exhaust"),
		"k28<enter>60<enter>": {"exhaust.across", "exhaust.bend"}, "h<space>": {"exhaust.shielded"}, "h<esc>": nil,
		"<tab>a": hung("intake"), "<tab>r": hung("intake"), "<tab>i": hung("intake"), "<tab>nn": nil,
		"<tab>k30<enter>70<enter>": {"intake.across", "intake.bend"}, "<tab><tab>v": nil,
		"c": {"exhaust.clips"}, "w": {"exhaust.drains"}, "m<right>": {"exhaust.muffler"}, "m<space>": {"exhaust.muffler"}, "mx": {"exhaust.muffler"},
		"..x": {"exhaust.muffler"}, "y": hung("exhaust"), "z": nil, "zz<esc>": nil, "e": nil, ".,": nil,
		"<tab><tab>a": hung("fuel"), "<tab><tab>m<right>": {"fuel.pump"}, "<tab><tab>c": {"fuel.clips"}, "<tab><tab>k6<enter>3<enter>9<enter>": {"fuel.across", "fuel.bore", "fuel.hole"},
	} {
		r := onScreen(t, "Runs", job, 100, 27)
		r.Type(keys)
		only(t, job, r.State.Job, keys, under...)
		if len(under) > 0 {
			assert.NotEmpty(t, differing(t, job, r.State.Job), "%s: %s", keys, r.Said)
		}
		undone(t, r, job, keys)
	}
}

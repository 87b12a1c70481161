package vehicles

import (
	"cmp"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// crowded is a job's file with n of what a text spells, which may have the number of each in it.
func crowded(n int, before, each, behind string) string {
	var b strings.Builder
	b.WriteString(head + before)
	for i := range n {
		b.WriteString(strings.ReplaceAll(each, "%d", fmt.Sprint(i)))
	}
	return b.String() + behind
}

// lists are what of a job's file has no end of its own: how many entries stand beside those of the list.
var lists = map[string]struct {
	beside               int
	before, each, behind string
	most                 int // of the list by itself; 0 for what all entries together may be
}{
	"obstructions":       {0, "", "[[obstruction]]\nname = \"m%d\"\nkind = \"crossmember\"\nx = [1, 2]\ny = [1, 2]\n", "", 0},
	"points of a pipe":   {1, "[[obstruction]]\nname = \"pipe\"\nkind = \"brake line\"\nacross = 8\npath = [", "[%d, 1],", "]\n", 0},
	"matching points":    {0, "", "[[tie]]\nname = \"t%d\"\nbelow = [%d, 1]\nabove = [%d, 1]\n", "", MostTies},
	"wheels":             {0, "", "[[wheel]]\nat = [%d, 780]\n", "", 0},
	"fittings":           {0, "", "[[fitting]]\nname = \"f%d\"\nx = [1, 2]\ny = [1, 2]\nrise = [0, 1]\n", "", 0},
	"points of a run":    {0, "[exhaust]\nacross = 26\npath = [", "[%d, 1, 50],", "]\n", 0},
	"clips":              {2, "[exhaust]\nacross = 26\npath = [[1, 1, 50], [9000, 1, 50]]\nclips = [", "%d,", "]\n", 0},
	"layers":             {0, "", "[[layer]]\nkind = \"ply\"\nthick = 1\n", "", 0},
	"photos":             {1, "[[done]]\nstep = \"fall\"\nphotos = [", "\"p%d.jpg\",", "]\n", 0},
	"built run":          {0, "[built.exhaust]\nacross = 26\npath = [", "[%d, 1, 50],", "]\n", 0},
	"what was refused":   {0, "", "[[extra.refused]]\nof = \"floor\"\nname = \"n%d\"\nfield = \"width\"\nlabel = \"width\"\ntext = \"x\"\nwhy = \"y\"\n", "", 0},
	"what is begun":      {0, "", "[[extra.\"unfinished obstruction\"]]\nname = \"n%d\"\n", "", 0},
	"surfaces":           {0, "", "[[surface]]\nname = \"s%d\"\nlies = \"wall\"\narea = 1\n", "", 0},
	"direct tapes":       {0, "[cut]\nat = [1210, 240]\nacross = 127\ndrilled = [1210, 240]\ndirect = [", "{ to = \"m%d\", gap = 60 },", "]\n", 0},
	"bolts":              {0, "[heater]\nbolts = [", "[%d, 60],", "]\n", 0},
	"built bolts":        {0, "[built.heater]\nbolts = [", "[%d, 60],", "]\n", 0},
	"points of a bumper": {0, "", "[[datum.bow]]\ny = %d\noffset = 1\n", "", 0},
}

// A job holds as much as it may and no more, whatever it is of.
func TestAJobHoldsSoManyThingsAndPoints(t *testing.T) {
	if testing.Short() {
		t.Skip("of a whole run only: reads a dozen jobs of the largest size")
	}
	for name, l := range lists {
		job, faults := parse([]byte(crowded(10, l.before, l.each, l.behind)), "a.toml")
		require.Empty(t, faults, name)
		each := (job.Entries() - l.beside) / 10
		require.Positive(t, each, name)
		n := cmp.Or(l.most, (MostEntries-l.beside)/each)
		job, faults = parse([]byte(crowded(n, l.before, l.each, l.behind)), "a.toml")
		require.Empty(t, faults, name)
		assert.LessOrEqual(t, job.Entries(), MostEntries)
		_, faults = parse([]byte(crowded(n+1, l.before, l.each, l.behind)), "a.toml")
		require.Len(t, faults, 1, name)
		assert.Regexp(t, `^a\.toml:1: the file holds (\d+ things and points of paths, at most 10000|\d+ matching points, at most 100) can be .+: leave out .+$`, faults[0].Error(), name)
	}
}

// What others keep in a job's file is theirs: only the size of the file bounds it.
func TestWhatOthersKeepIsNotCounted(t *testing.T) {
	job, faults := parse([]byte(crowded(MostEntries+1, "[extra]\nn = [", "%d,", "]\n")), "a.toml")
	require.Empty(t, faults)
	assert.Zero(t, job.Entries())
}

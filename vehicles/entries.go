package vehicles

import "fmt"

// MostEntries is how many things, records and points of paths a job may hold, all together: a hundred times what the fullest van has. With so
// many a key is still answered within a second (TestAKeyInAFullJobIsAnsweredOnEveryScreen), with four times as many it took seconds; no other
// program is to find its honest job refused.
const MostEntries = 10000

// MostTies is how many of them may be matching points, far more than any van has: each is held against every other.
const MostTies = 100

// Entries is how many things, records and points of paths a job holds: what grows with its lists, whatever they are of.
func (j *Job) Entries() int {
	n := len(j.Bow) + len(j.Wheels) + len(j.Ties) + len(j.Stack) + len(j.Ductwork.Bends) + len(j.Ductwork.Fan) + j.UnfinishedCount() +
		len(j.Refusals) + len(j.Guesses) + len(j.Obstructions) + len(j.Openings) + len(j.Fittings) + len(j.Surfaces) + len(j.Done)
	for i := range j.Obstructions {
		n += len(j.Obstructions[i].Path)
	}
	for i := range j.Openings {
		n += len(j.Openings[i].Path)
	}
	for i := range j.Fittings {
		n += len(j.Fittings[i].Path)
	}
	for i := range j.Surfaces {
		n += len(j.Surfaces[i].Layers)
	}
	for i := range j.Done {
		n += len(j.Done[i].Photos)
	}
	for _, u := range []List[Begun]{j.Unfinished.Obstructions, j.Unfinished.Openings, j.Unfinished.Fittings, j.Unfinished.Ties} {
		for _, begun := range u {
			n += len(begun.Texts)
		}
	}
	runs := []*Run{j.Exhaust, j.Intake, j.Fuel}
	n += j.Cut.entries() + j.Heater.entries()
	if b := j.Built; b != nil {
		runs = append(runs, b.Exhaust, b.Intake, b.Fuel)
		n += b.Cut.entries() + b.Heater.entries()
	}
	for _, run := range runs {
		n += run.entries()
	}
	return n + entriesOf(j.RunLooks) + entriesOf(j.OpeningLooks)
}

// entries are the points of a run and what hangs on it; nil is no run.
func (r *Run) entries() int {
	if r == nil {
		return 0
	}
	n := len(r.Path) + len(r.Shielded.Names)
	for _, k := range HangingKinds {
		if k.Many() {
			n += len(*k.List(&r.Hanging))
		}
	}
	return n
}

// entries are the direct tapes from a cut's hole; nil is no cut.
func (c *Cut) entries() int {
	if c == nil {
		return 0
	}
	return len(c.Direct)
}

// entries are the bolts of a heater; nil is no heater.
func (h *Heater) entries() int {
	if h == nil {
		return 0
	}
	return len(h.Bolts)
}

func entriesOf(looks []Look) int {
	n := len(looks)
	for _, look := range looks {
		n += len(look.Kinds)
		for _, path := range look.Runs {
			n += len(path)
		}
	}
	return n
}

// TooMany says that a job holds more than it may and what to do, "" when it does not. Before it stands what holds that much.
func (j *Job) TooMany() string {
	if n := j.Entries(); n > MostEntries {
		return fmt.Sprintf("holds %d things and points of paths, at most %d can be shown and judged while somebody waits: leave out what is far from cut and runs", n, MostEntries)
	}
	if n := len(j.Ties); n > MostTies {
		return fmt.Sprintf("holds %d matching points, at most %d can be shown and judged while somebody waits: leave out those that lie close to others", n, MostTies)
	}
	return ""
}

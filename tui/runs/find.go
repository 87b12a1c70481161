package runs

import (
	"context"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

var (
	keyFind     = bind("j", "find it and lay it", "j")
	keyFindBoth = bind("J", "find all runs together", "J")
	keyFindTo   = bind("/", "find it, and say where it shall come out", "/")
	keyPutIn    = bind("Enter", "put it in all the same", "enter")
)

// finder finds a run: where it shall come out is asked, it is worked out, and what came of it is told where it is not put in at once.
// The zero finder is closed.
type finder struct {
	asks  bool // where it shall come out
	wants bool // sought has to be begun
	quest quest
	found moving.Search[[]rules.Route]
}

// quest is what is to be found.
type quest struct {
	runs  []vehicles.RunKind
	of    rules.Result // with a run of each kind: one to begin with where the job has none
	taken []string     // what such a run was taken to be
	lacks string       // why a run was not sought, "" where all were
	find  func(ctx context.Context, r *rules.Result, tell func(string)) []rules.Route
}

// open tells whether the finder has the keys.
func (f finder) open() bool { return f.asks || f.wants || f.found.Going() || f.found.Done }

// closed is the finder closed: what is still sought is sought no longer.
func (f finder) closed() finder {
	f.found.Stop()
	return finder{}
}

// outlet is where a run may be wanted to come out, with the key that says so.
type outlet struct {
	key  key.Binding
	find func(ctx context.Context, r *rules.Result, of vehicles.RunKind, tell rules.Tell) rules.Route
}

// outlets are those that may be chosen among; the first is the best of all.
func (m screen) outlets(s desk.State) []outlet {
	along := func(edge rules.Edge) func(context.Context, *rules.Result, vehicles.RunKind, rules.Tell) rules.Route {
		return func(ctx context.Context, r *rules.Result, of vehicles.RunKind, tell rules.Tell) rules.Route {
			return rules.FindRoute(ctx, r, of, rules.Target{Edge: edge, Upright: true}, tell)
		}
	}
	all := []outlet{
		{bind("Enter", "wherever it is best", "enter"), along(rules.AnyEdge)},
		{bind("l", "out on the "+desk.SideOf(1, s.Settings), "l"), along(rules.LeftEdge)},
		{bind("r", "out on the "+desk.SideOf(-1, s.Settings), "r"), along(rules.RightEdge)},
		{bind("h", "out behind, at the rear", "h"), along(rules.RearEdge)},
	}
	if run := m.run(s); run != nil && len(run.Path) > 0 {
		all = append(all, outlet{bind("n", "near where it comes out now", "n"), rules.FindNear})
	}
	return all
}

// pressFind answers the keys that begin to find a run.
func (m screen) pressFind(k tea.KeyMsg, s desk.State) (next screen, change desk.Change, mine bool) {
	switch {
	case key.Matches(k, keyFindTo) && m.of != vehicles.FuelRun:
		if _, why := m.begins(s, m.of); why != "" {
			return m, desk.Change{Say: why}, true
		}
		m.finder = finder{asks: true}
		return m, desk.Change{}, true
	case key.Matches(k, keyFind), key.Matches(k, keyFindTo):
		next, change = m.findTo(m.outlets(s)[0], s)
		return next, change, true
	case key.Matches(k, keyFindBoth):
		next, change = m.findBoth(s)
		return next, change, true
	}
	return m, desk.Change{}, false
}

// findTo begins to find the run at hand.
func (m screen) findTo(to outlet, s desk.State) (screen, desk.Change) {
	of := m.of
	q, why := m.begins(s, of)
	if why != "" {
		return m, desk.Change{Say: why}
	}
	if of != vehicles.FuelRun {
		q.of = rules.WithRoomForFuel(q.of)
	} else {
		to.find = func(ctx context.Context, r *rules.Result, _ vehicles.RunKind, tell rules.Tell) rules.Route {
			to := rules.FuelTarget(r.Job.Fuel)
			to.Upright = true
			return rules.FindRoute(ctx, r, of, to, tell)
		}
	}
	q.find = func(ctx context.Context, r *rules.Result, tell func(string)) []rules.Route {
		return []rules.Route{to.find(ctx, r, of, func(at rules.Aim, tried int) { tell(words.Tried(at, tried)) })}
	}
	m.finder = finder{wants: true, quest: q}
	return m, desk.Change{}
}

// sought begins what is wanted of the finder.
func (m screen) sought(s desk.State) (screen, tea.Cmd) {
	m.finder.wants = false
	q := m.finder.quest
	var cmd tea.Cmd
	m.finder.found, cmd = moving.Seek(s, func(ctx context.Context, tell func(string)) []rules.Route { return q.find(ctx, &q.of, tell) })
	return m, cmd
}

// heard takes what came of a search: a run that keeps every rule, and is no worse than the one that is there, is put in; of anything
// else it is told.
func (m screen) heard(msg tea.Msg, s desk.State) (screen, desk.Change, tea.Cmd) {
	found, again, mine := m.finder.found.Heard(msg)
	m.finder.found = found
	if !mine || !found.Done || found.Failed || !m.better(s) {
		return m, desk.Change{}, again
	}
	if !slices.ContainsFunc(found.Said, func(r rules.Route) bool { return !r.Here }) {
		say := stayed(found.Said, s)
		m.finder = m.finder.closed()
		return m, desk.Change{Say: say}, nil
	}
	m, change := m.putIn(s)
	m, change = m.followed(change, s)
	return m, change, nil
}

// better tells whether what was found is to be put in without asking.
func (m screen) better(s desk.State) bool {
	routes := m.finder.found.Said
	if len(routes) < len(m.finder.quest.runs) {
		return false
	}
	for i, of := range m.finder.quest.runs {
		if !routes[i].Found() || s.Job.Run(of) != nil && routes[i].Verdict > verdictOf(of, s) {
			return false
		}
	}
	_, _, less := m.keepsLess(s)
	return !less
}

// verdictOf is the worst verdict on the run that is there.
func verdictOf(of vehicles.RunKind, s desk.State) (worst rules.Verdict) {
	worst = rules.Clear
	here := screen{of: of}
	for i := range s.Result.Findings {
		if f := &s.Result.Findings[i]; here.concerns(f) {
			worst = max(worst, f.Verdict)
		}
	}
	return worst
}

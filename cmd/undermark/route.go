package main

import (
	"context"
	"fmt"
	"math"
	"os"
	"os/signal"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// routed are the runs that can be sought, by what the command calls them.
var routed = map[string]vehicles.RunKind{"exhaust": vehicles.ExhaustRun, "intake": vehicles.IntakeRun, "fuel": vehicles.FuelRun}

// bothRuns is what it calls exhaust and intake together.
const bothRuns = "both"

func routeCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	var to, edge string
	c := &cobra.Command{
		Use:   "route exhaust|intake|fuel|both JOB...",
		Short: "Find a run from its stub to an outlet",
		Long: "The shortest run from the stub to a place, or to the best place along an edge of the van, that breaks no rule:\n" +
			"as a path for the job file, with the muffler of the job and clips on its new legs. It is clear of what is\n" +
			"uncertain where that can be. Where there is none it is the nearest miss, and what it breaks is named: exit " + strconv.Itoa(exitFoul) + ".\n" +
			"The fuel line goes from --to, or where it begins in the job, to the heater: it rises from its pump, without humps;\n" +
			"what of it is above the floor stays, with its hole.\n" +
			"both finds exhaust and intake together, those that keep most from what is under the floor; where the job's own keep as\n" +
			"much, it says so and gives those. The intake's mouth may be anywhere under the van: --edge under.\n" +
			handsUnknown("a run"),
		Example: "  undermark route exhaust --to 1370,870,187 van.toml\n" +
			"  undermark route intake --edge rear --json van.toml\n" +
			"  undermark route both van.toml",
		Args: someRun, ValidArgsFunction: runThenJobs,
		RunE: func(_ *cobra.Command, args []string) error {
			told, err := routing(args[0], to, edge, s, &f)
			if err != nil {
				return err
			}
			missed := false
			_, err = answerJobs(args[1:], shared, &f, s, func(r rules.Result) (string, error) {
				text, found, err := told(&r)
				missed = missed || err == nil && !found
				return text, err
			})
			if err == nil && missed {
				return exit(exitFoul)
			}
			return err
		},
	}
	f.add(c)
	c.Flags().StringVar(&to, "to", "", "it ends at `X,Y,DROP` (mm forward of the datum line, left of the centreline, below the floor)")
	c.Flags().StringVar(&edge, "edge", "", "it ends where it is best along an `EDGE` of the van: left, right or rear; an intake also under")
	return c
}

// teller seeks what a command asks of a job, and tells of it; found is whether it keeps every rule.
type teller func(r *rules.Result) (text string, found bool, err error)

// routing is what the command line asks for.
func routing(what, to, edge string, s streams, f *answerFlags) (teller, error) {
	if what == bothRuns {
		if to != "" || edge != "" {
			return nil, fmt.Errorf("both looks along every edge: leave --to and --edge out")
		}
		return func(r *rules.Result) (string, bool, error) { return tellPair(r, s, f) }, nil
	}
	kind := routed[what]
	if kind == vehicles.FuelRun && edge != "" {
		return nil, fmt.Errorf("the fuel line begins at a place: give --to X,Y,DROP, or leave --edge out")
	}
	if kind == vehicles.FuelRun && to == "" {
		return func(r *rules.Result) (string, bool, error) {
			ready, taken, err := withFuel(r)
			if err != nil {
				return "", false, err
			}
			return tellRun(ready, kind, rules.FuelTarget(ready.Job.Fuel), s, f, taken...)
		}, nil
	}
	target, err := parseTarget(to, edge)
	if target.Edge == rules.UnderVan && kind != vehicles.IntakeRun {
		err = fmt.Errorf("--edge under is for an intake: the %s comes out at left, right or rear", kind)
	}
	return func(r *rules.Result) (string, bool, error) { return tellRun(r, kind, target, s, f) }, err
}

// withFuel is a job with a fuel line to seek: its own, or the usual one from its tank; taken says so.
func withFuel(r *rules.Result) (ready *rules.Result, taken []string, err error) {
	if r.Job.Fuel != nil {
		return r, nil, nil
	}
	if lacks := rules.FuelLacks(&r.Job); lacks != "" {
		return nil, nil, lacking{Key: "fuel", Text: "there is no [fuel], so nobody knows where the line begins (" + lacks + "): say --to X,Y,DROP"}
	}
	job, _, err := stubbed(r.Job)
	if err != nil {
		return nil, nil, err
	}
	mouth, _ := job.Stub(vehicles.FuelRun)
	line, _ := rules.UsualFuel(r, mouth)
	after := *r
	after.Job = r.Job.WithRun(vehicles.FuelRun, &line)
	return &after, []string{"There is no [fuel]: the line was taken to begin at " + line.Supply.From + ", with a usual pump."}, nil
}

// tellRun seeks a run of a judged job; taken is what was taken for granted so far.
func tellRun(r *rules.Result, kind vehicles.RunKind, to rules.Target, s streams, f *answerFlags, taken ...string) (string, bool, error) {
	ready, more, err := readyForRun(r, kind)
	if err != nil {
		return "", false, err
	}
	if err := rules.ToSeek.May(ready); err != nil {
		return "", false, lacking{Key: "obstruction", Text: err.Error()}
	}
	taken = append(taken, more...)
	if kind == vehicles.FuelRun && to.At.Drop < 0 {
		return "", false, fmt.Errorf("the fuel line would begin above the floor: say --to X,Y,DROP below it; of a line in the job that passes the floor, the part below is sought without --to")
	}
	var found rules.Route
	err = seeking(s, f.json, func(ctx context.Context, p *progress) {
		to.Upright = ready.Job.RunChecks == vehicles.InFull
		found = rules.FindRoute(ctx, ready, kind, to, func(at rules.Aim, tried int) { p.say("Looking for a way: %s", words.Tried(at, tried)) })
	})
	if err != nil {
		return "", false, err
	}
	if f.json {
		data, err := rules.RouteJSON(found)
		return string(data) + "\n", found.Found(), err
	}
	p := f.paperFor(s)
	routeText(p, r, kind, byItself, &found)
	if n := len(to.Above); n > 0 && found.Run != nil {
		p.line("%s", words.StaysAbove(n))
	}
	p.lines(taken)
	return p.String(), found.Found(), nil
}

// tellPair seeks exhaust and intake of a judged job together.
func tellPair(r *rules.Result, s streams, f *answerFlags) (string, bool, error) {
	ready, taken, err := readyForRun(r, vehicles.ExhaustRun)
	if err != nil {
		return "", false, err
	}
	ready, more, err := readyForRun(ready, vehicles.IntakeRun)
	if err != nil {
		return "", false, err
	}
	if err := rules.ToPair.May(ready); err != nil {
		return "", false, lacking{Key: "obstruction", Text: err.Error()}
	}
	var pair rules.Pair
	err = seeking(s, f.json, func(ctx context.Context, p *progress) {
		pair = rules.FindPair(ctx, ready, func(done, of int) { p.say("Looking for exhaust and intake: %d of about %d", done, of) })
	})
	if err != nil {
		return "", false, err
	}
	if f.json {
		data, err := rules.PairJSON(pair)
		return string(data) + "\n", pair.Found(), err
	}
	p := f.paperFor(s)
	routeText(p, r, vehicles.ExhaustRun, ofAPair, &pair.Exhaust)
	if pair.Exhaust.Found() {
		p.blank()
		routeText(p, r, vehicles.IntakeRun, ofAPair, &pair.Intake)
	}
	p.lines(append(taken, more...))
	return p.String(), pair.Found(), nil
}

// seeking runs a search, which Ctrl-C ends, and has people told how far it is.
func seeking(s streams, json bool, search func(context.Context, *progress)) error {
	ctx, done := signal.NotifyContext(context.Background(), os.Interrupt)
	defer done()
	p, stop := startProgress(s, json)
	defer stop()
	p.say("Looking for a way...")
	search(ctx, p)
	if ctx.Err() != nil {
		return failed{fmt.Errorf("stopped before the search was done")}
	}
	return nil
}

func someRun(_ *cobra.Command, args []string) error {
	if len(args) == 0 {
		return fmt.Errorf("route needs which run to find, exhaust, intake, fuel or both, and %s", someFile)
	}
	if _, is := routed[args[0]]; !is && args[0] != bothRuns {
		return fmt.Errorf("%q is no run that can be found: say exhaust, intake, fuel or both", args[0])
	}
	if len(args) == 1 {
		return fileBehind("route", args[0])
	}
	return nil
}

func runThenJobs(c *cobra.Command, args []string, toComplete string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return []string{"exhaust", "intake", "fuel", bothRuns}, cobra.ShellCompDirectiveNoFileComp
	}
	return jobFiles(c, args, toComplete)
}

// parseTarget reads where a run is to end.
func parseTarget(to, edge string) (t rules.Target, err error) {
	switch {
	case to == "" && edge == "":
		return t, fmt.Errorf("say where the run is to end: --to X,Y,DROP, or --edge left, right or rear")
	case to != "" && edge != "":
		return t, fmt.Errorf("--to and --edge both say where the run ends: keep one of them")
	case edge != "":
		if t.Edge = rules.Edge(edge); t.Edge != rules.UnderVan && !slices.Contains(rules.Edges, t.Edge) {
			return t, fmt.Errorf("--edge %q: give left, right or rear, or for an intake under", edge)
		}
		return t, nil
	}
	var v [3]float64
	parts := strings.Split(to, ",")
	for i, part := range parts {
		x, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
		if err != nil || len(parts) != len(v) || math.IsNaN(x) {
			return t, fmt.Errorf("--to %q: give three numbers of mm as X,Y,DROP, e.g. --to 1370,870,187", to)
		}
		if err := vehicles.ALength.Takes(x); err != nil {
			return t, fmt.Errorf("--to %q: %s %w", to, part, err)
		}
		v[i] = x
	}
	t.At = &vehicles.RunPoint{X: v[0], Y: v[1], Drop: v[2]}
	return t, nil
}

// stubbed is a job that has stubs: without a heater those of the usual one; taken says so.
func stubbed(job vehicles.Job) (with vehicles.Job, taken []string, err error) {
	if job.Cut == nil {
		return job, nil, lacking{Key: "cut", Text: "there is no [cut], so nobody knows where the stub is: enter one, or ask suggest for its place"}
	}
	if job.Heater == nil {
		usual, _ := vehicles.HeaterClass(vehicles.DefaultHeaterClass)
		job = job.WithHeater(usual)
		taken = append(taken, fmt.Sprintf("There is no [heater]: its stub was taken to be that of %s, yaw 0.", vehicles.DefaultHeaterClass))
	}
	return job, taken, nil
}

// readyForRun is a judged job that has what a run begins at: a stub, and a run, without one a pipe of the usual size; taken says what was
// taken to be there.
func readyForRun(r *rules.Result, kind vehicles.RunKind) (ready *rules.Result, taken []string, err error) {
	job, taken, err := stubbed(r.Job)
	if err != nil {
		return nil, nil, err
	}
	if job.Run(kind) == nil {
		run := vehicles.UsualRun(kind)
		job = job.WithRun(kind, &run)
		taken = append(taken, fmt.Sprintf("There is no [%s]: it was taken to be %s across, bend %s.", kind, survey.Figure(run.Across), survey.Figure(run.Bend.Value)))
	}
	own := *r
	own.Job = job
	return &own, taken, nil
}

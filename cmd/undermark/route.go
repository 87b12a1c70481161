package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// routed are the runs that can be sought, by what the command calls them.
var routed = map[string]vehicles.RunKind{"exhaust": vehicles.ExhaustRun, "intake": vehicles.IntakeRun}

func routeCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	var to, edge string
	c := &cobra.Command{
		Use:   "route exhaust|intake JOB...",
		Short: "Find a run from its stub to an outlet",
		Long: "The shortest run from the stub to a place, or to the best place along an edge of the van, that breaks no rule:\n" +
			"as a path for the job file, with the muffler of the job and clips on its new legs. It is clear of what is\n" +
			"uncertain where that can be. Where there is none it is the nearest miss, and what it breaks is named: exit 11.\n" +
			"Where the fitter can get a hand or a drill in, it does not know. Check a run before you trust it.",
		Example: "  undermark route exhaust --to 1370,870,187 van.toml\n" +
			"  undermark route intake --edge rear --json van.toml",
		Args: someRun, ValidArgsFunction: runThenJobs,
		RunE: func(_ *cobra.Command, args []string) error {
			target, err := parseTarget(to, edge)
			if err != nil {
				return err
			}
			kind, worst := routed[args[0]], rules.Clear
			_, err = answerJobs(args[1:], shared, &f, s, func(r rules.Result) (string, error) {
				ready, taken, err := readyForRun(&r, kind)
				if err != nil {
					return "", err
				}
				found, err := seekRun(ready, kind, target, s, f.json)
				if err != nil {
					return "", err
				}
				if !found.Found() {
					worst = rules.Foul
				}
				if f.json {
					data, err := rules.RouteJSON(found)
					return string(data) + "\n", err
				}
				return routeText(&r, kind, &found) + taken, nil
			})
			if err == nil && worst == rules.Foul {
				return exit(exitFoul)
			}
			return err
		},
	}
	f.add(c)
	c.Flags().StringVar(&to, "to", "", "where it ends: `X,Y,DROP` (mm forward of the datum line, left of the centreline, below the floor)")
	c.Flags().StringVar(&edge, "edge", "", "or along which edge of the van: `left, right or rear`")
	return c
}

func someRun(_ *cobra.Command, args []string) error {
	if len(args) == 0 {
		return fmt.Errorf("route needs which run to find, exhaust or intake, and a job file, or - for standard input")
	}
	if _, is := routed[args[0]]; !is {
		return fmt.Errorf("%q is no run that can be found: say exhaust or intake", args[0])
	}
	if len(args) == 1 {
		return fmt.Errorf("route needs a job file behind %s, or - for standard input", args[0])
	}
	return nil
}

func runThenJobs(c *cobra.Command, args []string, toComplete string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return []string{"exhaust", "intake"}, cobra.ShellCompDirectiveNoFileComp
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
		if t.Edge = rules.Edge(edge); !slices.Contains(rules.Edges, t.Edge) {
			return t, fmt.Errorf("--edge %q: give left, right or rear", edge)
		}
		return t, nil
	}
	var v [3]float64
	parts := strings.Split(to, ",")
	for i, part := range parts {
		x, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
		if err != nil || len(parts) != len(v) || !isPlace(x) {
			return t, fmt.Errorf("--to %q: give three numbers of mm as X,Y,DROP, e.g. --to 1370,870,187", to)
		}
		v[i] = x
	}
	t.At = &vehicles.RunPoint{X: v[0], Y: v[1], Drop: v[2]}
	return t, nil
}

// seekRun seeks a run of a judged job. Ctrl-C ends it.
func seekRun(ready *rules.Result, kind vehicles.RunKind, to rules.Target, s streams, json bool) (rules.Route, error) {
	ctx, done := signal.NotifyContext(context.Background(), os.Interrupt)
	defer done()
	p, stop := startProgress(s, json)
	defer stop()
	p.say("Looking for a way...")
	found := rules.FindRoute(ctx, ready, kind, to, func(tried int) { p.say("Looking for a way: %d legs tried", tried) })
	if ctx.Err() != nil {
		return found, failed{fmt.Errorf("stopped before a run was found")}
	}
	return found, nil
}

// readyForRun is a judged job that has what a run begins at. Without a heater that is the stub of the usual one, without the run a
// pipe of the usual size; taken says so.
func readyForRun(r *rules.Result, kind vehicles.RunKind) (ready *rules.Result, taken string, err error) {
	job := r.Job
	if job.Cut == nil {
		return nil, "", lacking{Key: "cut", Text: "there is no [cut], so nobody knows where the stub is: enter one, or ask suggest for its place"}
	}
	if job.Heater == nil {
		usual, _ := vehicles.HeaterClass(vehicles.DefaultHeaterClass)
		job = job.WithHeater(usual)
		taken += fmt.Sprintf("There is no [heater]: its stub was taken to be that of %s, yaw 0.\n", vehicles.DefaultHeaterClass)
	}
	if job.Run(kind) == nil {
		run := vehicles.UsualRun(kind)
		job = job.WithRun(kind, &run)
		taken += fmt.Sprintf("There is no [%s]: it was taken to be %s across, bend %s.\n", kind, survey.Figure(run.Across), survey.Figure(run.Bend.Value))
	}
	own := *r
	own.Job = job
	return &own, taken, nil
}

// routeText writes a run for a person.
func routeText(r *rules.Result, kind vehicles.RunKind, found *rules.Route) string {
	var b strings.Builder
	if found.Run == nil {
		line(&b, "%s: no %s leads there, whatever rule it breaks.", r.Job.Ref, kind)
		return b.String()
	}
	switch found.Verdict {
	case rules.Clear:
		line(&b, "%s: the shortest %s there that keeps every rule. All in mm.", r.Job.Ref, kind)
	case rules.Doubtful:
		line(&b, "%s: the shortest %s there that breaks no rule. All in mm. Doubtful of it:", r.Job.Ref, kind)
	default:
		line(&b, "%s: no %s there keeps every rule. The nearest miss, all in mm, breaks:", r.Job.Ref, kind)
	}
	for i := range found.Misses {
		if f := &found.Misses[i]; f.Verdict == rules.Foul || found.Verdict == rules.Doubtful {
			line(&b, "  %s: %s", f.About(), f.Why)
		}
	}
	fmt.Fprintln(&b)
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	row(t, "point", "x", "y", "below floor")
	for i, p := range found.Run.Path {
		row(t, strconv.Itoa(i+1), survey.Figure(p.X), survey.Figure(p.Y), survey.Figure(p.Drop))
	}
	_ = t.Flush() // a builder takes everything
	fmt.Fprintln(&b)
	margin := "nothing near it was entered"
	if found.Margin.Set {
		margin = "to spare " + survey.Figure(found.Margin.Value)
	}
	line(&b, "length %s, bends %s°, %s", survey.Figure(found.Length), survey.Figure(found.Bends), margin)
	if m := found.Run.Muffler; m != nil {
		line(&b, "muffler on leg %d, %s along it, its drain hole down", m.Leg, survey.Figure(m.Start))
	}
	if clips := found.Run.Clips; len(clips) > 0 {
		places := make([]string, len(clips))
		for i, c := range clips {
			places[i] = survey.Figure(c)
		}
		line(&b, "clips at %s along it", strings.Join(places, ", "))
	}
	return b.String()
}

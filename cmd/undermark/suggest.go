package main

import (
	"fmt"
	"runtime"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

func suggestCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	var near string
	var turning bool
	c := &cobra.Command{
		Use:   "suggest JOB...",
		Short: "Say where the cut could go",
		Long: "The roomiest place in each open area of the floor, best first: the worst margin to what is under the floor\n" +
			"and to its edges, the uncertainty left out. Check a place before you trust it.",
		Args: someJobs, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			to, err := parseNear(near)
			if err != nil {
				return err
			}
			_, err = answerJobs(args, shared, &f, s, func(r rules.Result) (string, error) {
				places, err := seekPlaces(&r, turning, to, s, f.json)
				if err != nil {
					return "", err
				}
				if f.json {
					data, err := rules.SuggestJSON(places)
					return string(data) + "\n", err
				}
				return suggestText(f.paperFor(s), r, places), nil
			})
			return err
		},
	}
	f.add(c)
	c.Flags().StringVar(&near, "near", "", "the nearest open place to `X,Y` (mm forward of the datum line, mm left of the centreline)")
	c.Flags().BoolVar(&turning, "yaw", false, "look for the yaw too: plate, body and its space have to fit above the floor")
	return c
}

// seekPlaces returns where the cut of a job could go, or the whole heater at whatever yaw: the best place of each area, or
// the one nearest to a place.
func seekPlaces(r *rules.Result, turning bool, to *geometry.Point, s streams, json bool) ([]rules.Suggestion, error) {
	workers := runtime.GOMAXPROCS(0)
	if !turning {
		room := rules.RoomForCut(r)
		if to != nil {
			return room.Near(*to), nil
		}
		return room.Best(workers), nil
	}
	if r.Job.Heater == nil {
		return nil, lacking{Key: "heater", Text: "there is no [heater] to turn: enter one, or leave --yaw out"}
	}
	if err := rules.ToLayOut.May(r); err != nil {
		return nil, lacking{Key: "obstruction", Text: err.Error()}
	}
	p, stop := startProgress(s, json)
	defer stop()
	p.say("Looking over the floor...")
	room := rules.RoomForTurning(r)
	if to != nil {
		return room.Near(*to), nil
	}
	return room.Best(workers, func(done, of int) {
		if of > 0 {
			p.say("Turning the heater: area %d of %d", min(done+1, of), of)
		}
	}), nil
}

// parseNear reads "X,Y"; nil for nothing given.
func parseNear(text string) (*geometry.Point, error) {
	if text == "" {
		return nil, nil
	}
	x, y, ok := strings.Cut(text, ",")
	px, errX := strconv.ParseFloat(strings.TrimSpace(x), 64)
	py, errY := strconv.ParseFloat(strings.TrimSpace(y), 64)
	if !ok || errX != nil || errY != nil || !isPlace(px) || !isPlace(py) {
		return nil, fmt.Errorf("--near %q: give two numbers of mm as X,Y, e.g. --near 1210,240", text)
	}
	return &geometry.Point{X: px, Y: py}, nil
}

// isPlace tells whether a number may be a place: NaN may not.
func isPlace(v float64) bool { return vehicles.ALength.Takes(v) == nil }

// suggestText writes places for a person.
func suggestText(p *paper, r rules.Result, places []rules.Suggestion) string {
	if len(places) == 0 {
		p.line("%s: %s.", r.Job.Ref, words.NoPlaceKeepsAll)
		return p.String()
	}
	p.line("%s: where the cut's centre could be, of what was entered. All in mm; uncertainty left out.", r.Job.Ref)
	p.blank()
	head := []string{"x", "y", "to spare"}
	if r.Job.Datum.Named() {
		head[0] = "x from " + r.Job.Datum.Called()
	}
	yaw := places[0].Yaw.Set
	if yaw {
		head = append(head, "yaw")
	}
	head = append(head, "tape from below", "left", "right", "next to")
	var rows [][]string
	for _, place := range places {
		tape := rules.ReadBelow(&r.Job, place.At)
		cells := []string{survey.Figure(place.At.X), survey.Figure(place.At.Y), survey.Figure(place.Margin)}
		if yaw {
			cells = append(cells, survey.InDegrees(place.Yaw.Value))
		}
		cells = append(cells, survey.Figure(tape.Bumper), survey.Figure(tape.Left), survey.Figure(tape.Right), place.Against)
		rows = append(rows, cells)
	}
	p.grid(grid{head, rows, 0, len(head) - 1})
	return p.String()
}

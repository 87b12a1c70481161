package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"time"
)

// round is one way to run the tests, and how long that may take.
type round struct {
	limit time.Duration
	flags []string
}

// rounds are the ways to run them, the quickest first. A short run looks at few of the random cases.
func (p *planter) rounds() (all []round) {
	if *slow != "" {
		all = append(all, round{flags: []string{"-short", "-skip=" + *slow}})
	}
	return append(all, round{flags: []string{"-short"}}, round{})
}

// limitOf is how long a run may take that took as long as it says without a fault: ten times that, and what building on a busy machine takes.
func limitOf(out string) time.Duration {
	limit := 10 * time.Second
	for _, said := range regexp.MustCompile(`\t([0-9.]+s)\b`).FindAllStringSubmatch(out, -1) {
		if took, err := time.ParseDuration(said[1]); err == nil {
			limit += 10 * took
		}
	}
	return limit
}

// try plants one fault and says by what it was caught. One that makes a test run forever is caught too. What failed is run once more by
// itself: a test that passes then was in want of time, or of luck, and says nothing of the fault.
func (p *planter) try(f fault, rounds []round) (became outcome, by string) {
	temp, err := os.MkdirTemp("", "plant")
	must(err)
	defer os.RemoveAll(temp)
	faulty, overlay := filepath.Join(temp, "faulty"+filepath.Ext(f.file)), filepath.Join(temp, "overlay.json")
	must(os.WriteFile(faulty, f.planted(), 0o600))
	replaced, err := json.Marshal(map[string]map[string]string{"Replace": {f.file: faulty}})
	must(err)
	must(os.WriteFile(overlay, replaced, 0o600))
	for _, round := range rounds {
		round.flags = append([]string{"-overlay=" + overlay}, round.flags...)
		out, err := p.test("", round)
		switch {
		case err == nil:
			continue
		case strings.Contains(out, "[build failed]") || strings.Contains(out, "[setup failed]"):
			return unbuilt, ""
		}
		test, how := failed(out)
		if test == "" {
			return caught, how
		}
		if _, err := p.test(test, round); err != nil {
			return caught, how
		}
		by += ", not by " + test + ", which failed among others alone"
	}
	if p.known[f.key()] {
		return explainedAway, by
	}
	return survived, by
}

// failed is the test that failed first, or was running when there was no more time; "" where the whole run broke down.
func failed(out string) (test, how string) {
	if m := regexp.MustCompile(`(?m)^--- FAIL: (\S+)`).FindStringSubmatch(out); m != nil {
		return m[1], " by " + m[1]
	}
	if m := regexp.MustCompile(`(?m)^\s+running tests:\n\s+([^\s/]+)`).FindStringSubmatch(out); m != nil {
		return m[1], " by the time that " + m[1] + " took"
	}
	return "", " by a run that broke down"
}

// test runs all tests of a round, or one alone.
func (p *planter) test(alone string, r round) (string, error) {
	args := append([]string{"test", "-count=1", "-failfast", "-vet=off", "-timeout=" + r.limit.String()}, r.flags...)
	if alone != "" {
		args = append(args, fmt.Sprintf("-run=^%s$", regexp.QuoteMeta(alone)))
	}
	cmd := exec.Command("go", append(append(args, "./"+p.dir), strings.Fields(*tests)...)...)
	cmd.Dir = p.root
	out, err := cmd.CombinedOutput()
	return string(out), err
}

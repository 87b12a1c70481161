package rules

import (
	"fmt"
	"slices"
	"testing"

	"bench.example/undermark/vehicles"
)

// All that is found of a job's runs is worked out anew with each key that moves a point: it must be no part of what is felt, 0.3 ms.
func BenchmarkRunFindings(b *testing.B) {
	for _, job := range []vehicles.Job{vehicles.Demo(), crowded(60, true)} {
		plan, faults := Reduce(job, Builtin())
		if len(faults) > 0 {
			b.Fatal(faults)
		}
		asked := slices.Concat(exhaustRules, outletRules, intakeRules, fuelRules, runsRules)
		b.Run(fmt.Sprint(len(job.Obstructions)), func(b *testing.B) {
			j := newJudge(&job, &plan, Builtin())
			j.findings = make([]Finding, 0, j.mostFindings())
			for b.Loop() {
				j.findings, j.measures = j.findings[:0], [len(vehicles.RunKinds)]measuring{}
				for _, r := range asked {
					if r.check != nil {
						r.check(&j, r)
					}
				}
			}
			b.ReportMetric(float64(len(j.findings)), "findings")
		})
	}
}

package rules_test

import (
	"testing"
)

// What follows stands beyond what the job-file contract's sums hold for: it treats errors as independent that are not,
// or takes one for another. Each is held to what was measured, so that it is known, and stays so.

// farVan is surveyed with a coarse tape 4.5 m from the bumper, where a reading along the van is twice as uncertain as
// one across.
func farVan(ties ...complex128) *van {
	v := panelVan(2)
	v.cut, v.ties = 4510+240i, ties
	v.things = []truth{
		crossEdge("edge across", "crossmember", 4300, 4384),
		askew("turned edge", "floor rib", v.cut, 45, 150+40i, -1i, 10),
		askew("turned corner", "suspension", v.cut, 45, 30+30i, 1, 0),
	}
	return v
}

// steepVan has its cut and a crossmember right behind a bumper whose edge hangs low.
func steepVan() *van {
	v := panelVan(0)
	v.hookBelow, v.hookAbove, v.zeroAbove, v.cut = 250, 100, 0, 420+240i
	v.things = []truth{crossEdge("edge across", "crossmember", 180, 264)}
	v.things[0].tapeAt, v.things[0].bottom = 40, 40
	return v
}

// closeTies are ties within 300 mm of each other, 1.3 m from the cut: they fix it well along the van and badly across.
func closeTies() *van {
	v := panelVan(4)
	v.ties = []complex128{2400 + 140i, 2680 + 180i, 2420 + 330i, 2650 + 360i}
	return v
}

// steepTies are ties right behind a bumper whose edge hangs low.
func steepTies() *van {
	v := panelVan(4)
	v.hookBelow, v.ties = 250, []complex128{230 - 560i, 260 + 610i, 240 - 480i, 250 + 520i}
	v.things = v.things[:1]
	return v
}

// sideVan has its ties near the left side edge, the zeros of both side edges hanging low, and its cut near the right one.
func sideVan() *van {
	v := panelVan(4)
	v.sideBelow, v.cut = 220, 1210-560i
	v.ties = []complex128{420 + 700i, 2310 + 690i, 1950 + 710i, 620 + 705i}
	return v
}

func withThings(v *van, things ...truth) *van {
	v.things = things
	return v
}

// about are the bounds round what 20000 surveys gave: sigma over spread, and how often clear was wrong.
func about(ratio, wrong float64) bounds {
	return bounds{ratio: [2]float64{ratio - 0.05, ratio + 0.05}, wrong: [2]float64{wrong - 0.005, wrong + 0.005}}
}

// limit is a way of surveying for which the contract's sum is off, why, and by how much for each thing.
type limit struct {
	plan
	why  string
	want []bounds
}

func limits() []limit {
	far, near := []complex128{4100 - 400i, 4900 + 610i}, panelVan(5)
	between := piped("between points", "wiring", 10, (*visit).fromLeft, 705+380i, 1715+420i)
	right := piped("from the right", "brake line", 8, (*visit).fromRight, 900-710i, 1212-692i, 1600-720i)
	rightToo := piped("from the right", "brake line", 8, (*visit).fromRight, 900+60i, 1212+98i, 1600+40i)
	left := piped("from the left", "brake line", 8, (*visit).fromLeft, 900+420i, 1212+372i, 1600+430i)
	around := piped("on both sides", "wiring", 10, (*visit).fromMiddle,
		1400+440i, 1212+372i, 905+440i, 905+40i, 1212+108i, 1400+40i)
	const (
		four     = "a turned thing's edges share four readings, and the largest u of each axis stands for both: its corner may be worse"
		largest  = "the largest u of a line's readings stands for a place between two of them, which is better"
		shared   = "the zero's height is the same for hole and thing, and mostly cancels"
		common   = "the zero's height is the same for all ties, and counts once"
		opposite = "the side zeros' height is the same for all ties, and taken from the other side it adds up; the line's largest u stands for all of it"
		kink     = "the cut is as near to one side as to the other, and an error either way brings it nearer to one"
	)
	return []limit{
		{plan{name: "coarse tape far off, two ties", van: farVan(far...), class: "III"}, four,
			[]bounds{about(1.004, 0.052), about(1.043, 0.043), about(0.963, 0.057)}},
		{plan{name: "coarse tape far off, drilled", van: farVan(far...), class: "III", drilled: true}, four,
			[]bounds{about(1.009, 0.048), about(1.087, 0.035), about(0.948, 0.060)}},
		{plan{name: "steep", van: steepVan()}, "first order holds", []bounds{about(1.003, 0.049)}},
		{plan{name: "steep, drilled", van: steepVan(), drilled: true}, shared, []bounds{about(1.173, 0.026)}},
		{plan{name: "steep ties", van: steepTies()}, common, []bounds{about(1.000, 0.049)}},
		{plan{name: "close ties", van: withThings(closeTies(), near.things[6])}, "first order holds", []bounds{about(0.999, 0.052)}},
		{plan{name: "between points", van: withThings(near, between)}, largest, []bounds{about(1.094, 0.037)}},
		{plan{name: "same side, drilled", van: withThings(panelVan(0), left), drilled: true}, shared, []bounds{about(1.062, 0.041)}},
		{plan{name: "other side", van: withThings(panelVan(5), rightToo)}, opposite, []bounds{about(1.015, 0.049)}},
		{plan{name: "other side, steep", van: withThings(sideVan(), right)}, opposite, []bounds{about(1.072, 0.032)}},
		{plan{name: "both sides, no ties", van: withThings(panelVan(0), around)}, kink, []bounds{about(1.592, 0.045)}},
		{plan{name: "both sides, close ties", van: withThings(closeTies(), around)}, kink, []bounds{about(1.631, 0.082)}},
	}
}

// 24000 surveys.
func TestProofOfTheLimits(t *testing.T) {
	for i, c := range limits() {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			things, _ := c.simulate(t, random(t, uint64(100+i)), surveys(2000))
			t.Log(c.why)
			for k := range things {
				things[k].check(t, c.van.things[k].name, c.want[k])
			}
		})
	}
}

package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/template"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/vehicles"
)

// told are the words behind each name on a customer's page.
func told(s *Sheet) map[string]string {
	all := map[string]string{}
	for _, section := range s.Sections {
		for _, list := range each[Named](section) {
			for _, one := range list {
				all[one[0]] = one[1]
			}
		}
	}
	return all
}

func forCustomer(t require.TestingT, job vehicles.Job) Sheet {
	return ForCustomer(judged(t, job), plainWords())
}

// Places are told from the line that x starts at and from the van's middle, to the centimetre: by hand.
func TestPlacesInPlainWords(t *testing.T) {
	s := paperOf(t, vehicles.Demo())
	for want, p := range map[string]geometry.Point{
		"1.26 m forward of the bumper edge, 0.20 m left of the van's middle":  {X: 1255, Y: 195},
		"0.30 m behind the bumper edge, 1.00 m right of the van's middle":     {X: -300, Y: -1000},
		"2.00 m forward of the bumper edge, in the van's middle":              {X: 2000, Y: 4.9},
		"2.00 m forward of the bumper edge, 0.01 m right of the van's middle": {X: 2000, Y: -5.1},
		"0.00 m forward of the bumper edge, in the van's middle":              {},
	} {
		assert.Equal(t, want, s.at(p))
	}
	job := vehicles.Demo()
	job.Datum.Name = "step"
	assert.Contains(t, paperOf(t, job).at(geometry.Point{X: 500}), "0.50 m forward of the step", "the line is named as the job names it")
}

// The exhaust's end is at the edge that it is nearest to: of a floor of 1775 mm across, with its left edge at 888.
func TestTheEdgeThatAnEndIsNearestTo(t *testing.T) {
	s := paperOf(t, vehicles.Demo())
	for want, p := range map[string]geometry.Point3{
		"at the van's left": {X: 1370, Y: 870}, "at the van's right": {X: 1370, Y: -870}, "at the van's rear": {X: 60, Y: 500},
	} {
		assert.Equal(t, want, s.edge(p), "%v", p)
	}
	rear, known := s.Job.OutlineRear()
	require.True(t, known)
	assert.Equal(t, "at the van's rear", s.edge(geometry.Point3{X: rear + 17, Y: s.Job.OutlineLeft() - 18}), "a millimetre nearer")
	assert.Equal(t, "at the van's left", s.edge(geometry.Point3{X: rear + 19, Y: s.Job.OutlineLeft() - 18}))
}

// What is burnt and where it is taken from is told as far as somebody said it.
func TestTheFuelInPlainWords(t *testing.T) {
	s := paperOf(t, vehicles.Demo())
	tank := &vehicles.Tank{}
	for want, supply := range map[string]vehicles.Supply{
		"the fuel that its instructions name":                         {},
		"petrol":                                                      {Kind: "petrol"},
		"diesel, from the van's own fuel tank":                        {Kind: "diesel", From: "fuel tank", Tank: tank},
		"diesel, from a tank of its own":                              {Kind: "diesel", Tank: tank},
		"the fuel that its instructions name, from a tank of its own": {Tank: tank},
	} {
		assert.Equal(t, want, s.fuel(&vehicles.Run{Supply: supply}))
	}
}

// How much is not settled is counted in words that are right for one and for many.
func TestWhatIsNotSettledInPlainWords(t *testing.T) {
	for want, n := range map[string][2]int{
		"1 thing is where it must not be":                             {1, 0},
		"3 things are where they must not be":                         {3, 0},
		"1 thing is in doubt":                                         {0, 1},
		"2 things are where they must not be and 1 thing is in doubt": {2, 1},
		"1 thing is where it must not be and 4 things are in doubt":   {1, 4},
		"there is too little to say":                                  {0, 0},
	} {
		assert.Equal(t, want, open(n[0], n[1]))
	}
}

// Nobody is told that all is well unless it is: for each verdict of the sample jobs the page says what holds, and counts what does not.
func TestACustomerHearsHowTheJobStands(t *testing.T) {
	verdicts := map[rules.Verdict]int{}
	cases(t, func(name string, s *source, _ *expected) {
		page := ForCustomer(s.Result, s.say)
		var words string
		for _, text := range each[Text](page.Sections[0]) {
			words += text.Words
		}
		judgedAs := s.Result
		if built, ok := asBuilt(s.Result); ok {
			judgedAs = &built
		}
		verdicts[judgedAs.Verdict]++
		well := strings.Contains(words, "keeps what is asked of it")
		assert.Equal(t, judgedAs.Verdict == rules.Clear, well, name)
		assert.Equal(t, judgedAs.Verdict != rules.Clear, strings.Contains(words, "Don't run the heater until the fitter has seen to it"), name)
	})
	for _, v := range []rules.Verdict{rules.Foul, rules.Doubtful, rules.Clear} {
		assert.Positive(t, verdicts[v], "one of the sample jobs is %s", v)
	}
	job := vehicles.Demo()
	job.Cut = nil
	page := forCustomer(t, job)
	assert.Contains(t, each[Text](page.Sections[0])[0].Words, "no heater had a place")
}

// A customer's page has what the job has, each part by its place, and nothing that it has not.
func TestACustomerHearsOfWhatIsInTheVan(t *testing.T) {
	demo := vehicles.Demo()
	page := forCustomer(t, demo)
	all := told(&page)
	assert.Equal(t, "1.26 m forward of the bumper edge, 0.20 m left of the van's middle. It blows its warm air to the rear. Keep the space before that and round the heater free.", all["The heater"])
	assert.Contains(t, all["The hole"], "One round hole of 127 mm ")
	assert.Contains(t, all["The exhaust"], "ends at the van's left, 1.37 m forward of the bumper edge, 0.87 m left of the van's middle. ")
	assert.Contains(t, all["The exhaust"], "is its muffler")
	assert.Contains(t, all["Air for the flame"], "2.48 m forward of the bumper edge, 0.33 m left of the van's middle")
	assert.Contains(t, all["The fuel"], "It burns diesel, from the van's own fuel tank. Its pump is under the floor, ")
	assert.Equal(t, "It is switched on and off at its control: on the left wall over the battery box, 1.2 m up. Its fuse is at the battery: in the battery box at the left wall. "+
		"The carbon monoxide alarm hangs where its instructions say: over the head end of the bed.", all["Switch, fuse, alarm"])

	for name, part := range map[string]vehicles.RunKind{"The exhaust": vehicles.ExhaustRun, "Air for the flame": vehicles.IntakeRun, "The fuel": vehicles.FuelRun} {
		page = forCustomer(t, demo.WithRun(part, nil))
		assert.NotContains(t, told(&page), name)
		assert.Contains(t, told(&page), "The heater")
	}
	quiet, pumpless := *demo.Exhaust, *demo.Fuel
	quiet.Muffler, pumpless.Pump = nil, nil
	page = forCustomer(t, demo.WithRun(vehicles.ExhaustRun, &quiet).WithRun(vehicles.FuelRun, &pumpless))
	assert.NotContains(t, told(&page)["The exhaust"], "muffler")
	assert.NotContains(t, told(&page)["The fuel"], "pump")

	page = forCustomer(t, vehicles.Job{Ref: "TL-80", Floor: demo.Floor})
	assert.Contains(t, told(&page), "Nothing yet")
	assert.NotContains(t, told(&page), "Switch, fuse, alarm")
	noHeater := demo
	noHeater.Heater = nil
	page = forCustomer(t, noHeater)
	assert.NotContains(t, told(&page), "The heater")
	assert.NotContains(t, told(&page), "Switch, fuse, alarm", "there is none to switch")
	air := *demo.Heater
	air.Air = vehicles.Outside
	page = forCustomer(t, demo.WithHeater(air))
	assert.Contains(t, told(&page)["The heater"], " It takes the air that it warms from outside.")
}

// The days that were agreed are on the page, and where none was that one is to be agreed.
func TestACustomerHearsWhatWasAgreed(t *testing.T) {
	job := vehicles.Demo().WithDone(vehicles.Done{Step: "retorque", Due: "2026-12-11"})
	page := forCustomer(t, job)
	assert.Equal(t, "C"+work.Retorque[1:]+" on 2026-12-11, as agreed.", told(&page)["First"])
	assert.Contains(t, told(&page)["Service"], "The first is on the day that you agree with the fitter.")
	page = forCustomer(t, job.WithDone(vehicles.Done{Step: "service-agreed", Due: "2027-10-01"}))
	assert.Contains(t, told(&page)["Service"], "The first is on 2027-10-01, as agreed.")
}

// Each caution that a user must know and that applies is on the page, and no other; all of it is one page of either paper, in every sample job.
func TestACustomersPageIsOne(t *testing.T) {
	cases(t, func(name string, s *source, _ *expected) {
		page := ForCustomer(s.Result, s.say)
		var want List
		for _, c := range rules.Cautions() {
			if c.AppliesTo(s.Result) && c.User != "" {
				want = append(want, c.User)
			}
		}
		assert.Equal(t, []List{want}, each[List](page.Sections[1]), name)
		for paper, of := range template.Papers {
			assert.Len(t, page.Pages(of), 1, "%s on %s", name, paper)
		}
		assert.Empty(t, page.Head.Standing, "how the place stands is said in words")
	})
}

// The picture for a customer names where exhaust and air end, and shows neither a thing by its code nor anything that is foul.
func TestACustomersPictureIsPlain(t *testing.T) {
	page := forCustomer(t, vehicles.Demo())
	picture := each[Picture](page.Sections[0])[0]
	labels := map[string]bool{}
	for _, it := range picture.Scene.Items {
		labels[it.Label] = true
		assert.Equal(t, scene.Plain, it.State)
		assert.False(t, it.Unsure)
		assert.True(t, it.Code == "" || it.Role == scene.Fitting, it.Label)
	}
	for _, want := range []string{"exhaust ends", "air in", "warm air", "front", "muffler", "bed frame", "sliding door"} {
		assert.True(t, labels[want], want)
	}
	for _, not := range []string{"fuel tank", "brake pipe across", "spare wheel", "rear axle"} {
		assert.False(t, labels[not], not)
	}
}

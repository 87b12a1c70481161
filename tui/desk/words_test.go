package desk

import (
	"testing"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
	"github.com/stretchr/testify/assert"
)

func TestAQuantityHasTheUnitOfItsRule(t *testing.T) {
	for _, c := range []struct {
		unit          rules.Unit
		metric, inch  string
		limit, inInch string
	}{
		{rules.MM, "30.1 mm", `1 3/16"`, "30.1 mm", `1 3/16"`},
		{rules.Degree, "30.1°", "30.1°", "30.125°", "30.125°"},
		{rules.PerM, "30.1 mm/m", "30.1 mm/m", "30.125 mm/m", "30.125 mm/m"},
		{rules.Count, "30.1×", "30.1×", "30.125×", "30.125×"},
		{rules.Times, "30.1×", "30.1×", "30.125×", "30.125×"},
		{rules.Pure, "30.1u²", "30.1u²", "30.125u²", "30.125u²"},
	} {
		assert.Equal(t, c.metric, Quantity(30.125, c.unit, Millimetres))
		assert.Equal(t, c.inch, Quantity(30.125, c.unit, Inches))
		l := rules.Limit{Rule: &rules.Rule{Unit: c.unit}, Value: vehicles.Some(30.125)}
		assert.Equal(t, c.limit, Limit(l, Millimetres))
		assert.Equal(t, c.inInch, Limit(l, Inches))
	}
	assert.Equal(t, "no value", Limit(rules.Limit{}, Millimetres))
}

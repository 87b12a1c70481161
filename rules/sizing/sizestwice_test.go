package sizing

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// enteredOnceMore are all figures of sizes.toml, a line each table: a slip in either shows. In the middle stand those that somebody
// has published; the rest is common practice, or from memory, as the file says of each.
var enteredOnceMore = map[string]string{
	"heater":     "efficiency 0.8, short 100",
	"class 2 kW": "air 80, glow 9, least 800, most 2000, running 1.2",
	"class 4 kW": "air 140, glow 10, least 1000, most 4000, running 2",
	"class 5 kW": "air 170, glow 10, least 1300, most 5000, running 2.5",
	"class 8 kW": "air 230, glow 13, least 1800, most 8000, running 4",
	"supply":     "drop 0.5, spare 1.25, usable 50, volts 12",
	"heat":       "reserve 1.2",
	"saw":        "speed 27",
	"floor": "bead 6, bolts [16 20 25 30 35 40 45 50 55 60 65 70 80 90 100], cartridge 310, collars [20 30 45 60 80 100], match 1.5, nut 9, " +
		"plate 1.5, screws [6.5 9.5 13 16 19 22 25 32 38 45 50], spare 2",

	// Heat of a kilogram: IPCC 2006 guidelines, vol. 2, table 1.2.
	"fuel diesel": "density 0.832, heat 43",
	"fuel petrol": "density 0.745, heat 44.3",
	// Resistance: IEC 60228, class 5, plain copper.
	"cable 0.75": "fuse 7.5, ohm 26",
	"cable 1":    "fuse 10, ohm 19.5",
	"cable 1.5":  "fuse 15, ohm 13.3",
	"cable 2.5":  "fuse 20, ohm 7.98",
	"cable 4":    "fuse 30, ohm 4.95",
	"cable 6":    "fuse 40, ohm 3.3",
	"cable 10":   "fuse 60, ohm 1.91",
	"cable 16":   "fuse 80, ohm 1.21",
	"cable 25":   "fuse 100, ohm 0.78",
	"fuses":      "amperes [3 5 7.5 10 15 20 25 30 40 50 60]",
	// ISO 2533, and the ideal gas at 50 degrees.
	"air":  "constant 287.05, heat 1005, kelvin 273.15, pressure 101325",
	"duct": "bend 0.4, density 1.09233, out 1, rough 1, viscosity 1.95e-05",
	// ISO 6946:2017, 6.8.
	"resistance": "floor 0.17, insulates 0.065, outside 0.04, roof 0.1, wall 0.13",
	// Conductivities: ISO 10456:2007 and EN ISO 10077-2.
	"material steel":         "density 7800, heat 450, lambda 50",
	"material stainless":     "density 7900, heat 500, lambda 17",
	"material aluminium":     "density 2800, heat 880, lambda 160",
	"material glass":         "density 2500, heat 750, lambda 1",
	"material acrylic":       "density 1180, heat 1500, lambda 0.18",
	"material polycarbonate": "density 1200, heat 1200, lambda 0.2",
	"material softwood":      "density 500, heat 1600, lambda 0.13",
	"material plywood":       "density 500, heat 1600, lambda 0.13",
	"material rubber foam":   "density 70, heat 1500, lambda 0.05",
}

func TestEverySizeIsAsItIsEnteredOnceMore(t *testing.T) {
	var tables map[string]any
	_, err := toml.Decode(sizesText, &tables)
	require.NoError(t, err)
	got := map[string]string{}
	for name, table := range tables {
		switch table := table.(type) {
		case map[string]any:
			if figures := figuresOf(table, ""); figures != "" {
				got[name] = figures
			}
		case []map[string]any:
			key := "name"
			if name == "cable" {
				key = "area"
			}
			for _, row := range table {
				got[fmt.Sprint(name, " ", row[key])] = figuresOf(row, key)
			}
		}
	}
	assert.Equal(t, enteredOnceMore, got)
}

// figuresOf are the figures of a table by their keys in order, but one that it goes by.
func figuresOf(table map[string]any, but string) string {
	var list []string
	for _, key := range slices.Sorted(maps.Keys(table)) {
		if _, text := table[key].(string); !text && key != but {
			list = append(list, fmt.Sprint(key, " ", table[key]))
		}
	}
	return strings.Join(list, ", ")
}

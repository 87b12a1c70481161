package sizing

import (
	_ "embed"
	"fmt"
	"slices"
	"sync"

	"github.com/BurntSushi/toml"
)

//go:embed sizes.toml
var sizesText string

// Sizes is what is reckoned with: what a job leaves out, what things are sold in, and coefficients.
type Sizes struct {
	Heater    heaterSizes
	Class     []classSizes
	ClassNote struct{ Source string } `toml:"class_note"`
	Fuel      []fuelSizes
	Supply    supplySizes
	Cable     []cableSizes
	CableNote struct {
		OhmSource  string `toml:"ohm_source"`
		FuseSource string `toml:"fuse_source"`
	} `toml:"cable_note"`
	Fuses struct {
		Amperes []float64
		Source  string
	}
}

type heaterSizes struct {
	Efficiency       float64
	EfficiencySource string `toml:"efficiency_source"`
	Short            float64
	ShortSource      string `toml:"short_source"`
}

// classSizes are those of a class of heater: watts, amperes at 12 V, m3/h.
type classSizes struct {
	Name                            string
	Least, Most, Glow, Running, Air float64
}

type fuelSizes struct {
	Name          string
	Heat, Density float64 // MJ/kg, kg/l
	Source        string
}

// PerLitre is the heat in a litre, kWh.
func (f fuelSizes) PerLitre() float64 { return f.Heat * f.Density / 3.6 }

type supplySizes struct {
	Volts, Drop, Usable, Spare float64
	Source                     string
}

// cableSizes is a cable that is sold: mm2, ohm/km, and the largest fuse that protects it, A.
type cableSizes struct{ Area, Ohm, Fuse float64 }

// Usual are the built-in sizes: read when somebody asks first, as most of what the program does asks for none.
var Usual = sync.OnceValue(func() *Sizes { s := readSizes(sizesText); return &s })

// readSizes reads sizes; that those that are built in can be read is tested.
func readSizes(text string) (s Sizes) {
	meta, err := toml.Decode(text, &s)
	if err == nil && len(meta.Undecoded()) > 0 {
		err = fmt.Errorf("sizes.toml: %s is not known", meta.Undecoded()[0])
	}
	if err != nil {
		panic(err)
	}
	return s
}

// class are the sizes of a class of heater; ok is false for a class there is not.
func (s *Sizes) class(name string) (c classSizes, ok bool) {
	i := slices.IndexFunc(s.Class, func(c classSizes) bool { return c.Name == name })
	if i < 0 {
		return c, false
	}
	return s.Class[i], true
}

// leastOf is the first of rising sizes that is no less than needed; ok is false where none is.
func leastOf(sizes []float64, needed float64) (size float64, ok bool) {
	for _, size = range sizes {
		if size >= needed {
			return size, true
		}
	}
	return 0, false
}

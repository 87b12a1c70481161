package sizing

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
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
	Saw          sawSizes
	Air          airSizes
	Resistance   resistances
	Material     []materialSizes
	MaterialNote struct{ Source string } `toml:"material_note"`
	Heat         struct {
		Reserve float64
		Source  string
	}
	Duct  ductSizes
	Floor floorSizes
}

// ductSizes are of warm air, kg/m3 and Pa s, and of what it meets: mm, and dynamic pressures that are lost.
type ductSizes struct {
	Density, Viscosity float64
	AirSource          string `toml:"air_source"`
	Rough, Bend, Out   float64
	Source             string
	FrictionSource     string `toml:"friction_source"`
}

// floorSizes are of what goes through the floor, mm; a cartridge in ml.
type floorSizes struct {
	Bead, Cartridge, Plate, Spare, Nut, Match float64
	Screws, Bolts, Collars                    []float64
	Source                                    string
	ScrewsSource                              string `toml:"screws_source"`
	BoltsSource                               string `toml:"bolts_source"`
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

type sawSizes struct {
	Speed       float64 // m/min
	SpeedSource string  `toml:"speed_source"`
}

// airSizes are of air: Pa, J/(kg K) twice, K at 0 degrees.
type airSizes struct {
	Pressure, Constant, Heat, Kelvin float64
	Source                           string
}

// resistances are those of surfaces, m2 K/W: inside by how the surface lies, and outside.
type resistances struct {
	Wall, Roof, Floor, Outside float64
	Source                     string
	Insulates                  float64 // W/(m K)
	InsulatesSource            string  `toml:"insulates_source"`
}

// materialSizes is what a layer may be of: W/(m K), kg/m3, J/(kg K).
type materialSizes struct {
	Name                  string
	Lambda, Density, Heat float64
}

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

// material is what is known of a material; ok is false for one that is not here.
func (s *Sizes) material(name string) (m materialSizes, ok bool) {
	i := slices.IndexFunc(s.Material, func(m materialSizes) bool { return strings.EqualFold(m.Name, name) })
	if i < 0 {
		return m, false
	}
	return s.Material[i], true
}

// fuel is what is known of a fuel.
func (s *Sizes) fuel(name string) fuelSizes {
	return s.Fuel[slices.IndexFunc(s.Fuel, func(f fuelSizes) bool { return f.Name == name })]
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

// Package cutlist says what the runs of a job are made of: the pieces that pipe and hose are cut to, with their bends, what joins and
// holds them, how much of the lengths they are sold in that takes, and what the usual kit holds. It lists what the job holds and nothing
// else, and says what is not there. Lengths are mm, angles degrees.
package cutlist

import (
	_ "embed"
	"fmt"
	"slices"
	"sync"

	"github.com/BurntSushi/toml"
)

//go:embed kit.toml
var kitText string

// Thing is what a run is cut from, joined or hung with, as people call it. What hangs on a run is counted as its kind says.
type Thing string

// The things that are asked for by themselves.
const (
	ExhaustPipe  Thing = "exhaust pipe"
	IntakeHose   Thing = "intake hose"
	FuelLine     Thing = "fuel line"
	ExhaustClamp Thing = "exhaust clamp"
	IntakeClamp  Thing = "intake clamp"
	FuelJoint    Thing = "fuel joint"
	FuelClamp    Thing = "fuel clamp"
	EndSleeve    Thing = "end sleeve"
	EndCap       Thing = "end cap"
	Grommet      Thing = "grommet"
	Muffler      Thing = "muffler"
)

// Kit is what is allowed for, and what a kit holds.
type Kit struct {
	Source string
	Allow  struct{ Trim, Overlap, Least float64 }
	Stock  []StockOf
	Part   []PartOf
}

// StockOf is something sold by the length: how long one is and how many a kit holds.
type StockOf struct {
	Of     Thing
	Length float64
	Holds  int
}

// PartOf is something sold by the piece, or cut from a hose that is: Each is how long then.
type PartOf struct {
	Of    Thing
	Holds int
	Each  float64
}

// Usual is the usual kit: read when somebody asks first, as most of what the program does asks for none.
var Usual = sync.OnceValue(func() *Kit { k := readKit(kitText); return &k })

// readKit reads a kit; that the one that is built in can be read is tested.
func readKit(text string) (k Kit) {
	meta, err := toml.Decode(text, &k)
	if err == nil && len(meta.Undecoded()) > 0 {
		err = fmt.Errorf("kit.toml: %s is not known", meta.Undecoded()[0])
	}
	if err != nil {
		panic(err)
	}
	return k
}

// stock is what the kit says of something sold by the length.
func (k *Kit) stock(of Thing) StockOf {
	return k.Stock[slices.IndexFunc(k.Stock, func(s StockOf) bool { return s.Of == of })]
}

// part is what the kit says of a part; that it holds none of what it does not name.
func (k *Kit) part(of Thing) PartOf {
	i := slices.IndexFunc(k.Part, func(p PartOf) bool { return p.Of == of })
	if i < 0 {
		return PartOf{Of: of}
	}
	return k.Part[i]
}

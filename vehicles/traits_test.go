package vehicles

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What each trait is asked for, kind by kind, as a fitter knows them. All of it is common practice, no source; Added is what job
// file format 1 does not list.
func TestWhichKindsHaveATrait(t *testing.T) {
	for trait, kinds := range map[Traits]string{
		Added:        "tow bar, wheel-sensor wire, particulate filter, axle",
		Movable:      "wiring, spare wheel, plastic part",
		Waymark:      "crossmember, chassis rail, vehicle exhaust",
		InSheetMetal: "swage",
		VanTank:      "fuel tank",
		HoldsFuel:    "fuel line, fuel tank",
		HoldsGas:     "gas tank, gas pipe",
		HoldsSeat:    "seat mount, seat-belt mount",
		Hollow:       "crossmember, chassis rail, wheel arch, double skin, body sill, tow bar",
		BearsClips:   "crossmember, chassis rail, floor rib, body sill",
		ComesDown:    "spare wheel, jacking point",
		Travels:      "suspension, driveshaft, tyre, axle",
		GivesHeat:    "vehicle exhaust, catalyst, particulate filter",
		HurtByHeat:   "fuel tank, plastic part, reductant tank, gas tank, tyre, traction battery, water tank",
		TapedAsPipe:  "brake line, fuel line, wiring, air line, coolant pipe, gas pipe",
		TapedAsRail:  "chassis rail",
		TapedAsBeam:  "crossmember",
	} {
		assert.Equal(t, kinds, strings.Join(KindsWith(trait), ", "), "%b", trait)
	}
	for _, name := range OpeningKinds {
		opening := Opening{Kind: name}
		assert.Equal(t, slices.Contains([]string{"door", "side step", "locker door"}, name), opening.Is(HurtByHeat), name)
		assert.Equal(t, name == "fuel filler", opening.Is(SpillsFuel), name)
	}
}

// A thing has the traits of its kind; one of no kind, or of one that nobody knows, has none.
func TestAThingHasTheTraitsOfItsKind(t *testing.T) {
	for i, kind := range Kinds {
		o, f := Obstruction{Kind: kind}, Fitting{Kind: kind}
		for bit := Added; bit <= TapedAsBeam; bit <<= 1 {
			has := slices.Contains(KindsWith(bit), kind)
			assert.Equal(t, [4]bool{has, has, has, has}, [4]bool{o.Is(bit), f.Is(bit), KindOf(kind).Is(bit), TraitsAt(i)&bit != 0}, kind)
		}
	}
	for _, nobody := range []string{"", "fuel tank.diesel", "a thing nobody knows"} {
		o, f := Obstruction{Kind: nobody}, Fitting{Kind: nobody}
		assert.False(t, o.Is(^Traits(0)) || f.Is(^Traits(0)) || KindOf(nobody).Is(^Traits(0)), nobody)
	}
}

// otherwise are the words that name a kind and mean something else where they stand.
var otherwise = map[string]string{
	"geometry/scene/pen.go":   "chassis rail",                   // what a role stands for
	"rules/cutlist/kit.go":    "fuel line",                      // the run
	"rules/fuel.go":           "fuel line",                      // what its findings are called
	"rules/parts/parts.go":    "fuel tank, heat shield, wiring", // what is ordered
	"rules/sheet/cautions.go": "fuel line",                      // the run, to be written beside
	"tui/jobcard/wheels.go":   "tyre",                           // a field of the card
	"tui/plan/legend.go":      "fuel line",                      // the run
	"vehicles/layers.go":      "swage",                          // a layer of the floor
	"vehicles/read.go":        "wiring",                         // a table of the file
	"vehicles/run.go":         "fuel line",                      // the run
	"vehicles/wiring.go":      "wiring",                         // a table of the file
}

// No rule and no screen knows a kind by its name: what is asked of some and not of others is a trait in the one table.
func TestNobodyElseNamesAKind(t *testing.T) {
	named := append(slices.Clone(Kinds), OpeningKinds...)
	found := map[string][]string{}
	for _, room := range []string{"cmd", "tui", "rules", "vehicles", "geometry"} {
		require.NoError(t, filepath.WalkDir(filepath.Join("..", room), func(path string, entry fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.HasSuffix(path, "vehicles/kinds.go") {
				return err
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			if err != nil {
				return err
			}
			ast.Inspect(file, func(n ast.Node) bool {
				if text, ok := n.(*ast.BasicLit); ok && text.Kind == token.STRING {
					if word, _ := strconv.Unquote(text.Value); slices.Contains(named, word) && !slices.Contains(found[path], word) {
						found[path] = append(found[path], word)
					}
				}
				return true
			})
			return nil
		}))
	}
	for path, words := range found {
		slices.Sort(words)
		at := filepath.ToSlash(strings.TrimPrefix(path, ".."+string(filepath.Separator)))
		assert.Equal(t, otherwise[at], strings.Join(words, ", "), at)
	}
	assert.Len(t, found, len(otherwise), "what stands here is still there")
}

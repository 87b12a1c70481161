package vehicles

// Traits are what is asked of some kinds of thing and not of others. A rule asks a thing for a trait, never for the name of its kind.
type Traits uint32

// The traits. All of them are common practice, no source, but Added.
const (
	Added        Traits = 1 << iota // beyond the kinds of job file format 1: other programs do not know it
	Movable                         // may be moved or taken off to make room: what carries the van, brakes it or holds fuel stays
	Waymark                         // people find their way under a van by it
	InSheetMetal                    // pressed into the floor: a hole may cross it, a plate needs packing on it
	VanTank                         // a tank of the van's own fuel, which a line of the heater's can begin in
	HoldsFuel                       // it may be said which fuel is in it
	HoldsGas                        // holds gas that is shut, and burnt empty, before there is work near it
	HoldsSeat                       // a seat or its belt is bolted to it
	Hollow                          // steel with a hollow: there swarf lies, and bare metal rusts unseen
	BearsClips                      // a clip may be bolted to it
	ComesDown                       // comes down, or something goes up under it
	Travels                         // moves up and down as the van drives: it may be said how far
	GivesHeat                       // warms what is near it
	HurtByHeat                      // hot gas spoils it, or burns who stands there
	SpillsFuel                      // spilt fuel runs straight down from it
	TapedAsPipe                     // a level tape finds it again within a mm, with all other pipes
	TapedAsRail                     // the same, with all other rails
	TapedAsBeam                     // the same, with all other beams across
)

// Is tells whether a kind has one of some traits.
func (k Kind) Is(t Traits) bool { return k.Traits&t != 0 }

// Is tells whether the obstruction's kind has one of some traits; that of no kind's name has none.
func (o *Obstruction) Is(t Traits) bool { return TraitsAt(KindIndex(o.Kind))&t != 0 }

// Is tells whether the fitting's kind has one of some traits; one without a kind has none.
func (f *Fitting) Is(t Traits) bool { return TraitsAt(KindIndex(f.Kind))&t != 0 }

// Is tells whether the opening's kind has one of some traits.
func (o *Opening) Is(t Traits) bool { return OpeningKindOf(o.Kind).Is(t) }

// TraitsAt are those of a kind of obstruction by its KindIndex, none behind all of them.
func TraitsAt(index int) Traits {
	if index >= len(obstructionKinds) {
		return 0
	}
	return obstructionKinds[index].Traits
}

// KindsWith are the names of the kinds of obstruction that have one of some traits, in the order of lists.
func KindsWith(t Traits) (names []string) {
	for i := range obstructionKinds {
		if obstructionKinds[i].Is(t) {
			names = append(names, obstructionKinds[i].Name)
		}
	}
	return names
}

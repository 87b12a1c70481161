package scene

// Grade says in steps how much room a place of the floor leaves for the centre of the cut.
type Grade uint8

// How much room there is, from less to more.
const (
	Unknown      Grade = iota // off the floor
	NoRoom                    // foul
	DoubtfulRoom              // neither foul nor clear beyond doubt
	LittleRoom                // clear beyond doubt, with less than FairSpare to spare
	FairRoom
	MuchRoom // with MuchSpare to spare or more
)

// Grades are how many there are.
const Grades = int(MuchRoom) + 1

// What is to spare beyond doubt from where on there is fair and much room, mm.
const (
	FairSpare = 20
	MuchSpare = 50
)

// GradeOf returns how much room there is on the floor where the margin is possible at the most, and sure at the least.
func GradeOf(possible, sure float64) Grade {
	switch {
	case possible <= 0:
		return NoRoom
	case sure < 0:
		return DoubtfulRoom
	case sure < FairSpare:
		return LittleRoom
	case sure < MuchSpare:
		return FairRoom
	}
	return MuchRoom
}

package words

import "bench.example/undermark/rules"

// What stands before what was not checked: as it is not there, and as nobody has said.
const (
	NotEntered = "Not checked, not entered"
	NobodySaid = "Not checked, nobody has said"
)

// Unchecked are the job file's words for what is missing, as people say them.
func Unchecked(missing []rules.Lack) []string {
	said := make([]string, len(missing))
	for i, lack := range missing {
		said[i] = string(lack)
		switch lack {
		case rules.LacksCollar:
			said[i] = "collar"
		case rules.LacksTies:
			said[i] = "matching points"
		}
	}
	return said
}

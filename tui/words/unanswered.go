package words

import "bench.example/undermark/rules"

// What stands before what was not checked: as it is not there, and as nobody has said.
const (
	NotEntered = "Not checked, not entered"
	NobodySaid = "Not checked, nobody has said"
)

// Unchecked are the job file's words for what is missing, as people say them.
func Unchecked(missing []string) []string {
	said := make([]string, len(missing))
	for i, word := range missing {
		said[i] = word
		switch word {
		case "turret":
			said[i] = "collar"
		case "ties":
			said[i] = "matching points"
		}
	}
	return said
}

// Unanswered are the rules' words for what nobody has said; what no screen asks comes last, with where to say it.
func Unanswered(asked []string) []string {
	var list, inFile []string
	for _, word := range asked {
		if word == rules.MufflerDrain {
			inFile = append(inFile, "in the job file: "+word)
		} else {
			list = append(list, word)
		}
	}
	return append(list, inFile...)
}

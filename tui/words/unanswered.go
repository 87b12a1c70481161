package words

import "bench.example/undermark/rules"

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

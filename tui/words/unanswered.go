package words

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

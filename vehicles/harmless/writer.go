package harmless

import "io"

// Writer passes texts on, made harmless by Lines. It is the last thing before a terminal: what comes through here is for
// people, whoever wrote it. Each Write is to be of whole runes.
type Writer struct{ To io.Writer }

// Write writes p and says how much of p that was: all of it, or none with an error.
func (w Writer) Write(p []byte) (int, error) {
	if _, err := io.WriteString(w.To, Lines(string(p))); err != nil {
		return 0, err
	}
	return len(p), nil
}

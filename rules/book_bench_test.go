package rules

import "testing"

// Every start of a command that judges reads the program's own book: what it takes is waited for before anything is said.
func BenchmarkReadingTheBook(b *testing.B) {
	for b.Loop() {
		if _, err := parseBook(builtinText, "book.toml", BuiltIn); err != nil {
			b.Fatal(err)
		}
	}
}

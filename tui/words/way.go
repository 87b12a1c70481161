package words

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
)

// Way says a way in the plan in words, "1.5 mm forward, 0.8 mm right"; "" for one so short that it shows no figure.
func Way(by geometry.Point, s desk.Settings) string {
	ahead, side := "forward", desk.Left(s)
	if by.X < 0 {
		ahead = "back"
	}
	if by.Y < 0 {
		side = desk.Right(s)
	}
	text, none := "", desk.Length(0, s.Units)
	if x := desk.Length(math.Abs(by.X), s.Units); x != none {
		text = x + " " + ahead
	}
	if y := desk.Length(math.Abs(by.Y), s.Units); y != none {
		if text != "" {
			text += ", "
		}
		text += y + " " + side
	}
	return text
}

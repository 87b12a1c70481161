package words

import (
	"fmt"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/tui/desk"
)

// CutList is the list of what the runs are made of, a line each: pieces, the lengths they are cut from, parts, and what is not there.
func CutList(l cutlist.List, u survey.Units) (lines []string) {
	for _, p := range l.Pieces {
		lines = append(lines, piece(p, u))
	}
	for _, s := range l.Stock {
		lines = append(lines, stock(s, u))
	}
	for _, p := range l.Parts {
		lines = append(lines, fmt.Sprintf("%s: %d%s%s", p.Of, p.Count, hose(p, u), kit(p.Holds, p.Lacks())))
	}
	for _, text := range l.Absent {
		lines = append(lines, "not counted: "+text)
	}
	if len(l.Pieces) > 0 {
		lines = append(lines, "What is allowed for and what the usual kit holds: "+l.Source+". Count yours.")
	}
	return lines
}

// piece says what a piece is cut to, and how it is bent.
func piece(p cutlist.Piece, u survey.Units) string {
	line := fmt.Sprintf("%s %s across, %s to %s: cut %s, along the middle %s: %s", p.Of, survey.Format(p.Across, u), p.From, p.To,
		desk.Length(p.Cut, u), survey.Format(p.Developed, u), Bits(p, u))
	if remark := p.Remark(); remark != "" {
		line += "; " + remark
	}
	return line
}

// Bits says how a piece is bent: straight lengths between the tangents of its bends.
func Bits(p cutlist.Piece, u survey.Units) string {
	bits := make([]string, len(p.Bits))
	for i, b := range p.Bits {
		turn := desk.Quantity(b.Turn, rules.Degree, u)
		switch {
		case b.Turn == 0:
			bits[i] = survey.Format(b.Length, u)
		case b.Radius == 0:
			bits[i] = "sharp " + turn
		default:
			bits[i] = "bend " + turn + " at radius " + survey.Format(b.Radius, u) + " (" + survey.Format(b.Length, u) + ")"
		}
	}
	return strings.Join(bits, ", ")
}

func stock(s cutlist.Stock, u survey.Units) string {
	var say []string
	if s.Needed > 0 {
		left := make([]string, len(s.Left))
		for i, v := range s.Left {
			left[i] = survey.Format(v, u)
		}
		say = append(say, fmt.Sprintf("%d of %s, left over %s%s", s.Needed, desk.Length(s.Length, u), strings.Join(left, ", "), kit(s.Holds, s.LacksLengths())))
	}
	for _, cut := range s.TooLong {
		say = append(say, "a piece of "+desk.Length(cut, u)+" is longer than the usual length: buy it longer, 1 more wanted")
	}
	return string(s.Of) + ", lengths: " + strings.Join(say, "; ")
}

// hose says how much of it a part takes by the piece and in all; "" of what is only counted.
func hose(p cutlist.Part, u survey.Units) string {
	if p.Each == 0 {
		return ""
	}
	return fmt.Sprintf(" of %s of hose, %s in all%s", desk.Length(p.Each, u), desk.Length(p.Total(), u), rules.UnlessHeaterSays)
}

// kit says what the usual kit holds of it.
func kit(holds, lacks int) string {
	if lacks > 0 {
		return fmt.Sprintf("; the usual kit holds %d, %d more wanted", holds, lacks)
	}
	return fmt.Sprintf("; the usual kit holds %d", holds)
}

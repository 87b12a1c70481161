package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFiguresOfATableStandUnderEachOther(t *testing.T) {
	p := paper{width: 100}
	p.grid(grid{[]string{"of", "found", "±", "asked", "margin", "why"}, [][]string{
		{"cut", "-24.6 mm", "± 3 mm", "at least 60 mm", "84.6 mm short", "0.5 is no figure of a column"},
		{"outlet", "90°", "", "at most 120.5°", "9 to spare", ""},
		{"fuel line", "not said", "± 12.5 mm", "no value set", "not said", "12"},
	}, 1, 5})
	assert.Equal(t, []string{
		"of         found     ±          asked            margin         why",
		"cut        -24.6 mm  ±  3 mm    at least  60 mm  84.6 mm short  0.5 is no figure of a column",
		"outlet      90°                 at most  120.5°   9 to spare",
		"fuel line  not said  ± 12.5 mm  no value set          not said  12",
		"",
	}, strings.Split(p.String(), "\n"))
}

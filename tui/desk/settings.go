package desk

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"
	"github.com/adrg/xdg"

	"bench.example/undermark/tui/looks"
	"bench.example/undermark/vehicles"
)

// settingsFile is the settings as they lie on the disk, in words.
type settingsFile struct {
	Units   string `toml:"units"`
	Sides   string `toml:"sides"`
	Look    string `toml:"look"`
	Figures string `toml:"figures"`
	Plan    string `toml:"plan"`
	Paper   string `toml:"paper"`
}

// The words of the settings file, in the order of the values they stand for.
var (
	unitWords   = []string{Millimetres.String(), Inches.String()}
	figureWords = []string{"usual", "big"}
	paperWords  = []string{"A4", "letter"}
	planWords   = []string{InPixels: "pixels", InCells: "cells"}
	sideWords   = []string{LeftRight: "left and right", NearsideLeft: "nearside is left", NearsideRight: "nearside is right"}
)

// FigureWords spell how what is being taped is shown: usual, big.
func FigureWords() []string { return figureWords }

// PaperWords spell the paper of the printer: A4, letter.
func PaperWords() []string { return paperWords }

// Paper spells the paper that is printed on.
func (s Settings) Paper() string {
	if s.Letter {
		return paperWords[1]
	}
	return paperWords[0]
}

// PlanWord spells what plans are drawn in.
func PlanWord(p PlanIn) string { return planWords[p] }

// SideWords spells a way to speak of sides: "nearside is left".
func SideWords(s Side) string { return sideWords[s] }

// Detect says how much colour the terminal shows, from the environment alone: the terminal is never asked.
// NO_COLOR (no-color.org) speaks first, then TERM, then COLORTERM.
func Detect(env func(string) string) Colour {
	term := env("TERM")
	switch {
	case env("NO_COLOR") != "" || term == "dumb" || term == "":
		return NoColour
	case env("COLORTERM") == "truecolor" || env("COLORTERM") == "24bit" || strings.HasSuffix(term, "-direct"):
		return TrueColour
	case strings.Contains(term, "256color"):
		return Colours256
	}
	return Colours16
}

// SettingsPath is where the settings lie.
func SettingsPath() string { return filepath.Join(xdg.ConfigHome, "undermark", "settings.toml") }

// LoadSettings reads the settings at path. What is missing or can't be read keeps its default, and the error
// says what that was, a line each; a missing file is none.
func LoadSettings(path string) (Settings, error) {
	var s Settings
	data, values, err := vehicles.ReadTOML(path)
	if errors.Is(err, fs.ErrNotExist) {
		return s, nil
	}
	if err != nil {
		return s, fmt.Errorf("%w; the usual settings hold", err)
	}
	var faults []vehicles.Fault
	choice := func(key string, words []string) int {
		i, wrong := chosen(values, key, words)
		if wrong != "" {
			faults = append(faults, vehicles.Fault{Key: key, Text: wrong})
		}
		return i
	}
	s.Units, s.Nearside = Units(choice("units", unitWords)), Side(choice("sides", sideWords))
	if _, there := values["look"]; there {
		s.Look = looks.Look(choice("look", looks.Names()))
	} else {
		s.Look = looks.Look(choice("background", looks.Names()[:looks.Light+1])) // what the key was called while there were those two
	}
	s.Big = choice("figures", figureWords) == 1
	s.Plan = PlanIn(choice("plan", planWords))
	s.Letter = choice("paper", paperWords) == 1
	return s, vehicles.FaultsIn(data, path, faults)
}

// chosen is which of the words a key has, the first when it has none, and what is wrong with what it has.
func chosen(values map[string]any, key string, words []string) (i int, wrong string) {
	value, there := values[key]
	word, isText := value.(string)
	switch i = slices.Index(words, word); {
	case !there, word == "" && isText:
		return 0, ""
	case !isText:
		return 0, fmt.Sprintf("%s must be a text in quotes, one of: %s", key, strings.Join(words, ", "))
	case i < 0:
		return 0, fmt.Sprintf("%s is %q; must be one of: %s", key, word, strings.Join(words, ", "))
	}
	return i, ""
}

// Save writes the settings to path, all or nothing, and makes its folder. How much colour the terminal has is
// not written.
func (s Settings) Save(path string) error {
	f := settingsFile{unitWords[s.Units], sideWords[s.Nearside], s.Look.String(), figureWords[0], planWords[s.Plan], s.Paper()}
	if s.Big {
		f.Figures = figureWords[1]
	}
	var b bytes.Buffer
	if err := toml.NewEncoder(&b).Encode(f); err != nil {
		return err
	}
	return WriteFile(path, b.Bytes())
}

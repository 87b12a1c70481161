package desk

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"github.com/BurntSushi/toml"
	"github.com/adrg/xdg"

	"bench.example/undermark/vehicles"
)

// settingsFile is the settings as they lie on the disk, in words.
type settingsFile struct {
	Units      string `toml:"units"`
	Sides      string `toml:"sides"`
	Background string `toml:"background"`
}

// The words of the settings file, in the order of the values they stand for.
var (
	unitWords       = []string{Millimetres: "mm", Inches: "inches"}
	sideWords       = []string{LeftRight: "left and right", NearsideLeft: "nearside is left", NearsideRight: "nearside is right"}
	backgroundWords = []string{"dark", "light"}
)

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
	}
	return Colours16
}

// SettingsPath is where the settings lie.
func SettingsPath() string { return filepath.Join(xdg.ConfigHome, "undermark", "settings.toml") }

// LoadSettings reads the settings at path. What is missing or can't be read keeps its default, and the error
// says what that was; a missing file is none.
func LoadSettings(path string) (Settings, error) {
	var s Settings
	data, err := vehicles.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return s, nil
	}
	if err != nil {
		return s, err
	}
	var f settingsFile
	if _, err := toml.Decode(string(data), &f); err != nil {
		return s, fmt.Errorf("%s: not readable as TOML, the usual settings hold: %w", path, err)
	}
	units, err1 := choice(path, "units", f.Units, unitWords)
	sides, err2 := choice(path, "sides", f.Sides, sideWords)
	light, err3 := choice(path, "background", f.Background, backgroundWords)
	s.Units, s.Nearside, s.Light = Units(units), Side(sides), light == 1
	return s, errors.Join(err1, err2, err3)
}

func choice(path, name, word string, words []string) (int, error) {
	if word == "" {
		return 0, nil
	}
	for i, w := range words {
		if w == word {
			return i, nil
		}
	}
	return 0, fmt.Errorf("%s: %s is %q, must be one of: %s", path, name, word, strings.Join(words, ", "))
}

// Save writes the settings to path, all or nothing, and makes its folder. How much colour the terminal has is
// not written.
func (s Settings) Save(path string) error {
	f := settingsFile{unitWords[s.Units], sideWords[s.Nearside], backgroundWords[0]}
	if s.Light {
		f.Background = backgroundWords[1]
	}
	var b bytes.Buffer
	if err := toml.NewEncoder(&b).Encode(f); err != nil {
		return err
	}
	return WriteFile(path, b.Bytes())
}

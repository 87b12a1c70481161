package screentest

import (
	_ "embed"
	"strings"
)

// What somebody presses who goes through a whole piece of work, each step in the keys of one screen: the tests of the root go there in
// process, those of the program in a terminal.

// Two steps of VanByHand: the floor, Enter behind each size, the deck and what lies on it chosen by their letters; where the tape hooks.
const (
	TheFloor = `2 home enter 40 enter 3200 enter 1780 enter 31 enter 460 esc enter up down down down down down down o up s esc`
	TheHooks = `2 home down enter s 150 enter 890 enter 890 enter enter 60 esc`
)

// VanByHand is a whole van, from an empty job to its exhaust.
var VanByHand = []string{
	`8 enter TL-40 enter long enter first enter 2026-11-25 enter esc`, // the job
	TheFloor,
	TheHooks,
	`2 home down down down enter 3 enter 1 enter 1 enter 2 enter esc`,                                                // how well it is read
	`1 n c 652 enter +84 enter -850 enter 850 enter 0 enter 95 esc`,                                                  // crossmember
	`1 n b 300 enter r410 enter 1500 enter r410 enter 2400 enter r300 enter enter 8 enter 20 enter 30 esc`,           // pipe
	`1 n s 420 enter 0 enter 690 enter 100 enter 300 esc`,                                                            // wheel
	`1 o d 1900 enter -890 enter 3000 enter -890 enter enter enter -1500 enter -22 esc`,                              // door
	`2 n battery enter enter r 1900 enter 2300 enter 300 enter 840 enter 0 enter 400 esc`,                            // battery
	`3 n bolt enter 1502 enter l300 enter 1500 enter l295 enter eye enter 2802 enter r310 enter 2800 enter r305 esc`, // ties
	`2 home down down down down enter 2 90 esc`,                                                                      // heater
	`4 enter t 1219 enter l640 enter`,                                                                                // cut
	`5 a t 1219 enter l650 enter 150 enter a t 1219 enter l90 enter 160 enter a t 1290 enter 930 enter 170 enter`,    // exhaust
	`1 a f w tab w tab r v esc`, // looked
}

// Hand is the file of VanByHand as a fitter would have written it with a text editor, from the description of the job file.
//
//go:embed hand.toml
var Hand []byte

// VanFromNothing is a van whose file is not there yet: the floor, ten obstructions with their readings, the heater, three matching points, the cut,
// exhaust and intake.
var VanFromNothing = []string{
	`enter enter`, // the cautions, and a new job
	`2 enter 40 enter 3200 enter 1780 enter 31 enter 460 esc`,
	`1 n c 652 enter +84 enter -850 enter 850 enter 0 enter 95 enter`,
	`c 1452 enter +84 enter -850 enter 850 enter 0 enter 95 enter`,
	`r 40 enter 3000 enter L300 enter +80 enter 0 enter 120 enter`,
	`r 40 enter 3000 enter R300 enter +80 enter 0 enter 120 enter`,
	`b 300 enter R410 enter 1500 enter R410 enter enter 8 enter 20 enter 30 enter`,
	`f 500 enter L410 enter 2500 enter L410 enter enter 10 enter 20 enter 30 enter`,
	`s 420 enter 0 enter 690 enter 100 enter 300 enter`,
	`k 1900 enter +700 enter 100 enter 500 enter 20 enter 250 enter`,
	`e 200 enter L600 enter 1500 enter L600 enter enter 60 enter 80 enter 140 enter`,
	`w 800 enter R200 enter 2600 enter R200 enter enter 20 enter 10 enter 30 esc`,
	`2 home down down down down enter 2 esc`,
	`3 n enter 1502 enter L300 enter 1500 enter L295 enter enter 2802 enter R310 enter 2800 enter R305 enter enter 2802 enter L310 enter 2800 enter L305 esc`,
	`4 enter t 1219 enter L640 enter`,
	`5 a t 1219 enter L650 enter 150 enter a t 1219 enter L90 enter 160 enter a t 1290 enter 930 enter 170 enter`,
	`tab a a t 1019 enter 300 enter 150 enter`,
}

// VanInOrder is such a van in the order of README's steps: the tape is level, each kind that is not entered was looked for, the cut goes to the best
// place, and exhaust and intake are found.
var VanInOrder = []string{
	VanFromNothing[0],
	`2 enter 40 enter 3200 enter 1780 enter 31 enter 460 esc`,
	`down enter l esc`,
	VanFromNothing[2], VanFromNothing[3], VanFromNothing[4], VanFromNothing[5], VanFromNothing[6],
	VanFromNothing[7], VanFromNothing[8], VanFromNothing[9], VanFromNothing[10], VanFromNothing[11],
	`a` + strings.Repeat(` enter`, 28), // of the first there is one
	`esc 2 home down down down down enter 2 esc`,
	VanFromNothing[13],
	`4 n`,
	`5 j tab j`,
}

// From the sample's foul cut to its pilot hole: layouts are proposed, one is taken, whoever has not looked for a kind says so, and how the van
// stands; the cautions are read, the first mark is made, and the fields of the pilot hole are opened.
var SampleToThePilot = []string{`4 c`, `enter`, `6 l`, `m`, `enter`, `d`}

// SwappedPoints types three matching points whose left and right were swapped below, and PutRight has them swapped back.
const (
	SwappedPoints = `3 n bolt enter 2954 enter R328 enter 2952 enter L325 enter eye enter 439 enter L410 enter 434 enter R413 enter ` +
		`drain enter 1530 enter R520 enter 1528 enter L518 enter`
	PutRight = `esc s`
)

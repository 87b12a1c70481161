//go:build race

package main

// raced says whether the tests, and so the program, have the race detector.
const raced = true

//go:build !linux || !amd64

package main

// tamperEnv and tamper are for systems whose registers tamper_test.go knows.
const tamperEnv = "UNDERMARK_TESTS_TAMPER"

func tamper([]string) int { return 1 }

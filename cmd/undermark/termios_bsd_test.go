//go:build darwin || freebsd || netbsd || openbsd

package main

import "golang.org/x/sys/unix"

const getTermios, setTermios = unix.TIOCGETA, unix.TIOCSETA

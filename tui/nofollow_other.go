//go:build !windows

package tui

import "syscall"

// noFollow has opening a file fail when its name is a link.
const noFollow = syscall.O_NOFOLLOW

package tui

// noFollow has opening a file fail when its name is a link; there is no such flag here, where making a link takes an
// administrator's rights.
const noFollow = 0

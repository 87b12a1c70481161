package vehicles

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"
)

// Base is what a file held when a job was read from it or written to it. The zero Base is that there was no file.
type Base struct {
	there bool
	sum   [sha256.Size]byte
}

// baseOf is the base of a file that holds data; nil is no file.
func baseOf(data []byte) Base {
	if data == nil {
		return Base{}
	}
	return Base{true, sha256.Sum256(data)}
}

// UnknownBase is a base that no file is known to have had: what rests on it asks before it is written over any file.
var UnknownBase = Base{there: true}

const (
	baseNone = "no file"
	baseSum  = "sha256 "
)

// String is "no file" or "sha256 " and the sum, as ParseBase reads it.
func (b Base) String() string {
	if !b.there {
		return baseNone
	}
	return baseSum + hex.EncodeToString(b.sum[:])
}

// ParseBase reads what String writes; anything else is UnknownBase.
func ParseBase(text string) Base {
	if text == baseNone {
		return Base{}
	}
	b := Base{there: true}
	digits, isSum := strings.CutPrefix(text, baseSum)
	sum, err := hex.DecodeString(digits)
	if !isSum || err != nil || len(sum) != len(b.sum) {
		return UnknownBase
	}
	copy(b.sum[:], sum)
	return b
}

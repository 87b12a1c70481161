package vector

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
)

// seal begins the last line of a PDF that this program wrote: a comment, which readers pass over, with the sum of all before it.
const seal = "%undermark "

// sealed returns a file with its seal behind it.
func sealed(file []byte) []byte {
	sum := sha256.Sum256(file)
	return append(append(file, seal...), hex.EncodeToString(sum[:])+"\n"...)
}

// Sealed tells whether a file is a PDF as this program wrote it: nobody has changed it since.
func Sealed(file []byte) bool {
	at := bytes.LastIndex(file, []byte(seal))
	return at >= 0 && bytes.Equal(sealed(bytes.Clone(file[:at])), file)
}

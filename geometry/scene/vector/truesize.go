package vector

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
)

// What of a file is read to add to it: its last table, its trailer, and the object that all hangs from.
var (
	lastTable = regexp.MustCompile(`(?s)trailer\s*<<(.*?)>>\s*startxref\s+(\d+)\s+%%EOF\s*$`)
	inTrailer = regexp.MustCompile(`/Size (\d+)\s+/Root (\d+) 0 R\s+/Info (\d+) 0 R`)
)

// errForeign is returned for a file that the library wrote in another way than it does.
var errForeign = errors.New("the PDF library writes its files in another way now: they can't be asked to be printed at their true size")

// asTrueSize returns a file that asks whoever prints it to do so at its true size, unscaled (ISO 32000-1, 12.2, PrintScaling). The library
// has no words for that, so that it is added as a change behind all (7.5.6): the catalogue again, with that in it.
func asTrueSize(file []byte) ([]byte, error) {
	table := lastTable.FindSubmatch(file)
	if table == nil {
		return nil, errForeign
	}
	ids := inTrailer.FindSubmatch(table[1])
	if ids == nil {
		return nil, errForeign
	}
	begins := fmt.Appendf(nil, "\n%s 0 obj\n", ids[2])
	from := bytes.Index(file, begins) + 1
	if from == 0 {
		return nil, errForeign
	}
	catalogue, _, whole := bytes.Cut(file[from:], []byte("endobj"))
	end := bytes.LastIndex(catalogue, []byte(">>"))
	if !whole || end < 0 || !bytes.Contains(catalogue, []byte("/Type /Catalog")) {
		return nil, errForeign
	}
	out := bytes.NewBuffer(bytes.Clone(file))
	at := out.Len()
	fmt.Fprintf(out, "%s/ViewerPreferences << /PrintScaling /None >>\n>>\nendobj\n", catalogue[:end])
	xref := out.Len()
	fmt.Fprintf(out, "xref\n%s 1\n%010d 00000 n \ntrailer\n<<\n/Size %s\n/Root %s 0 R\n/Info %s 0 R\n/Prev %s\n>>\nstartxref\n%d\n%%%%EOF\n",
		ids[2], at, ids[1], ids[2], ids[3], table[2], xref)
	return out.Bytes(), nil
}

package main

import (
	"bytes"
	"fmt"
	"strings"

	cdx "github.com/CycloneDX/cyclonedx-go"
)

// licenceText is every licence in full, a module after the other.
func licenceText(modules []module) []byte {
	var out bytes.Buffer
	out.WriteString("Undermark holds code of these projects. Each is used under its own licence, which follows.\n")
	for _, m := range modules {
		for _, l := range m.licences {
			title := fmt.Sprintf("%s %s: %s", called(m.path), m.version, l.name)
			fmt.Fprintf(&out, "\n%s\n%s\n\n%s\n", title, strings.Repeat("=", len(title)), bytes.TrimSpace(l.text))
		}
	}
	return out.Bytes()
}

// called is a module's name for people.
func called(path string) string {
	if path == standard {
		return "Go's standard library"
	}
	return path
}

// build is what a bill is of: sum is the program's SHA-256 in hexadecimal.
type build struct{ goVersion, version, when, sum string }

// billOf is the bill of materials, CycloneDX 1.6, the same bytes for the same build. Where no licence text could be told
// for certain the bill names none: the text itself is beside it.
func billOf(of build, modules []module) ([]byte, error) {
	bill := cdx.NewBOM()
	bill.Metadata = &cdx.Metadata{
		Timestamp: of.when,
		Component: &cdx.Component{
			BOMRef: "undermark", Type: cdx.ComponentTypeApplication, Name: "undermark", Version: of.version,
			Hashes:     &[]cdx.Hash{{Algorithm: cdx.HashAlgoSHA256, Value: of.sum}},
			Properties: &[]cdx.Property{{Name: "built with", Value: of.goVersion}},
		},
	}
	var parts []cdx.Component
	var refs []string
	for _, m := range modules {
		url := "pkg:golang/" + m.path + "@" + m.version
		parts = append(parts, cdx.Component{BOMRef: url, Type: cdx.ComponentTypeLibrary, Name: m.path, Version: m.version, PackageURL: url, Licenses: licensesOf(m), Properties: sumsOf(m)})
		refs = append(refs, url)
	}
	bill.Components = &parts
	bill.Dependencies = &[]cdx.Dependency{{Ref: "undermark", Dependencies: &refs}}
	var out bytes.Buffer
	encoder := cdx.NewBOMEncoder(&out, cdx.BOMFileFormatJSON)
	encoder.SetPretty(true)
	err := encoder.EncodeVersion(bill, cdx.SpecVersion1_6)
	return out.Bytes(), err
}

// sumsOf is a module's checksum by the name of the file that holds it: it is a sum over the sums of the module's files, so the hash
// of no file, which CycloneDX's own field would be taken for.
func sumsOf(m module) *[]cdx.Property {
	if m.sum == "" {
		return nil
	}
	return &[]cdx.Property{{Name: "go.sum", Value: m.sum}}
}

func licensesOf(m module) *cdx.Licenses {
	var all cdx.Licenses
	for _, id := range m.ids() {
		all = append(all, cdx.LicenseChoice{License: &cdx.License{ID: id}})
	}
	if len(all) == 0 {
		return nil
	}
	return &all
}

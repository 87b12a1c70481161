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

// billOf is the bill of materials, CycloneDX 1.6, the same bytes for the same build. Where no licence text could be told
// for certain the bill names none: the text itself is beside it.
func billOf(goVersion, version, when string, modules []module) ([]byte, error) {
	bill := cdx.NewBOM()
	bill.Metadata = &cdx.Metadata{
		Timestamp: when,
		Component: &cdx.Component{
			BOMRef: "undermark", Type: cdx.ComponentTypeApplication, Name: "undermark", Version: version,
			Properties: &[]cdx.Property{{Name: "built with", Value: goVersion}},
		},
	}
	var parts []cdx.Component
	var refs []string
	for _, m := range modules {
		url := "pkg:golang/" + m.path + "@" + m.version
		parts = append(parts, cdx.Component{BOMRef: url, Type: cdx.ComponentTypeLibrary, Name: m.path, Version: m.version, PackageURL: url, Licenses: licensesOf(m)})
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

package main

import "strings"

// phrase is what only one licence says, in the words of its text as the SPDX list has it.
type phrase struct{ id, says, not string }

// phrases tell the licences apart that our modules come under. A text that says none of them is one that a person must read
// before it is given on; the first release of it then gets a line here.
var phrases = []phrase{
	{id: "MIT", says: "permission is hereby granted, free of charge, to any person obtaining a copy"},
	{id: "BSD-3-Clause", says: "to endorse or promote products derived from this software without specific prior written permission"},
	{id: "BSD-2-Clause", says: "redistribution and use in source and binary forms", not: "to endorse or promote products"},
	{id: "Apache-2.0", says: "apache license version 2.0"},
	{id: "ISC", says: "permission to use, copy, modify, and/or distribute this software for any purpose"},
	{id: "MPL-2.0", says: "mozilla public license version 2.0"},
}

// idsIn returns the licences that a text holds, by their SPDX names.
func idsIn(text []byte) (ids []string) {
	words := strings.Join(strings.Fields(strings.ToLower(string(text))), " ")
	words = strings.ReplaceAll(words, "license, version", "license version")
	for _, p := range phrases {
		if strings.Contains(words, p.says) && (p.not == "" || !strings.Contains(words, p.not)) {
			ids = append(ids, p.id)
		}
	}
	return ids
}

// elsewhere are modules without a licence file of their own, that name their licence in another: read by a person.
var elsewhere = map[string]licence{
	"github.com/mattn/go-localereader": {name: "README.md", ids: []string{"MIT"}},
}

package main

import (
	"testing"
)

func TestLicencesAreKnownByTheirWords(t *testing.T) {
	for text, want := range map[string]string{
		"Permission is hereby granted,\n free of charge, to any person obtaining a copy of this software":                                                                                            "MIT",
		"Redistribution and use in source and binary forms, with or without modification":                                                                                                            "BSD-2-Clause",
		"Redistribution and use in source and binary forms. Neither the name of X may be used to endorse or promote products derived from\nthis software without specific prior written permission.": "BSD-3-Clause",
		"Apache License\n Version 2.0, January 2004":           "Apache-2.0",
		"Mozilla Public License, version 2.0":                  "MPL-2.0",
		"All rights reserved. You may look at it, but no more": "",
	} {
		ids := idsIn([]byte(text))
		if (want == "" && len(ids) != 0) || (want != "" && (len(ids) != 1 || ids[0] != want)) {
			t.Errorf("%q: %v, want %q", text, ids, want)
		}
	}
}

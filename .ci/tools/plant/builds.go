package main

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/types"

	"golang.org/x/tools/go/packages"
)

// checker tells which faults of a package build: a fault that does not says nothing of its tests.
type checker struct {
	pkg *packages.Package
}

func newChecker(root, dir string) (*checker, error) {
	list, err := packages.Load(&packages.Config{Mode: packages.LoadSyntax, Dir: root}, "./"+dir)
	if err != nil {
		return nil, err
	}
	if len(list) != 1 || len(list[0].Errors) > 0 {
		return nil, errors.New(dir + " does not build as it is")
	}
	return &checker{list[0]}, nil
}

// Import is a package that this one imports.
func (c *checker) Import(path string) (*types.Package, error) {
	if p := c.pkg.Imports[path]; p != nil {
		return p.Types, nil
	}
	return nil, errors.New(path + " is not imported")
}

// builds tells whether the package does with a fault planted. What is embedded is a matter for the tests.
func (c *checker) builds(f fault) bool {
	if f.table {
		return true
	}
	files := make([]*ast.File, 0, len(c.pkg.Syntax))
	for i, path := range c.pkg.CompiledGoFiles {
		file := c.pkg.Syntax[i]
		if path == f.file {
			var err error
			if file, err = parser.ParseFile(c.pkg.Fset, path, f.planted(), parser.SkipObjectResolution); err != nil {
				return false
			}
		}
		files = append(files, file)
	}
	well := true
	conf := types.Config{Importer: c, Sizes: c.pkg.TypesSizes, Error: func(error) { well = false }}
	_, err := conf.Check(c.pkg.PkgPath, c.pkg.Fset, files, nil)
	return well && err == nil
}

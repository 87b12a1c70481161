package main

import (
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// fault is a stretch of a file with something else in its place.
type fault struct {
	file, name string // the file, and what it is called in the list
	source     []byte
	position   token.Position
	end        int
	function   string
	context    string // the line it stands on
	with       string
	table      bool // in a table that is embedded, not in code
}

func (f fault) planted() []byte {
	return append(append(append([]byte{}, f.source[:f.position.Offset]...), f.with...), f.source[f.end:]...)
}

func (f fault) where() string {
	return fmt.Sprintf("%s:%04d:%03d", f.name, f.position.Line, f.position.Column)
}

// key names the fault wherever its line stands in the function.
func (f fault) key() string {
	was := strings.Join(strings.Fields(string(f.source[f.position.Offset:f.end])), " ")
	with := f.with
	if with == "" {
		with = "nothing"
	}
	return fmt.Sprintf("%s %s: %s => %s in: %s", f.name, f.function, was, with, f.context)
}

// faultsOf returns the faults that can be planted in a package's files, and in the tables it embeds.
func faultsOf(dir, name string) (all []fault, err error) {
	paths, err := filepath.Glob(filepath.Join(dir, "*.go"))
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		source, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, source, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		h := hand{set: set, source: source, file: path, name: name + "/" + filepath.Base(path), lines: strings.Split(string(source), "\n")}
		for _, d := range file.Decls {
			h.function = "-"
			if f, ok := d.(*ast.FuncDecl); ok {
				h.function = f.Name.Name
			}
			ast.Inspect(d, h.visit)
		}
		all = append(all, h.faults...)
	}
	tables, wrong := tableFaults(dir, name)
	return append(all, tables...), errors.Join(err, wrong)
}

// hand plants faults in one file.
type hand struct {
	set                  *token.FileSet
	source               []byte
	file, name, function string
	lines                []string
	faults               []fault
}

func (h *hand) put(from, to token.Pos, with string) {
	at := h.set.Position(from)
	h.faults = append(h.faults, fault{
		file: h.file, name: h.name, source: h.source, position: at, end: h.set.Position(to).Offset,
		function: h.function, context: strings.TrimSpace(h.lines[at.Line-1]), with: with,
	})
}

// swapped are the operators that stand in for others.
var swapped = map[token.Token]token.Token{
	token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR, token.EQL: token.NEQ, token.NEQ: token.EQL,
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL,
	token.LAND: token.LOR, token.LOR: token.LAND, token.ADD_ASSIGN: token.SUB_ASSIGN, token.SUB_ASSIGN: token.ADD_ASSIGN,
}

func (h *hand) visit(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.ImportSpec:
		return false
	case *ast.GenDecl:
		h.named(n)
	case *ast.ArrayType: // room more or less is no fault
		ast.Inspect(n.Elt, h.visit)
		return false
	case *ast.BinaryExpr:
		h.operator(n.OpPos, n.Op)
	case *ast.AssignStmt:
		h.operator(n.TokPos, n.Tok)
		if n.Tok != token.DEFINE {
			h.put(n.Pos(), n.End(), "")
		}
	case *ast.IncDecStmt, *ast.ExprStmt, *ast.BranchStmt:
		h.put(n.Pos(), n.End(), "")
	case *ast.IfStmt:
		h.put(n.Cond.Pos(), n.Cond.End(), "!("+string(h.source[h.set.Position(n.Cond.Pos()).Offset:h.set.Position(n.Cond.End()).Offset])+")")
	case *ast.UnaryExpr:
		if n.Op == token.SUB {
			h.put(n.OpPos, n.OpPos+1, "")
		}
	case *ast.CallExpr:
		if f, ok := n.Fun.(*ast.Ident); ok && (f.Name == "min" || f.Name == "max") {
			h.put(f.Pos(), f.End(), map[string]string{"min": "max", "max": "min"}[f.Name])
		}
	case *ast.BasicLit:
		h.number(n)
	}
	return true
}

// named makes each named constant ten times as large, and a tenth, whatever it is worked out from: a limit that nothing holds on one of
// its sides is one that anybody may move. What has a type of its own is a kind.
func (h *hand) named(d *ast.GenDecl) {
	for _, s := range d.Specs {
		v, ok := s.(*ast.ValueSpec)
		if !ok || d.Tok != token.CONST || v.Type != nil {
			continue
		}
		for _, value := range v.Values {
			text := string(h.source[h.set.Position(value.Pos()).Offset:h.set.Position(value.End()).Offset])
			if text == "-1" || strings.Contains(text, "iota") || strings.ContainsAny(text, "\"`") { // what stands for none, a kind, a text
				continue
			}
			h.put(value.Pos(), value.End(), "("+text+") * 10")
			h.put(value.Pos(), value.End(), "("+text+") / 10")
		}
	}
}

func (h *hand) operator(at token.Pos, op token.Token) {
	if other, ok := swapped[op]; ok {
		h.put(at, at+token.Pos(len(op.String())), other.String())
	}
}

func (h *hand) number(n *ast.BasicLit) {
	if n.Kind == token.INT || n.Kind == token.FLOAT {
		for _, with := range others(n.Value) {
			h.put(n.Pos(), n.End(), with)
		}
	}
}

// others are what stands in for a constant: one ten thousand times larger, a fifth larger and a fifth smaller; of a small whole one,
// one more.
func others(text string) (with []string) {
	v, err := strconv.ParseFloat(text, 64)
	_, notWhole := strconv.Atoi(text)
	switch whole := notWhole == nil; {
	case err != nil:
	case whole && v < 5:
		with = []string{strconv.Itoa(int(v) + 1)}
	case whole:
		for _, w := range []float64{v * 1e4, math.Ceil(v * 1.2), math.Floor(v * 0.8)} {
			with = append(with, strconv.Itoa(int(w)))
		}
	default:
		for _, w := range []float64{v * 1e4, v * 1.2, v * 0.8} {
			with = append(with, strconv.FormatFloat(w, 'g', -1, 64))
		}
	}
	return with
}

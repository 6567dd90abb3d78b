//go:build !js

package main

import (
	"go/ast"
	"go/token"
	"path"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring/history"
)

// kindNames are the constants that name a kind of round, as package.Name: those that are
// told from its id, and those that are told from these. A screen of a kind is named after
// it, so that its constant is among them.
func kindNames(files []goFile) []string {
	var names []string
	for _, k := range history.Kinds {
		for _, f := range files {
			if f.pkg == "scoring/history" {
				names = append(names, constants(f, func(e ast.Expr) bool { return literal(e) == k.ID })...)
			}
		}
	}
	for range 3 { // a name of a name of a name
		for _, f := range files {
			names = append(names, constants(f, func(e ast.Expr) bool { return slices.Contains(names, constantIn(f, e)) })...)
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// constants are those of a file whose value is such.
func constants(f goFile, such func(ast.Expr) bool) (names []string) {
	ast.Inspect(f.syntax, func(n ast.Node) bool {
		spec, is := n.(*ast.ValueSpec)
		if !is {
			return true
		}
		for i, v := range spec.Values {
			if such(v) {
				names = append(names, path.Base(f.pkg)+"."+spec.Names[i].Name)
			}
		}
		return true
	})
	return names
}

// literal is the text of a literal; "" of what is none.
func literal(e ast.Expr) string {
	if l, is := e.(*ast.BasicLit); is && l.Kind == token.STRING {
		text, _ := strconv.Unquote(l.Value)
		return text
	}
	return ""
}

// constantIn is what a name stands for, as package.Name.
func constantIn(f goFile, e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return path.Base(f.pkg) + "." + e.Name
	case *ast.SelectorExpr:
		if of, is := e.X.(*ast.Ident); is {
			return of.Name + "." + e.Sel.Name
		}
	}
	return ""
}

// compared are the pairs of expressions that a file compares, and what it looks for in
// lists that are written out.
func compared(f goFile, each func(a, b ast.Expr)) {
	ast.Inspect(f.syntax, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BinaryExpr:
			if n.Op == token.EQL || n.Op == token.NEQ {
				each(n.X, n.Y)
			}
		case *ast.SwitchStmt:
			for _, c := range n.Body.List {
				for _, e := range c.(*ast.CaseClause).List {
					each(n.Tag, e)
				}
			}
		case *ast.CallExpr:
			if constantIn(f, n.Fun) != "slices.Contains" {
				return true
			}
			if list, is := n.Args[0].(*ast.CompositeLit); is {
				for _, e := range list.Elts {
					each(n.Args[1], e)
				}
			}
		}
		return true
	})
}

// Whoever asks whether a round is of this kind or that has to be changed for each kind
// that comes to be, and is forgotten: so a flawless round counted as a miss once. What is
// otherwise for some kinds is said by their rows, which are looked up by the kind's id.
func TestNobodyComparesKinds(t *testing.T) {
	files := goFiles(t)
	names := kindNames(files)
	require.Subset(t, names, []string{"history.Carry", "round.Carries", "quiz.Same", "view.AskSame", "view.ScreenCarry"})
	var ids []string
	for _, k := range history.Kinds {
		ids = append(ids, k.ID)
	}
	compares := 0
	for _, f := range files {
		if f.test || slices.Contains(forTests, f.pkg) {
			continue
		}
		compared(f, func(a, b ast.Expr) {
			compares++
			for _, pair := range [][2]ast.Expr{{a, b}, {b, a}} {
				require.NotContains(t, names, constantIn(f, pair[0]), "%s compares kinds of rounds", f.name)
				if of := pair[1]; of != nil && slices.Contains(ids, literal(pair[0])) {
					require.NotContains(t, []string{"kind", "Kind", "ask", "Ask", "screen", "Screen"}, lastName(of), "%s compares kinds of rounds", f.name)
				}
			}
		})
	}
	require.Greater(t, compares, 1000, "there is something to look at")
}

// lastName is the last name of an expression: Kind of r.Kind.
func lastName(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	}
	return ""
}

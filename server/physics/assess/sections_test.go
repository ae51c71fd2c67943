package assess

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"maps"
	"path/filepath"
	"strings"
	"testing"
)

// source is this package as it is written: what every function touches of a pass, and which functions it names.
type source struct {
	info    *types.Info
	touched map[string]map[string]bool // by function or variable of the package
	written map[string]map[string]bool
	named   map[string]map[string]bool
	changes map[string]bool // methods that write to what they are called on
	bodies  []body
}

// body is the body of one function, or the value of one variable.
type body struct {
	name string
	body ast.Node
}

// apart are the parts of a pass that no section hands on to another: what it is told, and what it tells.
var apart = map[string]bool{
	"in": true, "whole": true, "moved": true, "by": true, "together": true, "at": true, "resumes": true, "quiet": true, "inputs": true, "known": true,
	"trail": true, "results": true, "values": true, "lines": true, "replaced": true, "aside": true, "scale": true, "fault": true, "watch": true,
	"curves": true, "ballast": true, "drawing": true, "drawing.kept": true, "drawn": true, "work": true, "idle": true, "cut": true,
}

// nothingElse imports nothing: only this package's own types count.
type nothingElse struct{}

func (nothingElse) Import(string) (*types.Package, error) { return nil, errors.New("not needed") }

func readSource(t *testing.T) source {
	t.Helper()
	files := token.NewFileSet()
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var list []*ast.File
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(files, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, file)
	}
	info := &types.Info{
		Selections: map[*ast.SelectorExpr]*types.Selection{}, Uses: map[*ast.Ident]types.Object{}, Defs: map[*ast.Ident]types.Object{},
	}
	checker := types.Config{Importer: nothingElse{}, Error: func(error) {}}
	_, _ = checker.Check("pitgate/server/physics/assess", files, list, info)
	s := source{info: info, touched: map[string]map[string]bool{}, written: map[string]map[string]bool{}, named: map[string]map[string]bool{}, changes: map[string]bool{}}
	each := func(do func(name string, receiver types.Object, body ast.Node)) {
		for _, file := range list {
			for _, declared := range file.Decls {
				s.declared(declared, do)
			}
		}
	}
	each(s.findChanging)
	each(s.read)
	each(func(name string, _ types.Object, node ast.Node) { s.bodies = append(s.bodies, body{name, node}) })
	return s
}

// declared calls do for a function with a body and for each variable of the package with its value.
func (s source) declared(declared ast.Decl, do func(name string, receiver types.Object, body ast.Node)) {
	switch d := declared.(type) {
	case *ast.FuncDecl:
		var receiver types.Object
		if d.Recv != nil && len(d.Recv.List[0].Names) > 0 {
			receiver = s.info.Defs[d.Recv.List[0].Names[0]]
		}
		if d.Body != nil {
			do(functionName(d), receiver, d.Body)
		}
	case *ast.GenDecl:
		for _, spec := range d.Specs {
			if v, ok := spec.(*ast.ValueSpec); ok && d.Tok == token.VAR {
				do(v.Names[0].Name, nil, v)
			}
		}
	}
}

// findChanging notes a method that writes to what it is called on.
func (s source) findChanging(name string, receiver types.Object, body ast.Node) {
	if receiver == nil {
		return
	}
	eachWritten(body, func(e ast.Expr) {
		for {
			switch x := e.(type) {
			case *ast.SelectorExpr:
				e = x.X
				continue
			case *ast.IndexExpr:
				e = x.X
				continue
			case *ast.StarExpr:
				e = x.X
				continue
			case *ast.Ident:
				if s.info.Uses[x] == receiver {
					s.changes[name] = true
				}
			}
			return
		}
	})
}

// eachWritten calls do for every expression that is assigned to or whose address is taken.
func eachWritten(body ast.Node, do func(ast.Expr)) {
	aliased := map[ast.Expr]bool{}
	eachAlias(body, func(_ *ast.Ident, at ast.Expr) { aliased[at] = true })
	ast.Inspect(body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.AssignStmt:
			for _, left := range n.Lhs {
				do(left)
			}
		case *ast.IncDecStmt:
			do(n.X)
		case *ast.RangeStmt:
			if n.Tok == token.ASSIGN {
				do(n.Key)
				do(n.Value)
			}
		case *ast.UnaryExpr:
			if n.Op == token.AND && !aliased[n.X] {
				do(n.X)
			}
		}
		return true
	})
}

// read takes down one function.
func (s source) read(name string, _ types.Object, body ast.Node) {
	s.touched[name], s.written[name], s.named[name] = map[string]bool{}, map[string]bool{}, map[string]bool{}
	aliases := s.aliases(body)
	write := func(e ast.Expr) { s.write(name, e, aliases) }
	eachWritten(body, write)
	s.handedOn(body, aliases, write)
	ast.Inspect(body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.SelectorExpr:
			if part := partOf(n, s.info); part != "" {
				s.touched[name][part] = true
			}
			if used, ok := s.info.Uses[n.Sel].(*types.Func); ok && s.changes[plainName(used)] {
				write(n.X)
			}
		case *ast.Ident:
			switch used := s.info.Uses[n].(type) {
			case *types.Func:
				s.named[name][plainName(used)] = true
			case *types.Var:
				if used.Parent() != nil && used.Pkg() != nil && used.Parent() == used.Pkg().Scope() {
					s.named[name][used.Name()] = true
				}
			}
		}
		return true
	})
}

// aliases are the local variables that hold the address of a part, and what they point at.
func (s source) aliases(body ast.Node) map[types.Object]ast.Expr {
	found := map[types.Object]ast.Expr{}
	eachAlias(body, func(to *ast.Ident, at ast.Expr) { found[s.info.Defs[to]] = at })
	return found
}

// eachAlias calls do for every new variable that is given an address.
func eachAlias(body ast.Node, do func(to *ast.Ident, at ast.Expr)) {
	ast.Inspect(body, func(n ast.Node) bool {
		a, ok := n.(*ast.AssignStmt)
		if !ok || a.Tok != token.DEFINE || len(a.Lhs) != len(a.Rhs) {
			return true
		}
		for i := range a.Lhs {
			if address, ok := a.Rhs[i].(*ast.UnaryExpr); ok && address.Op == token.AND {
				do(a.Lhs[i].(*ast.Ident), address.X)
			}
		}
		return true
	})
}

// handedOn calls write for every alias that is used otherwise than to look into it.
func (s source) handedOn(body ast.Node, aliases map[types.Object]ast.Expr, write func(ast.Expr)) {
	looking := map[*ast.Ident]bool{}
	ast.Inspect(body, func(n ast.Node) bool {
		if look, ok := n.(*ast.SelectorExpr); ok {
			if id, ok := look.X.(*ast.Ident); ok {
				looking[id] = true
			}
		}
		if id, ok := n.(*ast.Ident); ok && !looking[id] && aliases[s.info.Uses[id]] != nil {
			write(id)
		}
		return true
	})
}

// write notes the part of a pass in which an expression lies.
func (s source) write(name string, e ast.Expr, aliases map[types.Object]ast.Expr) {
	for {
		switch x := e.(type) {
		case *ast.SelectorExpr:
			if part := partOf(x, s.info); part != "" {
				s.written[name][part] = true
			}
			e = x.X
		case *ast.IndexExpr:
			e = x.X
		case *ast.SliceExpr:
			e = x.X
		case *ast.StarExpr:
			e = x.X
		case *ast.ParenExpr:
			e = x.X
		case *ast.Ident:
			at, known := aliases[s.info.Uses[x]]
			if !known {
				return
			}
			e = at
		default:
			return
		}
	}
}

func functionName(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return f.Name.Name
	}
	of := f.Recv.List[0].Type
	if star, ok := of.(*ast.StarExpr); ok {
		of = star.X
	}
	if generic, ok := of.(*ast.IndexListExpr); ok {
		of = generic.X
	}
	return of.(*ast.Ident).Name + "." + f.Name.Name
}

func plainName(f *types.Func) string {
	if receiver := f.Type().(*types.Signature).Recv(); receiver != nil {
		return typeName(receiver.Type()) + "." + f.Name()
	}
	return f.Name()
}

func typeName(t types.Type) string {
	if pointer, ok := t.(*types.Pointer); ok {
		t = pointer.Elem()
	}
	if named, ok := t.(*types.Named); ok {
		return named.Obj().Name()
	}
	return ""
}

// partOf names the part of a pass that a selector touches, empty for other selectors.
func partOf(n *ast.SelectorExpr, info *types.Info) string {
	selection, ok := info.Selections[n]
	if !ok || selection.Kind() != types.FieldVal {
		return ""
	}
	switch typeName(selection.Recv()) {
	case "pass":
		return n.Sel.Name
	case "drawing":
		return "drawing." + n.Sel.Name
	case "ordinates":
		return "drawn." + n.Sel.Name
	}
	return ""
}

// reached returns what a function touches by itself and by all that it names.
func (s source) reached(name string, parts map[string]map[string]bool) map[string]bool {
	all, seen := map[string]bool{}, map[string]bool{}
	var visit func(string)
	visit = func(name string) {
		if seen[name] {
			return
		}
		seen[name] = true
		for part := range parts[name] {
			all[part] = true
		}
		for next := range s.named[name] {
			visit(next)
		}
	}
	visit(name)
	maps.DeleteFunc(all, func(part string, _ bool) bool { return apart[part] })
	return all
}

// fieldParts are the parts of a pass by the fields that hold them.
var fieldParts = map[string]parts{
	"air": partAir, "mass": partMass, "wing": partWing, "drag": partDrag, "rolling": partRolling, "engine": partEngine, "stall": partStall,
	"launch": partLaunch, "pitch": partPitch, "inertia": partInertia, "yaw": partYaw, "landing": partLanding, "glide": partGlide, "day": partDay,
	"loads": partLoads, "feed": partFeed, "falls": partFalls, "top": partTop, "topMissing": partTop,
	"drawn.heights": partHeights, "drawn.descent": partDescent, "drawn.drags": partDrags,
	"drawing.distances": partMarks, "drawing.landed": partMarks, "drawing.lifts": partLifts, "drawing.twist": partTwist,
	"drawing.twisting": partStiffness, "drawing.carrying": partStiffness, "drawing.linkages": partStiffness, "drawing.fittings": partStiffness,
	"drawing.place": partPlace, "drawing.run": partPlace, "drawing.landing": partGround, "drawing.under": partGround, "drawing.lull": partGround, "drawing.goAround": partGround,
	"drawing.coldPack": partCold, "drawing.coldLimit": partCold,
	"drawing.feed": partHot, "drawing.parts": partHot, "drawing.partNames": partHot, "drawing.found": partHot, "drawing.ground": partHot,
}

// TestSectionsTouchWhatTheySay reads from the source which parts of a pass each section reaches and wants them said, so that a moved pass leaves out no
// section that something moved comes to.
func TestSectionsTouchWhatTheySay(t *testing.T) {
	t.Parallel()
	s := readSource(t)
	for i := range sections {
		name := "pass." + sectionName(i)
		if s.touched[name] == nil {
			t.Fatalf("%s is not in the source", name)
		}
		for field := range s.reached(name, s.touched) {
			if part, known := fieldParts[field]; !known || sections[i].touches()&part == 0 {
				t.Errorf("%s reaches %s of the pass and does not say so", name, field)
			}
		}
		for field := range s.reached(name, s.written) {
			if sections[i].computes&fieldParts[field] == 0 {
				t.Errorf("%s changes %s of the pass and does not say so", name, field)
			}
		}
	}
}

// TestPartsAreHandedOn wants every part that a section computes, but for those of the drawing, to have its copy.
func TestPartsAreHandedOn(t *testing.T) {
	t.Parallel()
	known := partMarks | partLifts | partTwist | partStiffness | partPlace | partGround | partCold | partHot
	for i := range copies {
		known |= copies[i].part
	}
	for field, part := range fieldParts {
		if known&part == 0 {
			t.Errorf("nothing hands on %s", field)
		}
	}
	if len(sections) > 64 {
		t.Errorf("%d sections have no room in a word", len(sections))
	}
}

package fmt

import (
	"errors"
	standard "fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"math"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

type named string

type counted int32

type told int

func (t told) String() string { return "told " + strconv.Itoa(int(t)) }

var errInner = errors.New("an inner fault")

func TestSameBytesAsTheStandardLibrary(t *testing.T) {
	t.Parallel()
	values := []any{
		"", "text", "5 % \"quoted\"\n", "é\xff", named("named"), counted(-7), told(3), true, 0, -12, int64(math.MinInt64), uint8(9), 'x',
		0.0, math.Copysign(0, -1), -2.5, 1e6, 1e20, 1e21, 1e-5, 123456.789, math.Inf(1), math.Inf(-1), math.NaN(), float32(0.1), errInner, nil,
	}
	for _, value := range values {
		for _, format := range formatsOf(value) {
			want, got := standard.Sprintf(format, value), Sprintf(format, value)
			if got != want {
				t.Errorf("%s of %#v: got %q, want %q", format, value, got, want)
			}
		}
		if want, got := standard.Sprint(value), Sprint(value); got != want {
			t.Errorf("%#v: got %q, want %q", value, got, want)
		}
	}
	if want, got := standard.Sprint("a", 1, 2, "b", errInner), Sprint("a", 1, 2, "b", errInner); got != want {
		t.Errorf("several: got %q, want %q", got, want)
	}
	if got := Sprintf("%s, %d %%: %s", []any{"a", 1}...); got != "a, 1 %: %!s(MISSING)" {
		t.Errorf("one too few: got %q", got)
	}
}

// formatsOf are the formats that a value of this kind is given to.
func formatsOf(value any) []string {
	switch value.(type) {
	case string, named, error:
		return []string{"%s", "%v", "%q", "<%12s>", "%s%%"}
	case told:
		return []string{"%s", "%v", "%d", "%q"}
	case bool, nil:
		return []string{"%v"}
	case float64, float32:
		return []string{"%v", "%g", "%f", "%.0f", "%.3f", "%.4g", "%e", "%8.2f", "%+.3f", "%+8.1f"}
	}
	return []string{"%d", "%v", "%x", "%04x", "%06d", "%3d", "%+d", "%+05d"}
}

func TestErrorsAreWrapped(t *testing.T) {
	t.Parallel()
	other := errors.New("another")
	for _, err := range []error{Errorf("place %d: %w", 2, errInner), Errorf("%w and %w", other, errInner)} {
		if !errors.Is(err, errInner) {
			t.Errorf("%v hides what it wraps", err)
		}
	}
	if err := Errorf("%w and %w", other, errInner); !errors.Is(err, other) || err.Error() != "another and an inner fault" {
		t.Errorf("got %v", err)
	}
	if err := Errorf("only %s", "text"); errors.Unwrap(err) != nil || err.Error() != "only text" {
		t.Errorf("got %v", err)
	}
}

// directives finds those of a format, and fitting what this package knows of them.
var (
	directives = regexp.MustCompile(`%[-+# 0]*[0-9*]*(\.[0-9*]*)?.`)
	fitting    = regexp.MustCompile(`^%([+0]*[0-9]*(\.[0-9]+)?[fge]|[+0]*[0-9]*[dsqvwx]|%)$`)
)

// TestEveryFormatOfTheCoreIsKnown reads the sources of the page's core. Whatever it takes from package fmt is here, and so is every directive.
func TestEveryFormatOfTheCoreIsKnown(t *testing.T) {
	t.Parallel()
	here := map[string]bool{"Sprintf": true, "Sprint": true, "Errorf": true, "Stringer": true}
	seen := 0
	for _, file := range coreSources(t) {
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.SelectorExpr:
				if from, ok := n.X.(*ast.Ident); ok && from.Name == "fmt" && !here[n.Sel.Name] {
					t.Errorf("the core uses fmt.%s, which the page's core does not have", n.Sel.Name)
				}
			case *ast.CallExpr:
				for i, argument := range n.Args {
					if text, ok := argument.(*ast.BasicLit); ok && text.Kind == token.STRING && i < len(n.Args)-1 {
						seen += knownDirectives(t, text.Value)
					}
				}
			}
			return true
		})
	}
	if seen < 200 {
		t.Errorf("only %d directives were seen", seen)
	}
}

func knownDirectives(t *testing.T, quoted string) int {
	t.Helper()
	format, err := strconv.Unquote(quoted)
	if err != nil {
		t.Fatal(err)
	}
	found := directives.FindAllString(format, -1)
	for _, directive := range found {
		if !fitting.MatchString(directive) {
			t.Errorf("%q has %q, which the page's core does not know", format, directive)
		}
	}
	return len(found)
}

// coreSources are the files that the page's core is built from.
func coreSources(t *testing.T) []*ast.File {
	t.Helper()
	var files []*ast.File
	for _, folder := range []string{"physics", "document", "answer", "compare"} {
		err := filepath.WalkDir(filepath.Join("..", "..", "..", "server", folder), func(path string, entry fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			files = append(files, file)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return files
}

package main

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// never are packages that the program must not have in it, whoever asks for them: they speak to a network, load code or reach a database.
var never = []string{"net/http", "net/smtp", "net/rpc", "net/mail", "crypto/tls", "plugin", "database/sql", "expvar", "net/http/pprof", "runtime/cgo", "golang.org/x/net", "golang.org/x/crypto/ssh"}

// elsewhere are packages that stand in the program for a library's sake and that none of ours may import: an address as a flag's
// value (pflag), a program that a screen hands the terminal to, or that is asked for the terminal's colours.
var elsewhere = map[string][]string{
	"net":           {"github.com/spf13/pflag"},
	"os/exec":       {"github.com/charmbracelet/bubbletea", "github.com/charmbracelet/colorprofile"},
	"unsafe":        nil,
	"text/template": nil,
	"html/template": nil,
}

// linked are all packages of the program built for Linux, with what each imports.
func linked(t *testing.T) map[string][]string {
	list := exec.Command("go", "list", "-deps", "-f", `{{.ImportPath}} {{join .Imports " "}}`, ".")
	list.Env = append(list.Environ(), "CGO_ENABLED=0", "GOOS=linux", "GOARCH=amd64")
	text, err := list.Output()
	require.NoError(t, err)
	all := map[string][]string{}
	for line := range strings.Lines(string(text)) {
		words := strings.Fields(line)
		all[words[0]] = words[1:]
	}
	require.Greater(t, len(all), 100)
	return all
}

func TestTheProgramHasNoNetworkAndNoShell(t *testing.T) {
	all := linked(t)
	for _, name := range never {
		assert.NotContains(t, all, name)
	}
	for name, imports := range all {
		if strings.HasPrefix(name, "bench.example/undermark/") {
			for _, imported := range imports {
				_, is := elsewhere[imported]
				assert.False(t, is, "%s imports %s", name, imported)
			}
			continue
		}
		std := !strings.Contains(strings.SplitN(name, "/", 2)[0], ".")
		for _, imported := range imports {
			if by, is := elsewhere[imported]; is && by != nil && !std {
				assert.Contains(t, by, name, "%s has come to import %s: look at what for", name, imported)
			}
		}
	}
}

// What go list says is what is in the built program: names of a client, a server or another program's start do not stand in it. Nor do those of templates, which
// would have the linker keep every method of every type, these among them, and two and a half megabytes more.
func TestTheBuiltProgramHasNoClient(t *testing.T) {
	notRaced(t)
	text, err := exec.Command("go", "tool", "nm", program).Output()
	require.NoError(t, err)
	names := string(text)
	require.Contains(t, names, "main.run")
	for _, name := range []string{"net/http.", "net.Dial", "net.(*Dialer).", "net.Listen", "crypto/tls.", "plugin.Open", "net.(*Resolver).LookupHost",
		"os/exec.(*Cmd).Start", "os.StartProcess", "syscall.forkExec", "text/template.(*Template).Execute", "syscall.Exec", "syscall.Socket", "syscall.socket",
		"syscall.Connect", "syscall.connect", "syscall.Bind", "syscall.bind", "golang.org/x/sys/unix.Socket", "golang.org/x/sys/unix.Connect", "golang.org/x/sys/unix.Exec"} {
		assert.NotContains(t, names, " "+name, "linked into the program")
	}
}

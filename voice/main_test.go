package voice

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
)

// The test binary stands in for the programs that the package runs: under one
// of their names it does as they do, or fails as FAKE says.
func TestMain(m *testing.M) {
	name := strings.TrimSuffix(filepath.Base(os.Args[0]), ".exe")
	if play, ok := fakes[name]; ok {
		os.Exit(play(os.Args[1:]))
	}
	dir, err := os.MkdirTemp("", "barwise-model-")
	if err != nil {
		panic(err)
	}
	modelDir = dir
	code := m.Run()
	os.RemoveAll(dir)
	os.Exit(code)
}

// modelDir keeps the language model that tests share.
var modelDir string

var fakes = map[string]func(args []string) int{
	"pocketsphinx_batch":      fakeBatch,
	"pocketsphinx":            fakeSingle,
	"pocketsphinx_continuous": fakeContinuous,
	"hearer":                  fakeHearer,
	"arecord":                 fakeRecorder,
	"aplay":                   fakePlayer,
}

// fakePrograms makes a folder with the named programs and has it looked in
// before, or with alone instead of, the places that are.
func fakePrograms(t *testing.T, alone bool, names ...string) string {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("the stand-ins need symbolic links")
	}
	dir := t.TempDir()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range names {
		if err := os.Symlink(self, filepath.Join(dir, n)); err != nil {
			t.Fatal(err)
		}
	}
	path := dir
	if !alone {
		path += string(os.PathListSeparator) + os.Getenv("PATH")
	}
	t.Setenv("PATH", path)
	return dir
}

// needs skips a test, in a clear word, where a program is not installed.
func needs(t *testing.T, program, debian string) {
	t.Helper()
	if _, err := exec.LookPath(program); err != nil {
		t.Skipf("%s is not installed (Debian package %s)", program, debian)
	}
}

// misbehave does what FAKE asks for, and reports whether that was something.
func misbehave() (code int, ok bool) {
	switch os.Getenv("FAKE") {
	case "hang":
		time.Sleep(time.Minute)
	case "crash":
		fmt.Fprintln(os.Stderr, "loading\nFATAL: out of \x1b[31mmemory")
		return 139, true
	case "garbage":
		fmt.Println("\x00\xff not words at all 1 2 three")
		return 0, true
	}
	return 0, false
}

func argAfter(args []string, flag string) string {
	for i, a := range args {
		if a == flag && i+1 < len(args) {
			return args[i+1]
		}
	}
	return ""
}

func fakeBatch(args []string) int {
	if code, ok := misbehave(); ok {
		return code
	}
	ctl, err := os.ReadFile(argAfter(args, "-ctl"))
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	name := strings.TrimSpace(string(ctl))
	if _, err := os.Stat(filepath.Join(argAfter(args, "-cepdir"), name+argAfter(args, "-cepext"))); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	out := name + " 1 0.10 0.30 bar(2) 0.913\n" + name + " 1 0.40 0.10 <sil> 1.0\n" + name + " 1 0.50 0.25 four 1.0001\n"
	if os.WriteFile(argAfter(args, "-ctm"), []byte(out), 0o600) != nil {
		return 1
	}
	return 0
}

func fakeContinuous(args []string) int {
	if code, ok := misbehave(); ok {
		return code
	}
	if _, err := os.Stat(argAfter(args, "-infile")); err != nil {
		return 1
	}
	fmt.Print("bar four\n<s> 0.000 0.090 1.000000\nbar(2) 0.100 0.400 0.913000\n<sil> 0.400 0.500 0.990000\nfour 0.500 0.750 1.000100\n</s> 0.760 0.900 1.000000\n")
	return 0
}

func fakeSingle(args []string) int {
	if code, ok := misbehave(); ok {
		return code
	}
	if len(args) < 2 || args[len(args)-2] != "single" {
		return 1
	}
	fmt.Println(`{"b":0.000,"d":0.900,"p":0.9,"t":"bar four","w":[{"b":0.0,"d":0.09,"p":1.0,"t":"<s>"},{"b":0.10,"d":0.30,"p":0.913,"t":"bar(2)"},{"b":0.4,"d":0.1,"p":1.0,"t":"<sil>"},{"b":0.50,"d":0.25,"p":1.0001,"t":"four"}]}`)
	return 0
}

// fakeHearer writes its second argument to stdout, or with a third to the file
// of that name; it wants to be given a sound file first.
func fakeHearer(args []string) int {
	if code, ok := misbehave(); ok {
		return code
	}
	head := make([]byte, 4)
	f, err := os.Open(args[0])
	if err != nil {
		return 1
	}
	if _, err := f.Read(head); err != nil || string(head) != "RIFF" {
		fmt.Fprintln(os.Stderr, "no sound")
		return 1
	}
	text := strings.ReplaceAll(args[1], "\\n", "\n")
	if len(args) > 2 {
		return map[bool]int{false: 1}[os.WriteFile(args[2], []byte(text), 0o600) == nil]
	}
	fmt.Print(text)
	return 0
}

func fakeRecorder([]string) int {
	for range 20 {
		if _, err := os.Stdout.Write(make([]byte, levelBytes)); err != nil {
			return 1
		}
		time.Sleep(5 * time.Millisecond)
	}
	return 0
}

func fakePlayer(args []string) int {
	data, err := os.ReadFile(args[len(args)-1])
	if err != nil {
		return 1
	}
	return map[bool]int{false: 1}[os.WriteFile(os.Getenv("PLAYED"), data, 0o600) == nil]
}

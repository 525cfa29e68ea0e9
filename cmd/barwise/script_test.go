package main

import (
	"encoding/binary"
	"errors"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	bolt "go.etcd.io/bbolt"

	"barwise/cmd/barwise/command"
	"barwise/index"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"barwise": func() { os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) },
	})
}

// TestScripts tells stories of the whole program, a file each. Beside the
// usual commands the scripts know those of storeCommands.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("testdata", "script"),
		Cmds:                storeCommands,
		RequireExplicitExec: true,
		Setup: func(env *testscript.Env) error {
			home := filepath.Join(env.WorkDir, "home")
			env.Setenv("HOME", home)
			env.Setenv("XDG_DATA_HOME", filepath.Join(home, "share"))
			env.Setenv("TMPDIR", env.Getenv("WORK"))
			env.Setenv("TZ", "UTC")
			return os.Mkdir(home, 0o700)
		},
		Condition: func(cond string) (bool, error) {
			return cond == "root" && os.Geteuid() == 0 || cond == "files" && runtime.GOOS != "windows", nil
		},
	})
}

// storeCommands bring about what a script cannot.
var storeCommands = map[string]func(*testscript.TestScript, bool, []string){
	// exits CODE PROGRAM ARG… runs a program and fails unless it exits with the code.
	"exits": func(ts *testscript.TestScript, _ bool, args []string) {
		err := ts.Exec(args[1], args[2:]...)
		var exit *exec.ExitError
		if !errors.As(err, &exit) || strconv.Itoa(exit.ExitCode()) != args[0] {
			ts.Fatalf("%q: %v, want exit status %s", args[1:], err, args[0])
		}
	},
	// hold DIR keeps the store open, as another barwise would, to the script's end.
	"hold": func(ts *testscript.TestScript, _ bool, args []string) {
		store, err := index.Open(ts.MkAbs(args[0]))
		ts.Check(err)
		ts.Defer(func() { store.Close() })
	},
	// newer DIR writes into the store the version of a barwise to come.
	"newer": func(ts *testscript.TestScript, _ bool, args []string) {
		db, err := bolt.Open(filepath.Join(ts.MkAbs(args[0]), index.StoreFile), 0o600, nil)
		ts.Check(err)
		ts.Check(db.Update(func(tx *bolt.Tx) error {
			return tx.Bucket([]byte("meta")).Put([]byte("version"), []byte("99"))
		}))
		ts.Check(db.Close())
	},
	// resize FILE BYTES cuts a file, or lengthens it with zeroes.
	"resize": func(ts *testscript.TestScript, _ bool, args []string) {
		size, err := strconv.ParseInt(args[1], 10, 64)
		ts.Check(err)
		ts.Check(os.Truncate(ts.MkAbs(args[0]), size))
	},
	// repeat FILE BYTES TEXT writes the text again and again without a break.
	"repeat": func(ts *testscript.TestScript, _ bool, args []string) {
		size, err := strconv.Atoi(args[1])
		ts.Check(err)
		text := make([]byte, 0, size+len(args[2]))
		for len(text) < size {
			text = append(text, args[2]...)
		}
		ts.Check(os.WriteFile(ts.MkAbs(args[0]), text, 0o600))
	},
	// bytes FILE HEX… writes bytes that a script's text cannot hold.
	"bytes": func(ts *testscript.TestScript, _ bool, args []string) {
		var data []byte
		for _, quoted := range args[1:] {
			text, err := strconv.Unquote(`"` + quoted + `"`)
			ts.Check(err)
			data = append(data, text...)
		}
		ts.Check(os.WriteFile(ts.MkAbs(args[0]), data, 0o600))
	},
	// sound FILE writes a recording of two seconds, one of them loud.
	"sound": func(ts *testscript.TestScript, _ bool, args []string) {
		const rate, seconds = 16000, 2
		wav := []byte("RIFF\x00\x00\x00\x00WAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00\x80\x3e\x00\x00\x00\x7d\x00\x00\x02\x00\x10\x00data\x00\x00\x00\x00")
		binary.LittleEndian.PutUint32(wav[4:], 36+2*rate*seconds)
		binary.LittleEndian.PutUint32(wav[40:], 2*rate*seconds)
		for i := range rate * seconds {
			v := 0.0
			if i > rate/2 && i < rate*3/2 {
				v = 9000 * math.Sin(2*math.Pi*220*float64(i)/rate)
			}
			wav = binary.LittleEndian.AppendUint16(wav, uint16(int16(v)))
		}
		ts.Check(os.WriteFile(ts.MkAbs(args[0]), wav, 0o600))
	},
	// plain FILE fails where the file holds a control character.
	"plain": func(ts *testscript.TestScript, _ bool, args []string) {
		for i, c := range []byte(ts.ReadFile(args[0])) {
			if c < ' ' && c != '\n' && c != '\t' || c == 0x7f {
				ts.Fatalf("%s: byte %d is %#02x", args[0], i, c)
			}
		}
	},
}

package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"strings"
)

// speaker is a synthetic voice: a command that speaks a text into a file. {out}
// is the file, {text} the text; without {text} it is given on stdin.
type speaker struct {
	name string
	args []string
}

// speakers are ten voices of three engines, alternating.
var speakers = []speaker{
	{"flite-slt", []string{"flite", "-voice", "slt", "-t", "{text}", "-o", "{out}"}},
	{"espeak-us", []string{"espeak-ng", "-v", "en-us", "-s", "150", "-w", "{out}", "{text}"}},
	{"festival-kal", []string{"text2wave", "-eval", "(voice_kal_diphone)", "-o", "{out}"}},
	{"espeak-gb", []string{"espeak-ng", "-v", "en-gb", "-s", "145", "-w", "{out}", "{text}"}},
	{"flite-rms", []string{"flite", "-voice", "rms", "-t", "{text}", "-o", "{out}"}},
	{"espeak-us-high", []string{"espeak-ng", "-v", "en-us+f3", "-s", "165", "-p", "60", "-w", "{out}", "{text}"}},
	{"flite-awb", []string{"flite", "-voice", "awb", "-t", "{text}", "-o", "{out}"}},
	{"espeak-scots", []string{"espeak-ng", "-v", "en-gb-scotland", "-s", "140", "-p", "40", "-w", "{out}", "{text}"}},
	{"flite-kal", []string{"flite", "-voice", "kal16", "-t", "{text}", "-o", "{out}"}},
	{"festival-ked", []string{"text2wave", "-eval", "(voice_ked_diphone)", "-o", "{out}"}},
}

// pick gives the voices whose name contains a word.
func pick(only string) []speaker {
	var out []speaker
	for _, s := range speakers {
		if strings.Contains(s.name, only) {
			out = append(out, s)
		}
	}
	return out
}

// speakTo has a voice speak a sentence into a WAV file.
func speakTo(ctx context.Context, s speaker, text, out string) error {
	text = strings.TrimSpace(text) + "."
	fill := strings.NewReplacer("{out}", out, "{text}", text)
	args := make([]string, len(s.args))
	for i, a := range s.args {
		args[i] = fill.Replace(a)
	}
	cmd := exec.CommandContext(ctx, args[0], args[1:]...)
	cmd.Stdin = strings.NewReader(text)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("%s: %w: %s", s.name, err, stderr.String())
	}
	if info, err := os.Stat(out); err != nil || info.Size() < 1000 {
		return fmt.Errorf("%s spoke nothing: %s", s.name, stderr.String())
	}
	return nil
}

package voice

import (
	"os/exec"
	"slices"
	"strings"
)

// Tool is something outside the program that a part of it needs.
type Tool struct {
	Does   string // what it is for, for people
	Found  string // path of the program or folder in use, "" where none is there
	Debian string // packages that bring it
	Needed bool   // for recordings to become notes at all
}

// Probe says what there is for recognising, reading, recording and playing
// sound. Everything but sound works without any of it.
func Probe() []Tool {
	tools := []Tool{
		probePrograms("hears recordings", "pocketsphinx", true, sphinxPrograms...),
		{Does: "English model of the recogniser", Debian: "pocketsphinx-en-us", Needed: true},
		probePrograms("reads m4a, mp3, ogg and other recordings than WAV", "ffmpeg", false, "ffmpeg"),
		probePrograms("records from the microphone", "pipewire-bin", false, names(recorders)...),
		probePrograms("plays what was said", "pipewire-bin", false, names(players)...),
	}
	if m, err := StockModel(""); err == nil {
		tools[1].Found = m.Acoustic
	}
	return tools
}

// InstallCommand is the one command that installs on Debian and its kin what is
// missing, "" where nothing is.
func InstallCommand(tools []Tool) string {
	var packages []string
	for _, t := range tools {
		if t.Found == "" && !slices.Contains(packages, t.Debian) {
			packages = append(packages, t.Debian)
		}
	}
	if len(packages) == 0 {
		return ""
	}
	return "sudo apt-get install " + strings.Join(packages, " ")
}

func probePrograms(does, debian string, needed bool, programs ...string) Tool {
	t := Tool{Does: does, Debian: debian, Needed: needed}
	for _, name := range programs {
		if path, err := exec.LookPath(name); err == nil {
			t.Found = path
			break
		}
	}
	return t
}

// names gives the names, each once, of the programs that do their work here.
func names(programs []soundProgram) []string {
	var out []string
	for _, p := range programs {
		if p.runsHere() && !slices.Contains(out, p.name) {
			out = append(out, p.name)
		}
	}
	return out
}

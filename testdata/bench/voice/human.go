package main

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// humanWords are the recordings of a person that Debian's package
// asterisk-core-sounds-en-g722 holds (CC BY-SA 3.0), under digits, and what is
// said in each.
func humanWords() map[string]string {
	words := map[string]string{"oh": "oh", "hundred": "hundred", "thousand": "thousand"}
	for i, w := range strings.Fields("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen") {
		words[fmt.Sprint(i)] = w
	}
	for i, w := range strings.Fields("twenty thirty forty fifty sixty seventy eighty ninety") {
		words[fmt.Sprint(20+10*i)] = w
	}
	for i, w := range strings.Fields("first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth") {
		words[fmt.Sprintf("h-%d", i+1)] = w
	}
	for i, w := range strings.Fields("sunday monday tuesday wednesday thursday friday saturday") {
		words[fmt.Sprintf("day-%d", i)] = w
	}
	for i, w := range strings.Fields("january february march april may june july august september october november december") {
		words[fmt.Sprintf("mon-%d", i)] = w
	}
	return words
}

// humanRecordings joins the recordings of single words to runs of eight in a
// shuffled order, a third of a second apart, each word three times over all.
func humanRecordings(ctx context.Context, dir string) ([]spoken, error) {
	words := humanWords()
	clips := map[string][]float64{}
	var names []string
	for name := range words {
		path := filepath.Join(dir, name+".g722")
		if _, err := os.Stat(path); err != nil {
			continue
		}
		raw, err := exec.CommandContext(ctx, "ffmpeg", "-nostdin", "-v", "error", "-f", "g722", "-i", path, "-f", "s16le", "-ac", "1", "-ar", "16000", "-").Output()
		if err != nil {
			return nil, fmt.Errorf("%s: %w", path, err)
		}
		clips[name] = decode(raw)
		names = append(names, name, name, name)
	}
	if len(names) == 0 {
		return nil, fmt.Errorf("%s holds no .g722 files of numbers (Debian package asterisk-core-sounds-en-g722)", dir)
	}
	slices.Sort(names)
	rnd := rand.New(rand.NewPCG(5, 5))
	rnd.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	var out []spoken
	for i := 0; i < len(names); i += 8 {
		s := spoken{voice: "human", note: note{name: fmt.Sprint("human", i/8)}, samples: make([]float64, rate/3)}
		for _, n := range names[i:min(i+8, len(names))] {
			s.note.text += words[n] + " "
			s.samples = append(append(s.samples, clips[n]...), make([]float64, rate/3)...)
		}
		out = append(out, s)
	}
	return out, nil
}

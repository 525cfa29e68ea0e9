package voice

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// Template recognises with any program that takes a sound file and writes text:
// a command line in which
//
//	{audio}   is the part, a WAV file of 16 kHz, 16 bits, one channel
//	{out}     is a path without ending for the program's output
//	{prompt}  is Prompt, words of the trade for recognisers that take a hint
//	{lang}    is Lang
//
// No shell is involved; single and double quotes hold an argument with spaces
// together. Where {out} is used the program's result is looked for at {out}
// with the ending .json, .vtt, .srt or .txt, and at {out} itself; otherwise it
// is what the program prints. A transcript is read with its times; plain text
// is spread over the part.
type Template struct {
	Line   string
	Prompt string
	Lang   string        // "en" where empty
	Limit  time.Duration // for a part; 0 takes a minute and twenty times its length
	args   []string
}

// ErrTemplate says what is wrong with a command line.
var ErrTemplate = errors.New("the recogniser's command line cannot be used")

// NewTemplate checks a command line and finds its program.
func NewTemplate(line, prompt, lang string) (*Template, error) {
	args, err := splitCommand(line)
	if err != nil {
		return nil, err
	}
	if len(args) == 0 || !strings.Contains(line, "{audio}") {
		return nil, fmt.Errorf("%w: it must name a program and hold {audio}", ErrTemplate)
	}
	if args[0], err = exec.LookPath(args[0]); err != nil {
		return nil, fmt.Errorf("%w: %w", ErrTemplate, err)
	}
	if lang == "" {
		lang = "en"
	}
	return &Template{Line: line, Prompt: prompt, Lang: lang, args: args}, nil
}

// Key names the command line and what goes into it.
func (t *Template) Key() string {
	return strings.Join([]string{"command", t.Line, t.Prompt, t.Lang}, "\x00")
}

// Recognise runs the command on one part.
func (t *Template) Recognise(ctx context.Context, part Part) ([]Word, error) {
	dir, err := os.MkdirTemp("", "barwise-part-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "out")
	fill := strings.NewReplacer("{audio}", part.File, "{out}", out, "{prompt}", t.Prompt, "{lang}", t.Lang)
	args := make([]string, len(t.args))
	for i, a := range t.args {
		args[i] = fill.Replace(a)
	}
	limit := t.Limit
	if limit == 0 {
		limit = time.Minute + time.Duration(20*part.Seconds*float64(time.Second))
	}
	var printed strings.Builder
	if err := (command{path: args[0], args: args[1:], limit: limit}).run(ctx, &printed); err != nil {
		return nil, err
	}
	result := printed.String()
	if strings.Contains(t.Line, "{out}") {
		if result, err = firstResult(out); err != nil {
			return nil, fmt.Errorf("%s: %w", args[0], err)
		}
	}
	return readResult(result, part.Seconds)
}

// firstResult reads the best result that a program left: the one with the
// finest times.
func firstResult(out string) (string, error) {
	for _, ext := range []string{".json", ".vtt", ".srt", ".txt", ""} {
		text, err := os.ReadFile(out + ext)
		if err == nil {
			return string(text), nil
		}
		if !errors.Is(err, fs.ErrNotExist) {
			return "", err
		}
	}
	return "", errors.New("wrote no result at {out}")
}

// readResult reads what a recogniser wrote, in whichever form.
func readResult(result string, seconds float64) ([]Word, error) {
	src, err := decodeText([]byte(result))
	if err != nil {
		return nil, fmt.Errorf("the recogniser's answer%w", err)
	}
	var pieces []piece
	var faults []fault
	switch kindOf("", src) {
	case kindCues:
		pieces, faults = readCues(src)
	case kindJSON:
		pieces, faults = readTimedJSON(src)
	default:
		pieces = stampedPieces(src)
	}
	if len(faults) > 0 && len(pieces) == 0 {
		return nil, fmt.Errorf("the recogniser's answer, line %d: %s", faults[0].line, faults[0].what)
	}
	return pieceWords(pieces, seconds), nil
}

// stampedPieces reads plain text, with times in brackets before a line, as in
// [00:00:01.000 --> 00:00:04.000]  text, or without.
func stampedPieces(src string) []piece {
	var out []piece
	for line := range strings.Lines(src) {
		line = strings.TrimSpace(line)
		p := piece{text: line}
		if inner, rest, ok := strings.Cut(strings.TrimPrefix(line, "["), "]"); ok && strings.Contains(inner, "-->") {
			if from, to, err := parseTiming(inner); err == nil {
				p = piece{text: rest, from: from, to: to, timed: true}
			}
		}
		p.text = plainWords(p.text)
		if p.text != "" {
			if n := len(out); n > 0 && !p.timed && !out[n-1].timed {
				out[n-1].text += " " + p.text
				continue
			}
			out = append(out, p)
		}
	}
	return out
}

// splitCommand splits a command line at spaces, minding quotes.
func splitCommand(line string) ([]string, error) {
	var args []string
	var b strings.Builder
	quote, begun := rune(0), false
	for _, r := range line {
		switch {
		case quote != 0 && r == quote:
			quote = 0
		case quote == 0 && (r == '"' || r == '\''):
			quote, begun = r, true
		case quote == 0 && (r == ' ' || r == '\t' || r == '\n'):
			if begun {
				args = append(args, b.String())
			}
			b.Reset()
			begun = false
		default:
			b.WriteRune(r)
			begun = true
		}
	}
	if quote != 0 {
		return nil, fmt.Errorf("%w: a quote is not closed", ErrTemplate)
	}
	if begun {
		args = append(args, b.String())
	}
	return args, nil
}

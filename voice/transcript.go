package voice

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"regexp"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/unicode"

	"barwise/colony"
)

// Errors of a transcript that cannot be read at all.
var (
	ErrNotTranscript = errors.New("not a transcript: neither WebVTT, SubRip nor timed words in JSON")
	ErrNoWords       = errors.New("the transcript holds no words")
	ErrEncoding      = errors.New("not UTF-8 text; save it as UTF-8")
	ErrTooLong       = errors.New("longer than 64 MiB, which is more than a transcript can be")
)

// maxTranscript is the longest transcript that is read. An hour of speech with
// a time for each word is about two megabytes of JSON.
const maxTranscript = 64 << 20

// ReadTranscript reads a transcript: WebVTT, SubRip, or JSON with times for
// words or phrases as the common recognisers write it. The content decides
// which; the name is used in messages and, where the content leaves it open, as
// a hint. Plain text is not a transcript: [ErrNotTranscript].
//
// The text joins the cues by a space, or by a line break where they are [Pause]
// seconds or more apart. Words hold the seconds of each word; a cue or phrase
// that has no times for its words spreads its own over them.
//
// What is wrong with one cue does not lose the others: each warning names the
// line. Where only the times of a cue cannot be read its words are kept,
// without seconds, because they were said.
//
// The reader is our own. The one well-kept Go library for subtitles ends at the
// first bad time or unknown region, panics at a cue without an end, and reads a
// WebVTT file that lost its header as empty without an error; a keeper's only
// copy of a walk needs the opposite. A test holds these reasons; it stays in
// the tests as a second opinion on well-formed files, too.
func ReadTranscript(name string, r io.Reader) (text string, words []colony.TimedWord, warnings []error, err error) {
	data, err := io.ReadAll(io.LimitReader(r, maxTranscript+1))
	if err != nil {
		return "", nil, nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(data) > maxTranscript {
		return "", nil, nil, fmt.Errorf("%s: %w", name, ErrTooLong)
	}
	src, err := decodeText(data)
	if err != nil {
		return "", nil, nil, fmt.Errorf("%s%w", name, err)
	}
	var pieces []piece
	var faults []fault
	switch kindOf(name, src) {
	case kindCues:
		pieces, faults = readCues(src)
	case kindJSON:
		pieces, faults = readTimedJSON(src)
	default:
		return "", nil, nil, fmt.Errorf("%s: %w", name, ErrNotTranscript)
	}
	for _, f := range faults {
		warnings = append(warnings, fmt.Errorf("%s:%d: %s", name, f.line, f.what))
	}
	text, words = join(pieces)
	if text == "" {
		return "", nil, warnings, fmt.Errorf("%s: %w", name, ErrNoWords)
	}
	return text, words, warnings, nil
}

// IsTranscript reports whether a file that begins with head is a transcript.
// The name is a hint only: a .vtt or .srt file counts as one whatever it holds,
// so that its faults are named by the reader.
func IsTranscript(name string, head []byte) bool {
	src, err := decodeText(head)
	if err != nil {
		src = string(bytes.ToValidUTF8(head, nil)) // a head may end inside a letter
	}
	return kindOf(name, src) != kindNone
}

// fault is one thing wrong in a transcript, at a line counted from 1.
type fault struct {
	line int
	what string
}

type kind int

const (
	kindNone kind = iota
	kindCues      // WebVTT and SubRip, which one reader takes
	kindJSON
)

var (
	timingLine = regexp.MustCompile(`(?m)^[ \t]*[0-9:.,]+[ \t]*-->`)
	jsonWords  = regexp.MustCompile(`"(segments|transcription|results?|words?|w|alternatives)"\s*:`)
	jsonTimes  = regexp.MustCompile(`"(start|b|offsets|start_time|startTime|begin|result)"\s*:`)
)

// kindOf tells what a decoded text, or its beginning, is.
func kindOf(name, src string) kind {
	src = strings.TrimLeft(src, " \t\n")
	ext := strings.ToLower(filepath.Ext(name))
	switch {
	case isVTTHeader(src), ext == ".vtt", ext == ".srt":
		return kindCues
	case strings.HasPrefix(src, "{"), strings.HasPrefix(src, "["):
		// Some recognisers write the whole text first, so that the beginning of
		// the file shows no time yet.
		if jsonWords.MatchString(src) && jsonTimes.MatchString(src) ||
			ext == ".json" && strings.HasPrefix(strings.TrimLeft(src[1:], " \t\n"), `"text"`) {
			return kindJSON
		}
	case timingLine.MatchString(src):
		return kindCues
	}
	return kindNone
}

// isVTTHeader reports whether src begins as WebVTT section 6.1 wants it: the
// signature, then the end, a space, a tab or a line break.
func isVTTHeader(src string) bool {
	rest, ok := strings.CutPrefix(src, "WEBVTT")
	return ok && (rest == "" || strings.ContainsRune(" \t\n", rune(rest[0])))
}

// decodeText gives the text of a file with byte order mark removed and line
// ends as "\n". UTF-16 is read where its mark stands in front; other encodings
// are refused with the line of the first bad byte, since a guess would change
// words. The error text begins with ":line" or ":".
func decodeText(data []byte) (string, error) {
	switch {
	case bytes.HasPrefix(data, []byte{0xff, 0xfe}), bytes.HasPrefix(data, []byte{0xfe, 0xff}):
		var err error
		if data, err = unicode.UTF16(unicode.LittleEndian, unicode.ExpectBOM).NewDecoder().Bytes(data); err != nil {
			return "", fmt.Errorf(": %w", err)
		}
	default:
		data = bytes.TrimPrefix(data, []byte("\ufeff"))
	}
	src := strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(string(data))
	for i := 0; i < len(src); {
		r, n := utf8.DecodeRuneInString(src[i:])
		if r == utf8.RuneError && n == 1 {
			return "", fmt.Errorf(":%d: %w", 1+strings.Count(src[:i], "\n"), ErrEncoding)
		}
		i += n
	}
	return src, nil
}

// Package voice turns what was said into text with times: it reads the
// transcripts that other recognisers write, and it recognises recordings itself
// with a recogniser that runs as a process beside it.
//
// The nouns:
//
//	transcript  a file of timed words: WebVTT, SubRip or JSON
//	recording   a sound file, whatever its format and rate
//	part        a stretch of a recording between two pauses
//	Recogniser  turns a part into timed words with confidence
//	model       the language model and the pronunciations a recogniser works with
//	voice       what is known of how somebody sounds, by which the acoustic model is fitted
//
// The text is what the parser reads, so words are joined by single spaces and a
// pause of [Pause] seconds or more becomes a line break: the parser takes a
// line break for weak punctuation. Every word keeps its span in that text and
// its seconds in the recording.
//
// Nothing here needs a recogniser, a player or a microphone to be installed
// before it is asked for one; [Probe] says what there is.
package voice

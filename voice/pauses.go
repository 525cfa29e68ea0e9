package voice

import (
	"math"
	"slices"
)

// stretch is a half-open range of seconds of a recording.
type stretch struct{ from, to float64 }

// soundPart is a part of a recording as it is handed to a recogniser: some
// seconds between two pauses, with the stretches in which somebody spoke.
type soundPart struct {
	from    float64 // seconds from the start of the recording
	samples []float32
	speech  []stretch // seconds of the recording, in order; empty for silence
}

func (p *soundPart) to() float64 { return p.from + float64(len(p.samples))/SampleRate }

// How a recording is split. Recognisers do well with some ten seconds at a
// time: enough to know the speaker's channel, short enough for two to work side
// by side and for little to be lost. Common practice with no source.
const (
	frameSamples = SampleRate / 100 // energies are taken each hundredth of a second
	shortestPart = 6.0              // seconds, before which no pause is looked for
	longestPart  = 24.0             // seconds
	shortPause   = 0.30             // seconds of quiet that count as a pause
	shortSound   = 0.12             // seconds of sound under which it is a click
	margin       = 0.20             // seconds kept around speech
	voiceRise    = 9.0              // decibels that speech stands above the quietest tenth
)

// splitter cuts a stream of samples into parts.
type splitter struct {
	buf     []float32
	from    float64 // seconds at which buf begins
	emit    func(soundPart) error
	seconds float64 // of all that came in
}

// push takes samples and emits the parts that they complete.
func (s *splitter) push(samples []float32) error {
	s.buf = append(s.buf, samples...)
	s.seconds += float64(len(samples)) / SampleRate
	for len(s.buf) >= longestPart*SampleRate {
		if err := s.cut(s.cutPoint()); err != nil {
			return err
		}
	}
	return nil
}

// end emits what is left.
func (s *splitter) end() error {
	if len(s.buf) == 0 {
		return nil
	}
	return s.cut(len(s.buf))
}

func (s *splitter) cut(n int) error {
	part := soundPart{from: s.from, samples: slices.Clone(s.buf[:n])}
	part.speech = speechIn(part.samples, part.from)
	if len(part.speech) > 0 && overNoise(part.samples) < noisyBelow {
		part.samples = denoise(part.samples)
	}
	s.buf = append(s.buf[:0], s.buf[n:]...)
	s.from += float64(n) / SampleRate
	return s.emit(part)
}

// cutPoint chooses where to cut a full buffer: in the middle of the longest
// pause, later ones preferred, or at the quietest place where nobody paused.
func (s *splitter) cutPoint() int {
	energies := frameEnergies(s.buf)
	level := threshold(energies)
	best, bestLen, quietest := 0, 0.0, len(energies)-1
	run := 0
	for i, e := range energies {
		if e < level {
			run++
		} else {
			run = 0
		}
		if float64(i)/100 < shortestPart {
			continue
		}
		if e < energies[quietest] {
			quietest = i
		}
		length := float64(run) / 100 * (1 + 0.5*float64(i)/float64(len(energies)))
		if float64(run)/100 >= shortPause && length > bestLen {
			best, bestLen = i-run/2, length
		}
	}
	if best == 0 {
		best = quietest
	}
	return max(1, best) * frameSamples
}

// frameEnergies gives the loudness of each frame in decibels. The difference of
// neighbouring samples is taken first, which quietens wind and the hum of the
// hive against speech.
func frameEnergies(samples []float32) []float64 {
	out := make([]float64, 0, len(samples)/frameSamples)
	for i := 0; i+frameSamples <= len(samples); i += frameSamples {
		sum := 0.0
		last := samples[i]
		for _, x := range samples[i : i+frameSamples] {
			d := float64(x - last)
			sum += d * d
			last = x
		}
		out = append(out, 10*math.Log10(sum/frameSamples+1e-10))
	}
	return out
}

// threshold is the loudness above which a frame counts as speech: well above
// the quiet of these frames, and a good part of the way to their loudest.
func threshold(energies []float64) float64 {
	if len(energies) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(energies))
	floor := sorted[len(sorted)/10]
	loud := sorted[len(sorted)*95/100]
	return max(floor+voiceRise, floor+0.3*(loud-floor), silenceLevel)
}

// silenceLevel is the loudness, in decibels of full scale, under which there is
// nothing to hear.
const silenceLevel = -75.0

// speechIn gives the stretches of speech in the samples of a part.
func speechIn(samples []float32, from float64) []stretch {
	energies := frameEnergies(samples)
	level := threshold(energies)
	var out []stretch
	for i := 0; i < len(energies); i++ {
		if energies[i] < level {
			continue
		}
		start := i
		for i < len(energies) && energies[i] >= level {
			i++
		}
		s := stretch{from + float64(start)/100, from + float64(i)/100}
		if n := len(out); n > 0 && s.from-out[n-1].to < shortPause {
			out[n-1].to = s.to
		} else {
			out = append(out, s)
		}
	}
	return slices.DeleteFunc(out, func(s stretch) bool { return s.to-s.from < shortSound })
}

// trim takes the silence off both ends of a part, but for a margin. A part
// without speech becomes empty.
func (p *soundPart) trim() {
	if len(p.speech) == 0 {
		p.samples = nil
		return
	}
	from := max(p.from, p.speech[0].from-margin)
	to := min(p.to(), p.speech[len(p.speech)-1].to+margin)
	a := int(math.Round((from - p.from) * SampleRate))
	b := min(len(p.samples), int(math.Round((to-p.from)*SampleRate)))
	p.samples = p.samples[a:b]
	p.from += float64(a) / SampleRate
}

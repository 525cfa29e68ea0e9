#!/bin/sh
# Has a synthetic voice speak a walk of three hives of ten bars each, takes the
# recording in with one command, and shows the inspections that it became; then
# their leaves against the answers. Run it in the project's folder:
#
#	testdata/bench/voice/walk.sh [VOICE]
#
# It needs what the bench beside it needs, and leaves nothing behind.
set -eu
voice=${1:-flite-slt}
dir=$(mktemp -d)
trap 'rm -rf "$dir"' EXIT INT TERM
go build -o "$dir" ./cmd/barwise ./testdata/bench/voice
"$dir/voice" -say testdata/bench/voice/walk.gold -voice "$voice" -out "$dir/2026-05-14-1600-walk.wav"
"$dir/barwise" take --json --data "$dir/data" "$dir/2026-05-14-1600-walk.wav" >"$dir/taken"
echo "inspections: $(wc -l <"$dir/taken")"
grep -o '"hive":"[^"]*"' "$dir/taken"
"$dir/voice" -notes testdata/bench/voice/walk.gold -voice "$voice" -voices 1 -noise clean -models ours

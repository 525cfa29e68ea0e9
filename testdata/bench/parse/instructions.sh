#!/usr/bin/env bash
# Counts the instructions, cache misses and mispredicted branches of one pass of
# BenchmarkParse over its megabyte of notes, with the collector of garbage off: a
# run of three passes less a run of one, halved. On a shared machine these say
# more than its clock. Needs valgrind.
set -euo pipefail
cd "$(dirname "$0")/../../../parse"

dir=$(mktemp -d)
trap 'rm -r "$dir"' EXIT
go test -c -o "$dir/parse.test" .

events() {
  GOGC=off GODEBUG=asyncpreemptoff=1 GOMAXPROCS=1 valgrind --tool=callgrind \
    --cache-sim=yes --branch-sim=yes --I1=32768,8,64 --D1=49152,12,64 --LL=2097152,16,64 \
    --callgrind-out-file="$dir/out" "$dir/parse.test" -test.run '^$' -test.bench 'Parse$' -test.benchtime "$1x" 2>&1 |
    awk '/Collected/ { print $4, $7, $8 + $9, $14 + $16 }'
}
echo "$(events 1) $(events 3)" | awk '{
  printf "%.1f M instructions, %.2f M misses of code, %.2f M of data, %.2f M branches mispredicted\n",
    ($5 - $1) / 2e6, ($6 - $2) / 2e6, ($7 - $3) / 2e6, ($8 - $4) / 2e6
}'

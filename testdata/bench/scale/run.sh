#!/usr/bin/env bash
# Compares find with SQLite FTS5 (through its own command line) and ripgrep on
# the same notes and questions, in one run: building, size, and asking, as a
# whole process and warm. Takes go, sqlite3 with FTS5, rg and hyperfine, some
# minutes, and 3 GB below the folder.
#
#   testdata/bench/scale/run.sh DIR [NOTES] [SEED]
set -euo pipefail
dir=$(realpath -m "${1:?which folder}") notes=${2:-100000} seed=${3:-1}
cd "$(dirname "$0")/../../.."
mkdir -p "$dir"
barwise=$dir/barwise corpus=$dir/corpus data=$dir/data fts=$dir/notes.db
CGO_ENABLED=0 go build -o "$barwise" ./cmd/barwise
[ -d "$corpus" ] || go run ./testdata/bench/scale -notes "$notes" -seed "$seed" -out "$corpus"
text=$(cut -f3 "$corpus/notes.tsv" | wc -c)

seconds() { # NAME COMMAND… prints how long it took and its most memory
  local name=$1; shift
  /usr/bin/time -f "%e s, %M KiB" -o "$dir/time" "$@" >"$dir/log" 2>&1 || { cat "$dir/log"; exit 1; }
  printf '%-34s %s\n' "$name" "$(cat "$dir/time")"
}
size() { du -sb "$1" | cut -f1; }

echo "== building: $notes notes, $text bytes of text"
[ -d "$data" ] || seconds "barwise take, parsed and fsynced" "$barwise" take --data "$data" "$corpus/notes"
seconds "barwise index anew" "$barwise" doctor --rebuild --data "$data"
rm -f "$fts"
cat >"$dir/build.sql" <<SQL
CREATE VIRTUAL TABLE notes USING fts5(hive UNINDEXED, day UNINDEXED, text, tokenize='porter unicode61');
.mode ascii
.separator "\t" "\n"
.import $corpus/notes.tsv notes
INSERT INTO notes(notes) VALUES('optimize');
SQL
seconds "sqlite3 FTS5 import" sqlite3 "$fts" ".read $dir/build.sql"
printf '%-34s %s bytes, %.2f x the text\n' "barwise index" "$(size "$data/index")" "$(bc -l <<<"$(size "$data/index")/$text")"
printf '%-34s %s bytes\n' "barwise store" "$(size "$data/store.db")"
printf '%-34s %s bytes, %.2f x the text\n' "sqlite3 FTS5" "$(size "$fts")" "$(bc -l <<<"$(size "$fts")/$text")"

# The questions: what find is asked, what FTS5 is asked, what ripgrep looks for.
questions=(
  "chalkbrood|chalkbrood|chalkbrood"
  "neighbour swarmed|neighbour swarmed|neighbour"
  "supersedure cells|supersedure cells|supersedure cells"
  "queen seen|queen seen|queen seen"
  "drone brood|drone brood|drone brood"
  "patchy brood hive 17|patchy brood|patchy"
)
sql() { # MATCH QUESTION: the newest twenty with their words
  local where=""
  [[ $2 == *"hive 17"* ]] && where=" AND hive='17'"
  printf "SELECT hive, day, snippet(notes,2,'[',']','…',12) FROM notes WHERE notes MATCH '%s'%s ORDER BY day DESC LIMIT 20;" "$1" "$where"
}

echo "== asking, whole process, median of 20: barwise, sqlite3, rg; and barwise to the others"
for q in "${questions[@]}"; do
  IFS='|' read -r ask match grep <<<"$q"
  where=$corpus/notes
  [[ $ask == *"hive 17"* ]] && where=$corpus/notes/keeper004
  hyperfine -N --style none --warmup 3 --runs 20 --ignore-failure --export-csv "$dir/times.csv" \
    "'$barwise' find --data '$data' $ask" \
    "sqlite3 '$fts' \"$(sql "$match" "$ask")\"" \
    "rg -i --no-messages '$grep' '$where'" >/dev/null 2>&1
  awk -F, -v ask="$ask" 'NR > 1 { n = NF; t[NR-1] = $(n-4) * 1000 }
    END { printf "%-22s %7.1f ms %7.1f ms %7.1f ms   %.2f x fts5   %.2f x rg\n", ask, t[1], t[2], t[3], t[1]/t[2], t[1]/t[3] }' "$dir/times.csv"
done

echo "== asking warm: sqlite3 in one process, the second of each"
for q in "${questions[@]}"; do
  IFS='|' read -r ask match _ <<<"$q"
  printf '%-22s ' "$ask"
  printf '.timer on\n.output /dev/null\n%s\n.output stdout\n' "$(sql "$match" "$ask")$(printf '\n')$(sql "$match" "$ask")" |
    sqlite3 "$fts" | awk '/^Run Time/ { t = $4 } END { printf "%.2f ms\n", t * 1000 }'
done
echo "== asking warm: barwise"
BARWISE_SCALE=$data go test ./cmd/barwise/command -run '^$' -bench FindWarm -benchtime 20x | grep ns/op

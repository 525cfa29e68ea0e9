package colony

import (
	"encoding/json"
	"fmt"
	"reflect"
	"testing"
)

func TestEvidence(t *testing.T) {
	var ins Inspection
	if data, err := json.Marshal(ins); err != nil || string(data) != `{"schema":""}` {
		t.Errorf("without evidence: %s, %v", data, err)
	}
	ins.Evidence.Set("queen.seen", []Span{{3, 9}})
	ins.Evidence.Set("hive", []Span{{0, 2}, {4, 5}})
	ins.Evidence.Set("queen.seen", []Span{{7, 9}})
	asMap := map[string][]Span{"queen.seen": {{7, 9}}, "hive": {{0, 2}, {4, 5}}}
	for path, want := range asMap {
		if got := ins.Evidence.Of(path); !reflect.DeepEqual(got, want) {
			t.Errorf("%s rests on %v, want %v", path, got, want)
		}
	}
	if got := ins.Evidence.Of("queen"); got != nil {
		t.Errorf("queen rests on %v", got)
	}
}

// TestEvidenceInJSON holds that evidence is written as a map of the same meaning
// would be, and read as one, be it plain or odd.
func TestEvidenceInJSON(t *testing.T) {
	for _, text := range []string{
		`{"hive":[[0,2],[4,5]],"queen.seen":[[7,9]]}`,
		`{"actions.feed#2":[[-3,9]]}`,
		`{"hive":[]}`,
		`{"hive":null}`,
		`{ "hive" : [ [ 0, 2 ] ] }`,
		`{"\"hive\u00e9\\":[[0,2]],"a<b":[[1,2]],"käfer":[[3,4]]}`,
		`{"hive":[[0,2,9]],"queen.seen":[[1]]}`,
		`{"hive":[[0,1.5]]}`,
		`{"hive":[[0,99999999999999999999]]}`,
		`{"hive":[["0",1]]}`,
		`{"hive":[[0,2]`,
		`{"hive":[[0,2]],}`,
		`{}`,
		`null`,
		`[]`,
		`7`,
	} {
		var asMap map[string][]Span
		var got Evidence
		wrong := json.Unmarshal([]byte(text), &asMap)
		if err := json.Unmarshal([]byte(text), &got); (err == nil) != (wrong == nil) {
			t.Errorf("%s: %v, want %v", text, err, wrong)
		}
		if wrong != nil {
			continue
		}
		if len(got) != len(asMap) {
			t.Errorf("%s: read as %v", text, got)
		}
		for path, want := range asMap {
			if spans := got.Of(path); fmt.Sprint(spans) != fmt.Sprint(want) {
				t.Errorf("%s: %q rests on %v", text, path, spans)
			}
			asMap[path] = append([]Span{}, want...) // none is written as an empty list
		}
		data, err := json.Marshal(got)
		if asMap == nil {
			asMap = map[string][]Span{}
		}
		if want, _ := json.Marshal(asMap); err != nil || string(data) != string(want) {
			t.Errorf("%s: written as %s, %v, want %s", text, data, err, want)
		}
	}
}

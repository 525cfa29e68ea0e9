package colony

import "time"

// Schema names the version of the record's contract that Inspection follows.
const Schema = "barwise/1"

// Inspection is one visit to one colony. Its JSON form is the contract that
// every other part of the program reads; the tags key and values describe the
// paths and are read by [Leaves], [Set] and [FieldOf].
type Inspection struct {
	Schema string `json:"schema"`
	ID     string `json:"id,omitempty"`
	Source Source `json:"source,omitzero"`

	Hive string    `json:"hive,omitempty"` // lower case, number words as digits
	At   time.Time `json:"at,omitzero"`    // when it took place

	Bars         []Bar        `json:"bars,omitempty" key:"bar"`      // in bar order
	Contents     []Content    `json:"contents,omitempty" key:"what"` // of the colony as a whole
	BroodPattern string       `json:"brood_pattern,omitempty" values:"solid patchy"`
	Queen        *Queen       `json:"queen,omitempty"`
	Queenright   *bool        `json:"queenright,omitempty"`
	QueenCells   []QueenCells `json:"queen_cells,omitempty" key:"stage"` // no bar named
	Drones       *bool        `json:"drones,omitempty"`
	Temper       *Temper      `json:"temper,omitempty"`
	Strength     *Strength    `json:"strength,omitempty"`
	Stores       *Stores      `json:"stores,omitempty"`
	Mites        *Mites       `json:"mites,omitempty"`
	Signs        []Sign       `json:"signs,omitempty" key:"sign"`
	Incoming     []Incoming   `json:"incoming,omitempty" key:"what"`
	Follower     *Follower    `json:"follower,omitempty"`
	BarsTotal    *int         `json:"bars_total,omitempty" min:"0" max:"60"`
	Feeder       string       `json:"feeder,omitempty" values:"full part empty"`
	Floor        string       `json:"floor,omitempty" values:"open closed"`
	Entrance     string       `json:"entrance,omitempty" values:"open reduced closed"`
	WeightKg     *float64     `json:"weight_kg,omitempty" min:"0" max:"300"`
	Weather      *Weather     `json:"weather,omitempty"`
	Actions      []Task       `json:"actions,omitempty" key:"do"`
	Plans        []Task       `json:"plans,omitempty" key:"do"`
	Earlier      []Event      `json:"earlier,omitempty" key:"event"`

	Remarks  []string `json:"remarks,omitempty"`
	Evidence Evidence `json:"evidence,omitempty"`
	Check    []Check  `json:"check,omitempty"`
}

// Source says where an inspection came from. It is not part of the record
// proper and holds no leaf.
type Source struct {
	Note   string `json:"note,omitempty"`    // content hash of the note
	Name   string `json:"name,omitempty"`    // the file's name as it was handed in
	Seq    int    `json:"seq,omitempty"`     // place among the note's inspections, from 1
	Parser string `json:"parser,omitempty"`  // version of the rules that read it
	AtFrom string `json:"at_from,omitempty"` // "spoken day", "spoken time", "given" or "file"
}

// Span is a half-open byte range [start, end) into the note.
type Span [2]int

// Check names a leaf that a person should look at. Alt, where given, is the
// other value that the words allow; it is offered as the alternative.
type Check struct {
	Path string `json:"path"`
	Why  string `json:"why"`
	Alt  string `json:"alt,omitempty"`
}

// Queen is what was seen of the queen today.
type Queen struct {
	Seen    *bool  `json:"seen,omitempty"`
	Bar     *int   `json:"bar,omitempty" min:"1" max:"60"`
	Marked  *bool  `json:"marked,omitempty"`
	Colour  string `json:"colour,omitempty" values:"white yellow red green blue"`
	Worn    *bool  `json:"worn,omitempty"` // the mark has faded or rubbed off
	Clipped *bool  `json:"clipped,omitempty"`
	Virgin  *bool  `json:"virgin,omitempty"`
	Year    *int   `json:"year,omitempty" min:"1990" max:"2100"` // she was raised in
}

// QueenCells are queen cells of one stage: cup (empty or play cup), charged
// (larva, egg or jelly in it, open), capped, emerged, torn (torn down) or any
// (stage not said).
type QueenCells struct {
	Stage    string `json:"stage" values:"cup charged capped emerged torn any"`
	Present  bool   `json:"present"`
	Count    *int   `json:"count,omitempty" min:"0" max:"200"`
	CountMax *int   `json:"count_max,omitempty" min:"0" max:"200"`
	Kind     string `json:"kind,omitempty" values:"swarm supersedure emergency"`
}

// Temper is the bees' behaviour. Score runs from 4 (gentle) down to 1
// (stinging).
type Temper struct {
	Score  *int  `json:"score,omitempty" min:"1" max:"4"`
	Runny  *bool `json:"runny,omitempty"`
	Stings *int  `json:"stings,omitempty" min:"0" max:"60"`
}

// Strength is the size of the colony, in a word or in bars covered with bees.
type Strength struct {
	Word       string   `json:"word,omitempty" values:"weak moderate strong"`
	BarsOfBees *float64 `json:"bars_of_bees,omitempty" min:"0" max:"60"`
}

// Stores is the food of the colony as a whole, in a word.
type Stores struct {
	Word string `json:"word,omitempty" values:"light fair heavy"`
}

// Mites is one count of varroa. Method is drop (board under a screened floor),
// wash, sugar, brood (opened drone cells) or seen (noticed on bees or comb).
type Mites struct {
	Method string `json:"method,omitempty" values:"drop wash sugar brood seen"`
	Count  *int   `json:"count,omitempty" min:"0" max:"10000"`
	Days   *int   `json:"days,omitempty" min:"1" max:"60"`
	Bees   *int   `json:"bees,omitempty" min:"10" max:"2000"`
	Cells  *int   `json:"cells,omitempty" min:"1" max:"1000"`
}

// Sign is one sign of a pest, disease or trouble, as it was seen: no diagnosis.
type Sign struct {
	Sign     string `json:"sign" values:"chalkbrood sacbrood foulbrood sunken_caps perforated_caps ropy_larva foul_smell bald_brood deformed_wings small_hive_beetle wax_moth ants wasps mice robbing dysentery laying_worker dead_bees queenless_roar bearding mould burr_comb"`
	Present  bool   `json:"present"`
	Count    *int   `json:"count,omitempty" min:"0" max:"100000"`
	CountMax *int   `json:"count_max,omitempty" min:"0" max:"100000"`
	Bar      *int   `json:"bar,omitempty" min:"1" max:"60"`
	Bars     string `json:"bars,omitempty"` // several, joined by ","
}

// Incoming is something carried in by foragers.
type Incoming struct {
	What    string `json:"what" values:"pollen nectar water propolis"`
	Present bool   `json:"present"`
	Plant   string `json:"plant,omitempty"`
	Colour  string `json:"colour,omitempty"`
}

// Follower is the follower board as found: it stands behind Bar.
type Follower struct {
	Bar *int `json:"bar,omitempty" min:"1" max:"60"`
}

// Weather at the hive. TempC is degrees Celsius.
type Weather struct {
	TempC *float64 `json:"temp_c,omitempty" min:"-40" max:"50"`
	Sky   string   `json:"sky,omitempty" values:"sunny cloudy overcast rain"`
	Wind  string   `json:"wind,omitempty" values:"calm breezy windy"`
}

// Task is a deed, done (in Actions) or to be done (in Plans).
type Task struct {
	Do        string   `json:"do" values:"add_bar remove_bar move_bar harvest feed treat mark_queen clip_queen requeen release_queen split unite cut_cells straighten trim_comb free_comb move_follower open_entrance reduce_entrance close_entrance open_floor close_floor clean_floor smoke inspect"`
	Count     *int     `json:"count,omitempty" min:"0" max:"200"`
	CountMax  *int     `json:"count_max,omitempty" min:"0" max:"200"`
	Bar       *int     `json:"bar,omitempty" min:"1" max:"60"`
	Bars      string   `json:"bars,omitempty"` // several, joined by ","
	To        *int     `json:"to,omitempty" min:"0" max:"60"`
	FromHive  string   `json:"from_hive,omitempty"`
	ToHive    string   `json:"to_hive,omitempty"`
	Direction string   `json:"direction,omitempty" values:"back forward"`
	Amount    *float64 `json:"amount,omitempty" min:"0" max:"100000"`
	Unit      string   `json:"unit,omitempty" values:"l ml kg g lb oz qt gal pt cup"`
	What      string   `json:"what,omitempty"`
	Due       Date     `json:"due,omitzero"` // plans only
}

// Event is something of an earlier day that the keeper spoke of, so no
// observation of today. Present is nil unless the event was denied.
type Event struct {
	Event    string   `json:"event" values:"queen_seen eggs_seen fed treated bar_added split swarmed requeened inspected"`
	Present  *bool    `json:"present,omitempty"`
	On       Date     `json:"on,omitzero"`
	Count    *int     `json:"count,omitempty" min:"0" max:"200"`
	CountMax *int     `json:"count_max,omitempty" min:"0" max:"200"`
	Bar      *int     `json:"bar,omitempty" min:"1" max:"60"`
	Amount   *float64 `json:"amount,omitempty" min:"0" max:"100000"`
	Unit     string   `json:"unit,omitempty" values:"l ml kg g lb oz qt gal pt cup"`
	What     string   `json:"what,omitempty"`
}

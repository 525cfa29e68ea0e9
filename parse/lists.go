package parse

import "fmt"

// list is one of the lists of words in rules/lists.toml, which the code asks
// about by name.
type list uint8

const (
	titles list = iota
	personTitles
	plainWords
	visits
	handles
	being
	plainHeadings
	noNames
	softNames
	noPlants
	ambiguousTempers
	assent
	lightWords
	ambiguousStrengths
	ambiguousSkies
	weakCombWords
	plainPraise
	notOnComb
	queenInView
	ambiguousMethods
	abbreviations
	shortForms
	yesAnswers
	noAnswers
	meetings
	openings
	namings
	namedOnes
	hiveParts
	visitLinks
	visiting
	oftenMisspelt
	speltRight
	scales
	swarming
	faring
	verdicts
	moving
	keeping
	labels
	measured
	numberSigns
	hiveDoings
	kin
	feasts
	speaking
	standing
	inOrder
	ofTwo
	placesNear
	breaths
	plantNames
	pointing
	receiving
	going

	// phrases is no list of the file: it holds what the entries of more than one
	// word begin with.
	phrases

	// What stands in the lists behind is only asked of words by number.
	looseWords
	dimensions
	oneComb
	countedOff
	combsTold
	countedOfADay
	orders
	datedDeeds
	deadlines
	aboutDays
	weekly
	barNouns
	hiveNouns
	numberedThings
	givenNames

	// The lists behind are compared with what is spelt, which is asked seldom: they make
	// no word known.
	lots
	ownBees
	shortLetters
	namedBehind
	cappedDays
	newOnes
	sizes
	covering
	weighing
	sparing
	cellSizes
	havingSeen
	dosing
	servedUp
	crossingOver
	visitNouns
	callers
	hearsay
	births
	applying
	eating
	plannedHeads
	topicWords
	larvaLooks
	goingAsFar
	comingOn
	seeingHer
	roaming
	blooms
	outOfFlower
	castingOff
	foretelling
	traces
	lettingBe
	fronting
	gettingIn
	likenesses
	degreesOfTemper
	degreesDenied
	comingThrough
	stayingBehind
	weatherTimes
	reckoning
	sitting
	detecting
	readings
	toDegrees
	offWords
	habits
	lying
	seeking
	nothingFound
	ofPeople
	besideCombs
	doingAway
	upOrUnder
	hiveMarks
	verdictAdverbs
	turnWords
	beforeDays
	goingOn
	nameHeads
	nameEpithets
	ranks
	nameAdjectives
	hiveGear
	rowPlaces
	endPlaces
	writings
	tellingOf
	behindSigns
	lookingFor
	thinking
	fetching
	sureMethods
	uniting
	walking
	concerning
	toldOneByOne
	passing
	noticing
	settingOut
	tables
	otherMouths
	excepting
	rounds
	plantsDid
	ofAir
	thatBar
	toCome
	yards
	papers
	boardVerbs
	shifting
	hefting
	tallying
	asBeesFly
	flownPast
	weatherNouns
	joiningClauses
	colonyVerbs
	betweenVerbs
	colonyLinks
	mapWords
	inSeries
	liftingLids
	goingIn
	peoples
	takenByColonies
	feelings
	wanting
	losses
	otherKeepers
	relations
	wholeOf
	labelled
	meals
	earning
	favourites
	introducing
	behindIntroduced
	ofVisits
	meaning
	waiting
	takingBack
	numberedPlaces
	givenTimes
	addressing
	keepersDo
	andSo
	beforeWhich
	legendLabels
	legendYes
	legendNo
	listCount
)

// listNames are the names of the lists in the file.
var listNames = [listCount]string{
	titles:             "titles",
	personTitles:       "person titles",
	plainWords:         "plain words",
	visits:             "visits",
	handles:            "handles",
	being:              "being",
	plainHeadings:      "headings",
	noNames:            "no names",
	softNames:          "soft names",
	goingOn:            "going on",
	nameHeads:          "heads of names",
	hiveGear:           "hive gear",
	nameEpithets:       "epithets of names",
	ranks:              "ranks",
	nameAdjectives:     "adjectives of names",
	noPlants:           "no plants",
	ambiguousTempers:   "ambiguous tempers",
	assent:             "assent",
	lightWords:         "light words",
	ambiguousStrengths: "ambiguous strengths",
	ambiguousSkies:     "ambiguous skies",
	weakCombWords:      "weak comb words",
	plainPraise:        "plain praise",
	notOnComb:          "not on a comb",
	queenInView:        "queen in view",
	ambiguousMethods:   "ambiguous methods",
	abbreviations:      "abbreviations",
	shortForms:         "short forms",
	yesAnswers:         "yes answers",
	noAnswers:          "no answers",
	meetings:           "meetings",
	openings:           "openings",
	namings:            "namings",
	namedOnes:          "named ones",
	hiveParts:          "hive parts",
	visitLinks:         "visit links",
	visiting:           "visiting",
	oftenMisspelt:      "often misspelt",
	speltRight:         "spelt right",
	faring:             "faring",
	verdicts:           "verdicts",
	moving:             "moving",
	keeping:            "keeping",
	scales:             "scales",
	swarming:           "swarming",
	labels:             "labels",
	measured:           "measured",
	numberSigns:        "number signs",
	looseWords:         "loose words",
	dimensions:         "dimensions",
	oneComb:            "one comb",
	countedOff:         "counted off",
	combsTold:          "combs told",
	takingBack:         "taking back",
	countedOfADay:      "counted behind a month",
	orders:             "orders",
	datedDeeds:         "dated deeds",
	hiveDoings:         "hive doings",
	feasts:             "feasts",
	speaking:           "speaking",
	standing:           "standing",
	inOrder:            "in order",
	ofTwo:              "of two",
	placesNear:         "places near",
	breaths:            "breaths",
	plantNames:         "plant names",
	pointing:           "pointing",
	receiving:          "receiving",
	going:              "going",
	kin:                "kin",
	deadlines:          "deadlines",
	aboutDays:          "about days",
	weekly:             "weekly",
	barNouns:           "bar nouns",
	hiveNouns:          "hive nouns",
	numberedThings:     "numbered things",
	givenNames:         "given names",
	lots:               "lots",
	ownBees:            "own bees",
	shortLetters:       "short letters",
	namedBehind:        "named behind",
	cappedDays:         "capped days",
	newOnes:            "new ones",
	sizes:              "sizes",
	covering:           "covering",
	weighing:           "weighing",
	sparing:            "sparing",
	cellSizes:          "sizes of cells",
	havingSeen:         "having seen",
	dosing:             "dosing",
	servedUp:           "served",
	crossingOver:       "crossing over",
	visitNouns:         "visit nouns",
	callers:            "callers",
	hearsay:            "hearsay",
	births:             "births",
	applying:           "applying",
	eating:             "eating",
	plannedHeads:       "planned heads",
	topicWords:         "topics",
	larvaLooks:         "looks of larvae",
	goingAsFar:         "as far as",
	comingOn:           "coming on",
	seeingHer:          "seeing",
	roaming:            "roaming",
	blooms:             "blooms",
	outOfFlower:        "out of flower",
	castingOff:         "casting",
	foretelling:        "foretelling",
	traces:             "traces",
	lettingBe:          "letting be",
	fronting:           "fronting",
	gettingIn:          "getting in",
	likenesses:         "likenesses",
	degreesOfTemper:    "degrees of temper",
	degreesDenied:      "degrees denied",
	comingThrough:      "coming through",
	stayingBehind:      "staying behind",
	weatherTimes:       "times of weather",
	reckoning:          "reckoning",
	sitting:            "sitting",
	detecting:          "detecting",
	readings:           "readings",
	toDegrees:          "to degrees",
	offWords:           "off words",
	habits:             "habits",
	lying:              "lying",
	seeking:            "seeking",
	nothingFound:       "nothing found",
	ofPeople:           "of people",
	besideCombs:        "beside combs",
	doingAway:          "doing away",
	upOrUnder:          "up or under",
	hiveMarks:          "hive marks",
	verdictAdverbs:     "verdict adverbs",
	turnWords:          "turn words",
	beforeDays:         "before days",
	rowPlaces:          "row places",
	endPlaces:          "end places",
	writings:           "writings",
	tellingOf:          "telling of",
	behindSigns:        "behind signs",
	lookingFor:         "looking for",
	thinking:           "thinking",
	fetching:           "fetching",
	sureMethods:        "sure methods",
	uniting:            "uniting",
	walking:            "walking",
	concerning:         "concerning",
	toldOneByOne:       "told one by one",
	passing:            "passing",
	noticing:           "noticing",
	settingOut:         "setting out",
	tables:             "tables",
	otherMouths:        "other mouths",
	excepting:          "excepting",
	rounds:             "rounds",
	plantsDid:          "how plants did",
	ofAir:              "of the air",
	thatBar:            "that bar",
	toCome:             "to come",
	yards:              "yards",
	labelled:           "labelled",
	keepersDo:          "keepers do",
	andSo:              "and so",
	beforeWhich:        "before which",
	legendLabels:       "legend labels",
	legendYes:          "legend yes",
	legendNo:           "legend no",
	addressing:         "addressing",
	givenTimes:         "given times",
	numberedPlaces:     "numbered places",
	introducing:        "introducing",
	behindIntroduced:   "behind introductions",
	ofVisits:           "of visits",
	meaning:            "meaning",
	waiting:            "waiting",
	earning:            "earning",
	favourites:         "favourites",
	meals:              "meals",
	papers:             "papers",
	boardVerbs:         "board verbs",
	shifting:           "shifting",
	hefting:            "hefting",
	tallying:           "tallying",
	asBeesFly:          "as bees fly",
	flownPast:          "flown past",
	weatherNouns:       "weather nouns",
	joiningClauses:     "joining clauses",
	colonyVerbs:        "colony verbs",
	betweenVerbs:       "between verbs",
	colonyLinks:        "colony links",
	mapWords:           "map words",
	inSeries:           "in series",
	liftingLids:        "lifting lids",
	goingIn:            "going in",
	peoples:            "peoples",
	takenByColonies:    "taken by colonies",
	feelings:           "feelings",
	wanting:            "wanting",
	losses:             "losses",
	otherKeepers:       "other keepers",
	relations:          "relations",
	wholeOf:            "all of",
}

// wordList is a list as the file has it: its words are those that do what Why
// says. It names phrases that are read otherwise without it and look-alikes that are
// not; a test holds both.
type wordList struct {
	Name  string   `toml:"name"`
	Why   string   `toml:"why"`
	Words []string `toml:"words"`
	Yes   []string `toml:"yes"`
	No    []string `toml:"no"`
}

// wordsOf are the words of a list in the file.
func (f *ruleFile) wordsOf(of list) []string {
	for i := range f.List {
		if f.List[i].Name == listNames[of] {
			return f.List[i].Words
		}
	}
	return nil
}

// listSet is a set of lists, a bit each.
type listSet uint64

// A list more than the bits of a listSet does not build.
const _ = uint(63 - phrases)

func (s listSet) has(of list) bool { return s>>of&1 != 0 }

// lists tells for each word in which lists it stands, until the vocabulary does.
type lists map[string]listSet

// newLists takes the lists of the files, which must be those that the code
// knows, each once.
func newLists(read []wordList) (lists, error) {
	l := lists{}
	byName := map[string]list{}
	for of, name := range listNames {
		if name != "" {
			byName[name] = list(of)
		}
	}
	var seen [listCount]bool
	for _, w := range read {
		of, ok := byName[w.Name]
		if !ok || seen[of] || len(w.Words) == 0 || w.Why == "" || len(w.Yes) == 0 || len(w.No) == 0 {
			return nil, fmt.Errorf("rules/lists.toml: list %q: unknown, twice, empty or without a why, a yes and a no", w.Name)
		}
		seen[of] = true
		if of > phrases {
			continue
		}
		for _, word := range w.Words {
			l[word] |= 1 << of
		}
	}
	for of, name := range listNames {
		if name != "" && !seen[of] {
			return nil, fmt.Errorf("rules/lists.toml: list %q is missing", name)
		}
	}
	return l, nil
}

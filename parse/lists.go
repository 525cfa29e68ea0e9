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

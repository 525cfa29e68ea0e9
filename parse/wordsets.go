package parse

// Words of plain grammar that more than one rule asks for.

// singularVerbs and pluralVerbs are the verbs by which one bar, and several, are told to be or to
// hold something: "bar four has eggs", "bars 4 and 5 hold nectar".
var (
	singularVerbs = []string{"is", "'s", "was", "has", "had", "holds", "contains", "looks"}
	pluralVerbs   = []string{"are", "were", "have", "had", "hold", "held", "contain"}
)

// presentVerbs tell how something is now: "bar four, which used to be honey, is sealed brood".
var presentVerbs = []string{"is", "are", "'s", "'re", "has", "have"}

// prepositionsOfShelter lead on to a place that is no comb: "beetles hiding under the lid".
var prepositionsOfShelter = []string{"under", "beneath", "below", "behind", "inside"}

// comparing stand before what so is no hive of one's own told by its name: "another apple hive",
// "stronger than pear hives".
var comparing = []string{"than", "like", "not", "as", "another", "every"}

// onTheBar tell that something is on the bar in hand: "she's on this one".
var onTheBar = []string{"on it", "on here", "on there", "on this one", "on that one"}

// hesitations are what speakers say while they look for a name: "then um juniper".
var hesitations = []string{"um", "uh", "er"}

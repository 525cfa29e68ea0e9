package colony

// library holds the published sources that the constants name. A standing is
// the standing of the number as it is used here, so one work may stand twice.
var library = byKey([]Reference{
	{"UCANR87", "Mussen et al. 1987, Beekeeping in California, quoted by UC ANR", Published},
	{"SEVEN", "Sevenoaks beekeepers, life cycle tables", Published},
	{"AMBEE", "americasbeekeeper.com, development table", Published},
	{"TRIBES", "Tribes beekeepers, queen-cell timings", Published},
	{"NEMNBA", "NEMN beekeepers, sealed-stage table", Published},
	{"WINSTON87", "Winston 1987, The Biology of the Honey Bee", Recalled},
	{"CHBR", "chbr.org inspection forms, what brood stages say", Published},
	{"TRUNCH1", "Trunch beekeepers, queen cells", Published},
	{"WADE22", "Wade 2022, Canberra region beekeepers", Published},
	{"CONNOR", "Connor, Colony development part I, Bee Culture", Published},
	{"MCNEIL15", "McNeil in The Hive and the Honey Bee 2015, quoted by the American Honey Producers", Quoted},
	{"WILDFLOWER", "wildflowermeadows.com, queens kept in for over three weeks lay drones only", Published},
	{"EVERSWEET", "eversweetapiaries.com, eggs within two days of the last flight", Published},
	{"BEEL05", "BEE-L 2005-10-07, cells along the bars of two top-bar hives", Published},
	{"KILLOWEN", "killowen.com, new brood two to three weeks after the virgin emerges", Published},
	{"GOODHG", "goodhoneyguide.com, when queens begin to lay", Published},
	{"AURELL25", "Aurell et al. 2025, J. Econ. Entomol., toaf126, open data on splits with queen cells", Published},
	{"MBBKA", "Mid Bucks beekeepers 2011, swarm control", Published},
	{"FATD", "fatdaddysapiary.com 2018, emergency cells", Published},
	{"EMERGENCY", "Emergency queens: a larva hatched 0 to 2 days, so 3 to 5 days from laying", Derived},
	{"SEELEY76", "Seeley and Morse 1976, Insectes Sociaux 23", Quoted},
	{"BANDASII19", "Bee space and cells of A. m. bandasii, Am. J. Life Sciences 7(3) 2019", Published},
	{"BEEB-STR", "Delaplane, van der Steen, Guzman-Novoa 2013, J. Apic. Res. 52(1)", Published},
	{"FELSER", "imker.felser.ch, estimating colonies", Published},
	{"BOA20", "bees-online.at 2020, the Liebefeld method", Published},
	{"MUEGG", "imkerei.mueggelland.de, the Liebefeld method", Published},
	{"HEXAGON", "Regular hexagon: area = (√3/2) × width²", Derived},
	{"GREGORY03", "Gregory 2003, Bees for Development Journal 66", Published},
	{"GREGORY03B", "Gregory 2003, Bees for Development Journal 68, plan of the Cameroon hive; which figure is which edge is our reading", Published},
	{"TRAPEZOID", "Trapezoid: area = (top + bottom)/2 × depth", Derived},
	{"AGROLIFE", "Agroscope, life span of honey bees", Published},
	{"AUMEIER", "Aumeier, bienenjournal.de", Published},
	{"AUMEIER2", "Aumeier, bienenjournal.de, varroa", Published},
	{"HONEYCOMB", "Comb thickness × 0.9 × 1.42 g/cm³ of honey; the filling is an assumption", Derived},
	{"HYM18", "hymenoptera.de 2018, one hive on scales", Published},
	{"QUARRY18", "quarrylifeaward.cz 2018, two hives on scales", Published},
	{"USDA-OW4", "USDA, Overwintering of honey bee colonies, part 4", Published},
	{"USDA-OW6", "USDA, Overwintering of honey bee colonies, part 6", Published},
	{"PHILDEM", "Phillips and Demuth, USDA, Wintering bees in cellars", Published},
	{"COTS", "cotswoldbees.co.uk, winter feeding", Published},
	{"UKFORUM", "Routine advice, quoted on beekeepingforum.co.uk", Quoted},
	{"PGS", "pgs-holzwickede.de, winter feeding", Published},
	{"GOLD", "imkerei-goldbluete.de, winter feeding", Published},
	{"MYBEE", "my-bee.ch 2019, winter stores", Published},
	{"EUPH-VAR", "EU Pollinator Hub, varroa sampling table, rules of plausibility", Published},
	{"BEEB-VAR", "Dietemann et al. 2013, BEEBOOK II, varroa", Published},
	{"WILSON27", "Wilson score interval; Newcombe 1998, Statistics in Medicine 17, method 3", Quoted},
	{"SEN68", "Sen 1968, J. Am. Stat. Assoc. 63", Quoted},
	{"GILBERT87", "Gilbert 1987, Statistical Methods for Environmental Pollution Monitoring", Recalled},
	{"BYAR", "Byar's approximation, tested against the exact Poisson limits", Derived},
	{"OMAFRA16", "Ontario thresholds 2016", Quoted},
	{"MSST", "Mississippi State Extension", Published},
	{"TUCSON", "USDA bee laboratory Tucson", Quoted},
	{"UFCAL", "University of Florida calendar", Quoted},
	{"HANN", "City of Hannover, mite fall sheet", Published},
	{"BUCKWE", "Beekeepers of Weser-Ems, mite fall sheet", Published},
	{"BGD", "Swiss bee health service, via bienen.li", Published},
	{"VCE", "Virginia Cooperative Extension", Quoted},
	{"DEFRA05", "Defra 2005, Managing Varroa", Quoted},
	{"DELHOOD97", "Delaplane and Hood 1997, J. Apic. Res. 36", Published},
	{"DELHOOD99", "Delaplane and Hood 1999, Apidologie 30", Published},
	{"MARTIN98", "Martin 1998, Ecological Modelling 109", Recalled},
	{"BEEL00", "BEE-L 2000-07, queen colours", Published},
	{"LAUNC", "launcestonbeekeepers.org.uk, queen colours", Published},
	{"PRACTICE", "", Practice},
})

func byKey(list []Reference) map[string]Reference {
	out := make(map[string]Reference, len(list))
	for _, r := range list {
		out[r.Key] = r
	}
	return out
}

// from looks sources up by key; a key that is not in the library is a slip in
// this package and found by its first test.
func from(keys ...string) []Reference {
	out := make([]Reference, len(keys))
	for i, key := range keys {
		r, ok := library[key]
		if !ok {
			panic("colony: no source " + key)
		}
		out[i] = r
	}
	return out
}

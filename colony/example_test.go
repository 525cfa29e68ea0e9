package colony_test

import (
	"fmt"
	"time"

	"barwise/colony"
)

// twoVisits is a colony seen with eggs and open queen cells, and a week later
// with sealed ones and no eggs.
func twoVisits() []colony.Inspection {
	first := colony.Inspection{Hive: "3", At: time.Date(2025, 5, 10, 15, 0, 0, 0, time.UTC)}
	second := colony.Inspection{Hive: "3", At: time.Date(2025, 5, 17, 15, 0, 0, 0, time.UTC)}
	for path, value := range map[string]string{"bars.4.eggs": "yes", "queen_cells.charged": "yes", "queen_cells.charged.kind": "swarm"} {
		_ = colony.Set(&first, path, value)
	}
	for path, value := range map[string]string{"contents.eggs": "no", "bars.4.capped_brood": "yes", "queen_cells.capped": "yes"} {
		_ = colony.Set(&second, path, value)
	}
	return []colony.Inspection{first, second}
}

func ExampleAppraise() {
	today := colony.Date{Year: 2025, Month: time.May, Day: 17}
	e := colony.Appraise(twoVisits(), today, colony.DefaultSettings(), nil).Queen
	fmt.Println(e.Says)
	fmt.Println("last egg", e.LastEgg.Usual)
	for _, m := range e.Calendar.Milestones {
		fmt.Printf("%-32s %s\n", m.Name, m.When.Usual)
	}
	// Output:
	// open charged queen cell seen on 10 May 2025, sealed queen cell seen on 17 May 2025: first eggs 26 May to 15 Jun 2025; act if there are none by 24 Jun 2025
	// last egg 7 to 14 May 2025
	// egg laid                         2 to 9 May 2025
	// queen cell sealed                10 to 17 May 2025
	// prime swarm, weather permitting  10 to 21 May 2025
	// queen emerges                    18 to 25 May 2025
	// casts possible                   18 to 29 May 2025
	// mating flights                   24 May to 4 Jun 2025
	// first eggs                       26 May to 15 Jun 2025
	// first sealed brood               3 to 25 Jun 2025
	// first new workers                15 Jun to 7 Jul 2025
}

func ExampleDue() {
	today := colony.Date{Year: 2025, Month: time.May, Day: 18}
	for _, d := range colony.OpenItems(colony.Due(twoVisits(), today, colony.DefaultSettings(), nil)) {
		fmt.Println(d)
	}
	// Output:
	// 2025-06-15  hive 3  look for eggs; leave the hive shut until then (open charged queen cell seen on 10 May 2025, sealed queen cell seen on 17 May 2025, first eggs 26 May to 15 Jun 2025; act if there are none by 24 Jun 2025)
}

func ExampleExplanation() {
	visits := twoVisits()[:1]
	days, mites := 5, 20
	visits[0].Mites = &colony.Mites{Method: "drop", Count: &mites, Days: &days}
	today := colony.Date{Year: 2025, Month: time.May, Day: 10}
	fmt.Println(colony.Appraise(visits, today, colony.DefaultSettings(), nil).Mites.Rate.Why)
	// Output:
	// mites dropped: 4 mites a day (2.44 to 6.18)
	//   how      mites ÷ days on the board; Poisson limits at 95 %
	//   from     mites = 20 [10 May, mites]
	//            days = 5 [10 May, mites]
	//   source   Dietemann et al. 2013, BEEBOOK II, varroa
	//            Byar's approximation, tested against the exact Poisson limits (worked out here)
	//   mind     the drop varies from day to day and with the brood that emerges; read it with the size of the colony
}

package parse

import (
	"testing"
	"time"

	"barwise/colony"
)

// TestTables reads tables in the ways in which keepers and their programs write them.
func TestTables(t *testing.T) {
	for _, c := range []struct{ name, said, want string }{
		{"quoted cells", "bar,what\n4,\"eggs, and larvae\"\n5,\"said \"\"sealed brood\"\"\"", "bars.4.eggs=yes bars.4.open_brood=yes bars.5.capped_brood=yes"},
		{"a quoted cell of two lines", "hive,notes,temper\nH2,\"eggs on bar 3\nno wasps\",calm\nH5,no eggs,edgy", "hive=2 bars.3.eggs=yes signs.wasps=no temper.score=4 / hive=5 contents.eggs=no temper.score=2"},
		{"a quotation mark that none closes", "hive,notes,temper\nH2,\"eggs on bar 3,calm\nH5,no eggs,edgy", "hive=2 bars.3.eggs=yes temper.score=4 / hive=5 contents.eggs=no temper.score=2"},
		{"semicolons without spaces", "hive;q;stores\nh4;seen b3;heavy\nh5;not seen;light", "hive=4 queen.seen=yes queen.bar=3 stores.word=heavy / hive=5 queen.seen=no stores.word=light"},
		{"tabs", "hive\tq\tkg\nAlder\tseen\t31\nMedlar\tnot seen\t22.5", "hive=alder queen.seen=yes weight_kg=31 / hive=medlar queen.seen=no weight_kg=22.5"},
		{"strokes, with dashes for nothing", "| hive | temper | stings |\n|------|--------|--------|\n| H1 | sweet | - |\n| H2 | edgy | 3 |", "hive=1 temper.score=4 / hive=2 temper.score=2 temper.stings=3"},
		{"commas with spaces", "hive, queen, eggs\nH1, seen, yes\nH2, not seen, none", "hive=1 queen.seen=yes contents.eggs=yes / hive=2 queen.seen=no contents.eggs=no"},
		{"commas that no quotes enclose", "hive,q,temper\nH1,seen b4, red dot,calm", "hive=1 queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=red temper.score=4"},
		{"cells left out at the end", "hive,eggs,temper,done\nH1,yes,calm\nH2,none", "hive=1 contents.eggs=yes temper.score=4 / hive=2 contents.eggs=no"},
		{"hives behind the day", "date,hive,eggs,temper\n3 May,H1,yes,calm\n3 May,H2,no,edgy", "hive=1 contents.eggs=yes temper.score=4 / hive=2 contents.eggs=no temper.score=2"},
		{"hives in the last column", "temper,eggs,hive\ncalm,yes,Rowan\nedgy,none,Larch", "hive=rowan temper.score=4 contents.eggs=yes / hive=larch temper.score=2 contents.eggs=no"},
		{"hives with bars", "hive,bar,brood,stores\nH1,3,eggs,honey\n,4,sealed,\nH2,3,larvae,pollen", "hive=1 bars.3.eggs=yes bars.3.honey=yes bars.4.capped_brood=yes / hive=2 bars.3.open_brood=yes bars.3.pollen=yes"},
		{"short headings", "hv,qs,e,sb,qc,str\n3,y,y,b4-b5,0,strong\n4,n,n,n,2,weak", "hive=3 queen.seen=yes contents.eggs=yes bars.4.capped_brood=yes bars.5.capped_brood=yes queen_cells.any=no strength.word=strong / hive=4 queen.seen=no contents.eggs=no contents.capped_brood=no queen_cells.any=yes queen_cells.any.count=2 strength.word=weak"},
		{"units in headings", "hive,weight (kg),temp C,seams\nH1,28,17,9", "hive=1 weight_kg=28 weather.temp_c=17 strength.bars_of_bees=9"},
		{"other units", "hive,wt lb,temp (F)\nH1,60,64", "hive=1 weight_kg=27.22 weather.temp_c=17.8"},
		{"mites", "colony,method,bees,mites,days\nH1,sugar roll,300,6,-\nH2,drop board,,15,3", "hive=1 mites.method=sugar mites.bees=300 mites.count=6 / hive=2 mites.method=drop mites.count=15 mites.days=3"},
		{"the queen in several columns", "hive,q,colour,year\nH1,seen b4,blue,2024\nH2,not seen,-,-", "hive=1 queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=blue queen.year=2024 / hive=2 queen.seen=no"},
		{"plans in a column", "hive,done,to do\nH1,fed 1 l syrup,add 2 bars on Sunday\nH2,-,split 20 May", "hive=1 actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-17 / hive=2 plans.split=yes plans.split.due=2026-05-20"},
		{"a day and the weather above", "H7,11 May,19C,overcast\nbar,comb,what\n2,drawn,honey\n3,half drawn,eggs", "hive=7 weather.temp_c=19 weather.sky=overcast bars.2.comb.drawn=1 bars.2.honey=yes bars.3.comb.drawn=0.5 bars.3.eggs=yes"},
		{"labels below", "Hive 3\nbar,what\n2,honey\n3,eggs\nfollower,behind 8\nqcs,none\nmood,edgy\ntodo,feed 1 l,Saturday", "hive=3 bars.2.honey=yes bars.3.eggs=yes follower.bar=8 queen_cells.any=no temper.score=2 plans.feed=yes plans.feed.amount=1 plans.feed.unit=l plans.feed.due=2026-05-16"},
		{"labels with hives below", "hive;temper;eggs\nH1;calm;y\nH2;edgy;n\ntodo;H1;split;20 May\nH2;to do;add a bar\nH1;no wasps", "hive=1 temper.score=4 contents.eggs=yes plans.split=yes plans.split.due=2026-05-20 signs.wasps=no / hive=2 temper.score=2 contents.eggs=no plans.add_bar=yes plans.add_bar.count=1"},
		{"labels without a table", "H4,3 May,21C\nbees,strong,9 seams\nfollower,behind 12\n3,eggs\n4-5,sealed brood,solid\ndone,fed 2 l syrup", "hive=4 weather.temp_c=21 strength.word=strong strength.bars_of_bees=9 follower.bar=12 bars.3.eggs=yes bars.4.capped_brood=yes bars.4.capped_brood.pattern=solid bars.5.capped_brood=yes bars.5.capped_brood.pattern=solid actions.feed=yes actions.feed.amount=2 actions.feed.unit=l actions.feed.what=syrup"},
		{"columns aligned by spaces", "Hive 3\n\nbar   front          back\n2     honey          pollen\n3     eggs           eggs\n4                    capped brood\n\nBar 5 half built.", "hive=3 bars.2.honey=yes bars.2.honey.side=front bars.2.pollen=yes bars.2.pollen.side=back bars.3.eggs=yes bars.3.eggs.side=both bars.4.capped_brood=yes bars.4.capped_brood.side=back bars.5.comb.drawn=0.5"},
		{"hives aligned by spaces", "hive    queen     temper\nH2      seen b4   calm\nH3                edgy", "hive=2 queen.seen=yes queen.bar=4 temper.score=4 / hive=3 temper.score=2"},
		{"two spaces in prose", "Hive 2  calm.\nQueen  seen.  Eggs on 4.", "hive=2 queen.seen=yes temper.score=4 bars.4.eggs=yes"},
		{"two tables", "hive,temper\nH1,calm\nH2,edgy\n\nhive,stores,eggs\nH1,heavy,y\nH2,light,n", "hive=1 temper.score=4 stores.word=heavy contents.eggs=yes / hive=2 temper.score=2 stores.word=light contents.eggs=no"},
		{"a table of bars for each hive", "H1\nbar,what\n2,eggs\n3,honey\nH2\nbar,what\n2,pollen", "hive=1 bars.2.eggs=yes bars.3.honey=yes / hive=2 bars.2.pollen=yes"},
		{"another heading right below", "hive,eggs,qc\nH1,y,none\nhive,kg,stores\nH1,30,heavy", "hive=1 contents.eggs=yes queen_cells.any=no weight_kg=30 stores.word=heavy"},
		{"one hive in a row", "H2\nq,eggs,temper\nseen b5,yes,calm", "hive=2 queen.seen=yes queen.bar=5 contents.eggs=yes temper.score=4"},
		{"bars counted beside hives", "hive,bars,bees on\nH1,11,8\nH2,6,5 bars", "hive=1 bars_total=11 strength.bars_of_bees=8 / hive=2 bars_total=6 strength.bars_of_bees=5"},
		{"combs beside bars", "frame;comb;brood\n2;old;eggs\n3;new;larvae", "bars.2.comb.old=yes bars.2.eggs=yes bars.3.comb.new=yes bars.3.open_brood=yes"},
		{"prose below a table", "hive,eggs,temper\nH1,y,calm\nFed them, closed the entrance, went home.", "hive=1 contents.eggs=yes temper.score=4 actions.feed=yes actions.close_entrance=yes"},
		{"sentences with commas", "Eggs, larvae, honey.\nBrood, stores, bees: all fine.", "contents.eggs=yes contents.open_brood=yes contents.honey=yes contents.brood=yes temper.score=3"},
		{"headings with a byte order mark", "\uFEFFhive,eggs,temper\r\nH1,y,calm\r\nH2,n,edgy\r\n", "hive=1 contents.eggs=yes temper.score=4 / hive=2 contents.eggs=no temper.score=2"},
	} {
		readsAs(t, c.name, c.said, c.want)
	}
}

// TestColumnPhrases holds every column to its own notes: tables are read as it says, and
// otherwise where its headings are unknown.
func TestColumnPhrases(t *testing.T) {
	p := mustNew(t)
	rules, err := loadRules()
	if err != nil {
		t.Fatal(err)
	}
	given := may14.Format(time.RFC3339)
	told := func(l colony.Leaf) bool { return l.Path != "at" || l.Value != given }
	for i := range rules.Column {
		c := &rules.Column[i]
		t.Run(c.Heads[0], func(t *testing.T) {
			var tables []string
			for _, e := range c.Yes {
				if got := leavesWith(e.Table, told); sorted(got) != sorted(e.Leaves) {
					t.Errorf("%q reads\n%s, want\n%s", e.Table, got, e.Leaves)
				}
				tables = append(tables, e.Table)
			}
			lame := changed(t, func(f *ruleFile) { f.Column[i].Heads = []string{"no such heading"} })
			holdsTo(t, p, lame, tables, c.No)
		})
	}
}

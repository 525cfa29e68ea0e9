package colony

import "time"

// Season tells the time of the bees' year. It goes by months, shifted by half
// a year south of the equator; the keeper's own climate is named in the
// settings and decides the winter target, not the months.
type Season struct {
	South bool `json:"south,omitempty" toml:"south,omitempty"`
}

// month is the month as the northern hemisphere counts it.
func (s Season) month(d Date) time.Month {
	if s.South {
		return (d.Month+5)%12 + 1
	}
	return d.Month
}

// SwarmTime reports whether colonies are apt to swarm: April to July, common
// practice.
func (s Season) SwarmTime(d Date) bool { m := s.month(d); return m >= time.April && m <= time.July }

// Active reports whether hives are opened as a routine: April to September,
// common practice.
func (s Season) Active(d Date) bool { m := s.month(d); return m >= time.April && m <= time.September }

// Preparing reports whether winter stores are being made up: August to
// October, common practice.
func (s Season) Preparing(d Date) bool {
	m := s.month(d)
	return m >= time.August && m <= time.October
}

// Storing reports whether the food in the hive is compared with what it is to
// have before winter: July to October, common practice.
func (s Season) Storing(d Date) bool {
	m := s.month(d)
	return m >= time.July && m <= time.October
}

// Wintering reports whether a colony lives on its stores: November to March,
// common practice.
func (s Season) Wintering(d Date) bool {
	m := s.month(d)
	return m >= time.November || m <= time.March
}

// seasonOf is the first day of the season, 1 April in the north, that the day
// is in, or of the next one where it is in none.
func (s Season) seasonOf(d Date) Date {
	first := Date{d.Year, d.Month, 1}
	for s.Active(first) && s.month(first) != time.April {
		first = first.AddMonths(-1)
	}
	return s.Next(first, time.April)
}

// Dry reports whether grass is apt to burn: June to September.
func (s Season) Dry(d Date) bool { m := s.month(d); return m >= time.June && m <= time.September }

// Next returns the next day, from d on, that begins the given northern month.
func (s Season) Next(d Date, m time.Month) Date {
	for i := range 13 {
		first := Date{d.Year, d.Month, 1}.AddMonths(i)
		if s.month(first) == m && first.Compare(d) >= 0 {
			return first
		}
	}
	return Date{}
}

package toml

import "time"

// Clock is a key's date and time of day. A file's times are those of the clock on
// the wall; they are kept in UTC so that no machine's zone comes in.
func (t *Table) Clock(key string) time.Time {
	value, ok := t.Get(key)
	if !ok {
		return time.Time{}
	}
	at, ok := value.(time.Time)
	switch {
	case !ok:
		t.Wrong(key, t.Doc.clockWords(), value)
	case at.Location().String() == "date-local" || at.Location().String() == "time-local":
		t.Refuse(key, "", "both a date and a time of day are needed")
	case at.Location().String() != "datetime-local":
		t.Refuse(key, "leave the time zone out: "+t.Example(key), "the time carries a time zone, a shop's files mean the clock on the wall")
	case at.Year() < 2000 || at.Year() > 2199:
		t.Refuse(key, "correct it", "the year %d is out of range: from 2000 to 2199 are accepted", at.Year())
	default:
		local, ok := InZone(at, t.Doc.Zone)
		if ok {
			return local
		}
		t.Refuse(key, "give the time an hour later", "there is no %s that day in %s: clocks go forward then", at.Format("15:04"), t.Doc.Zone)
	}
	return time.Time{}
}

// InZone is the moment at which clocks in a zone show what a time does, whatever its own
// zone; the first one where they do so twice. It is false where they never do, when clocks
// go forward.
func InZone(shown time.Time, zone *time.Location) (time.Time, bool) {
	if zone == nil {
		zone = time.UTC
	}
	local := func(at time.Time, zone *time.Location) time.Time {
		return time.Date(at.Year(), at.Month(), at.Day(), at.Hour(), at.Minute(), at.Second(), at.Nanosecond(), zone)
	}
	at := local(shown, zone)
	for _, back := range []time.Duration{2 * time.Hour, time.Hour, 30 * time.Minute} { // by how much clocks are turned
		if earlier := at.Add(-back); local(earlier, time.UTC).Equal(local(at, time.UTC)) {
			at = earlier
			break
		}
	}
	return at, local(at, time.UTC).Equal(local(shown, time.UTC))
}

package compare

import (
	"bide/plan/session"
	"bide/plan/session/planning"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// page is the page of two orders side by side. Opened while a search runs it shows what that
// finds, as soon as it has; until then Enter does nothing there, so no key changes its meaning
// under one's hands. With another order on it, what a search finds waits until the page is opened
// again.
type page struct {
	d     *pane.Shared
	of    *planning.Offer // that waited when the page was opened; nil without one
	waits bool            // for what a search finds
	other int             // which order is on the left
	at    int             // job, by its turn on the right
}

// Offered is the order that a search found and the page shows, to be accepted or
// discarded; nil where it shows none, or that one waits no more.
func (c *page) Offered() *planning.Offer {
	switch {
	case c.waiting():
		return nil
	case c.waits:
		return c.d.Offer
	case c.of != c.d.Offer:
		return nil
	}
	return c.of
}

// waiting reports whether the search that the page is to show the result of still runs.
func (c *page) waiting() bool { return c.waits && c.d.Searching.Busy }

// Help is where the keys work: there is something to accept, or not, or not yet.
func (c *page) Help() keys.Scope {
	switch {
	case c.waiting():
		return keys.OnSearching
	case c.Offered() != nil:
		return keys.OnOffer
	}
	return keys.OnCompare
}

func (c *page) Fits(s draw.Size) bool { return s.W >= 60 && s.H >= 12 }

// Sides are the orders to be compared: one of the left ones, and the right one, which is
// what was found where there is such an order.
func Sides(d *pane.Shared, o *planning.Offer) (left []Sequence, right Sequence) {
	done := d.Now.Done()
	listed, present := Sequence{name: "as listed, centred", Order: &d.Listed, done: done}, Sequence{name: "this order", Order: &d.Present, done: done}
	if d.Estimated() {
		present.name = "this order, estimate"
	}
	if o == nil {
		return []Sequence{listed}, present
	}
	return []Sequence{present, listed}, Sequence{name: "the order found", Order: &o.Order, done: done}
}

// Open shows two orders side by side.
func Open(d *pane.Shared) {
	d.Over = &page{d: d, of: d.Offer, waits: d.Offer == nil && d.Searching.Busy}
}

// HandleKey goes through the jobs, changes the order on the left, and accepts or
// discards what a search found.
func (c *page) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	found := c.Offered()
	left, right := Sides(d, found)
	c.at = (&table{right: right, at: c.at}).list(d.PageSize()).Step(a)
	switch a {
	case keys.OtherOrder:
		if c.other = (c.other + 1) % len(left); len(left) == 1 {
			return pane.Say("there are only these two orders; a search (%s) may find a third", d.KeyFor(keys.Search))
		}
	case keys.Choose:
		if found == nil {
			c.show(d, right)
			break
		}
		d.Over = nil
		return (*session.Session).Accept
	case keys.Discard:
		if found != nil {
			d.Over = nil
			return (*session.Session).Discard
		}
	case keys.Back:
		d.Over = nil
		if d.Offer != nil {
			return pane.Say("the order found is kept: %s shows it, to accept or discard", d.KeyFor(keys.CompareOrders))
		}
	}
	return nil
}

// show goes to the picked job in the panes.
func (c *page) show(d *pane.Shared, right Sequence) {
	d.Over = nil
	if c.at < len(right.Jobs) {
		d.Pick(c.at)
	}
}

// View draws the page.
func (c *page) View(d *pane.Shared) []draw.Line {
	found := c.Offered()
	left, right := Sides(d, found)
	p := table{Theme: d.Theme, left: left[c.other%len(left)], right: right, offer: found, at: c.at,
		id: d.IDWidth(), clock: d.ClockWidth(), late: d.LateWidth(), time: d.Clock, searchKey: d.KeyFor(keys.Search)}
	if now := d.Searching.Progress; now != nil {
		p.proven = now.Floor
	}
	title, body := p.View(d.PageSize())
	if c.waiting() {
		title.Add(draw.Faint, "what the search finds is shown here")
	}
	return d.Frame("Two orders", title, body, c.Help())
}

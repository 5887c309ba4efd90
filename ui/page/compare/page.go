package compare

import (
	"bide/plan/session/planning"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// Page is the page of two orders side by side. Opened while a search runs it shows what that
// finds, as soon as it has; until then Enter does nothing there, so no key changes its meaning
// under one's hands. With another order on it, what a search finds waits until the page is opened
// again.
type Page struct {
	d     *pane.Shared
	of    *planning.Offer // that waited when the page was opened; nil without one
	waits bool            // for what a search finds
	other int             // which order is on the left
	at    int             // job, by its turn on the right
}

// Offered is the order that a search found and the page shows, to be accepted or
// discarded; nil where it shows none, or that one waits no more.
func (c *Page) Offered() *planning.Offer {
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
func (c *Page) waiting() bool { return c.waits && c.d.Search.Busy() }

// Help is where the keys work: there is something to accept, or not, or not yet.
func (c *Page) Help() keys.Scope {
	switch {
	case c.waiting():
		return keys.OnSearching
	case c.Offered() != nil:
		return keys.OnOffer
	}
	return keys.OnCompare
}

func (c *Page) Fits(s draw.Size) bool { return s.W >= 60 && s.H >= 12 }

// Sides are the orders to be compared: one of the left ones, and the right one, which is
// what was found where there is such an order.
func Sides(d *pane.Shared, o *planning.Offer) (left []Sequence, right Sequence) {
	done := d.History.Now.Done()
	listed, present := Sequence{Name: "as listed, centred", Order: &d.Forecast.Listed, Done: done}, Sequence{Name: "this order", Order: &d.Forecast.Present, Done: done}
	if !d.Forecast.Present.Final {
		present.Name = "this order, estimate"
	}
	if o == nil {
		return []Sequence{listed}, present
	}
	return []Sequence{present, listed}, Sequence{Name: "the order found", Order: &o.Order, Done: done}
}

// Open shows two orders side by side. One that was found for another day is
// fitted to that of now first.
func Open(d *pane.Shared) {
	if d.Offer != nil && !d.Offer.Inputs.Same(d.Inputs()) {
		d.Refit()
		return
	}
	d.Over = &Page{d: d, of: d.Offer, waits: d.Offer == nil && d.Search.Busy()}
}

// HandleKey goes through the jobs, changes the order on the left, and accepts or
// discards what a search found.
func (c *Page) HandleKey(a keys.Action, d *pane.Shared) {
	found := c.Offered()
	left, right := Sides(d, found)
	c.at = (&Table{Right: right, At: c.at}).List(d.PageSize()).Step(a)
	switch a {
	case keys.OtherOrder:
		if c.other = (c.other + 1) % len(left); len(left) == 1 {
			d.Say("there are only these two; a search (%s) finds a third", d.KeyFor(keys.Search))
		}
	case keys.Choose:
		if found == nil {
			c.show(d, right)
			break
		}
		d.Over = nil
		d.Accept()
	case keys.Discard:
		if found != nil {
			d.Over = nil
			d.Discard()
		}
	case keys.Back:
		d.Over = nil
		if d.Offer != nil {
			d.Say("the order found is kept: %s shows it, to accept or discard", d.KeyFor(keys.CompareOrders))
		}
	}
}

// show goes to the picked job in the panes.
func (c *Page) show(d *pane.Shared, right Sequence) {
	d.Over = nil
	if c.at < len(right.Jobs) {
		d.Pick(c.at)
	}
}

// View draws the page.
func (c *Page) View(d *pane.Shared) []draw.Line {
	found := c.Offered()
	left, right := Sides(d, found)
	p := Table{Theme: d.Theme, Left: left[c.other%len(left)], Right: right, Offer: found, At: c.at,
		ID: d.IDWidth(), Clock: d.ClockWidth(), Late: d.LateWidth(), Time: d.Clock, SearchKey: d.KeyFor(keys.Search)}
	if now := d.Search.Progress(); now != nil {
		p.Floor = now.Floor
	}
	title, body := p.View(d.PageSize())
	if c.waiting() {
		title.Add(draw.Faint, "what the search finds is shown here")
	}
	return d.Frame("Two orders", title, body, c.Help())
}

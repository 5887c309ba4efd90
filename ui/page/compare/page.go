package compare

import (
	"bide/plan/session/planning"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// Page is the page of two orders side by side. An order that a search finds while it
// is open waits until the page is opened anew: no key is to change its meaning under
// one's hands.
type Page struct {
	d     *pane.Shared
	of    *planning.Offer // that waited when the page was opened; nil without one
	other int             // which order is on the left
	at    int             // job, by its turn on the right
}

// Offered is the order that a search found and the page shows, to be accepted or
// discarded; nil where it shows none, or that one waits no more.
func (c *Page) Offered() *planning.Offer {
	if c.of != c.d.Offer {
		return nil
	}
	return c.of
}

// Help is where the keys work: there is something to accept, or not.
func (c *Page) Help() keys.Scope {
	if c.Offered() != nil {
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
	d.Over = &Page{d: d, of: d.Offer}
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
			d.Say("there are only these two; a search (s) finds a third")
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
			d.Say("the order found is kept: v shows it, to accept or discard")
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
		ID: d.IDWidth(), Clock: d.ClockWidth(), Late: d.LateWidth(), Time: d.Clock}
	title, body := p.View(d.PageSize())
	return d.Frame("Two orders", title, body, c.Help())
}

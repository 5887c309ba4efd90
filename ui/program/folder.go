package program

import (
	"time"

	"bide/plan/shop/carry"
	"bide/plan/shop/start"
	"bide/plan/words"
	"bide/ui/commandline"
)

// newShop puts a shop to start from into a folder.
func (p program) newShop(dir string) int {
	if err := start.New(dir); err != nil {
		p.say("bide: %v", err)
		return exitPlan
	}
	dir = words.Clean(dir)
	return p.print([]byte(dir+" is a shop to start from: put the beam's and the day's figures into its files, then\n  bide check "+dir+"\n"), exitDone)
}

// carry makes the next day's file of what is left of a shop's day.
func (p program) carry(c commandline.Call) int {
	said, err := carry.Day(c.Operand, c.To, time.Now())
	if err != nil {
		p.say("%v", err)
		return exitPlan
	}
	return p.print([]byte(said+"\n"), exitDone)
}

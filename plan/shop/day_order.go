package shop

import "strings"

// origin tells where a job of the wanted day comes from.
type origin struct {
	job  int  // of the file, from 0; -1 is a new one
	copy bool // another job has that block already
}

// origins finds where the wanted jobs come from. Of those that name one job of the
// file, the one that still has its id is that job, or else the first; others are
// copies of it.
func origins(wanted, from, file []string) []origin {
	byID, is := map[string]int{}, map[int]int{}
	for i, id := range file {
		byID[id] = i
	}
	for i, id := range from {
		if k, ok := byID[id]; ok {
			if _, taken := is[k]; !taken || wanted[i] == id {
				is[k] = i
			}
		}
	}
	out := make([]origin, len(from))
	for i, id := range from {
		out[i] = origin{job: -1}
		if k, ok := byID[id]; ok && id != "" {
			out[i] = origin{k, is[k] != i}
		}
	}
	return out
}

// arranged is the day's text with its jobs in another order, some taken out,
// copied or new. As many jobs as can keep their order stay with what stands behind
// them; comments that stand apart stay behind the job that they stood behind, or
// the nearest before it that stays. Nothing but jobs taken out is lost.
func (d *dayText) arranged(wanted []origin) dayText {
	n := len(d.jobs)
	stays := staying(wanted, n)
	out := dayText{eol: d.eol, head: d.head}
	behind := d.behind(stays, &out.head)
	for i, o := range wanted {
		block, gap := "[[job]]"+d.eol, d.separator()
		if o.job >= 0 {
			block = d.jobs[o.job]
		}
		if o.copy {
			block = copied(block)
		}
		if o.job >= 0 && !o.copy && stays[o.job] && o.job < n-1 {
			gap = behind[o.job]
		}
		if last := i == len(wanted)-1; last && !strings.Contains(gap, "#") {
			gap = ""
		}
		out.jobs, out.gaps = append(out.jobs, block), append(out.gaps, gap)
	}
	out.close(d.tail())
	return out
}

// behind is what stands behind each job that stays. Comments behind one that goes
// are added to the nearest before it that stays, or else to the head.
func (d *dayText) behind(stays []bool, head *string) []string {
	out := make([]string, len(d.jobs))
	to := head
	for i := range len(d.jobs) - 1 {
		if stays[i] {
			out[i], to = d.gaps[i], &out[i]
		} else if strings.Contains(d.gaps[i], "#") {
			gap := d.gaps[i]
			if *to == d.eol || strings.HasSuffix(*to, d.eol+d.eol) { // one empty line is enough
				gap = strings.TrimPrefix(gap, d.eol)
			}
			*to += gap
		}
	}
	return out
}

// tail is what stands behind the last job of the file; it stays at its end.
func (d *dayText) tail() string {
	if len(d.gaps) == 0 {
		return ""
	}
	return d.gaps[len(d.gaps)-1]
}

// close ends the text with its tail, and ends lines that no longer end it.
func (d *dayText) close(tail string) {
	for i := range d.jobs {
		if i == len(d.jobs)-1 {
			d.gaps[i] += tail
		}
		if follows := i < len(d.jobs)-1 || d.gaps[i] != ""; follows && !strings.HasSuffix(d.jobs[i], "\n") {
			d.jobs[i] += d.eol
		}
	}
}

// separator is what the file puts between two jobs, an empty line where it has none.
func (d *dayText) separator() string {
	for _, gap := range d.gaps[:max(len(d.gaps)-1, 0)] {
		if gap != "" && !strings.Contains(gap, "#") {
			return gap
		}
	}
	return d.eol
}

// staying picks, of n jobs of the file, as many as can stay in the order that they
// had: a longest ascending run of those wanted. It takes time quadratic in the
// jobs, of which a day has some hundreds at most.
func staying(wanted []origin, n int) []bool {
	var at []int // jobs of the file in the order wanted
	for _, o := range wanted {
		if o.job >= 0 && !o.copy {
			at = append(at, o.job)
		}
	}
	long, before := make([]int, len(at)), make([]int, len(at))
	best := -1
	for i := range at {
		before[i] = -1
		for k := range i {
			if at[k] < at[i] && long[k] >= long[i] {
				long[i], before[i] = long[k]+1, k
			}
		}
		if best < 0 || long[i] > long[best] {
			best = i
		}
	}
	stays := make([]bool, n)
	for i := best; i >= 0; i = before[i] {
		stays[at[i]] = true
	}
	return stays
}

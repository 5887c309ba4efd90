package dayfile

import "strings"

// Origin says where a job of the wanted day comes from.
type Origin struct {
	job  int  // of the file, from 0; -1 is a new one
	copy bool // another job has that block already
}

// Origins finds where the wanted jobs come from. Of those that name one job of the
// file, the one that still has its id is that job, or else the first; others are
// copies of it.
func Origins(wanted, from, file []string) []Origin {
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
	out := make([]Origin, len(from))
	for i, id := range from {
		out[i] = Origin{job: -1}
		if k, ok := byID[id]; ok && id != "" {
			out[i] = Origin{k, is[k] != i}
		}
	}
	return out
}

// Arranged is the day's text with its jobs in another order, some taken out,
// copied or new. As many jobs as can keep their order stay with what stands behind
// them; comments that stand apart stay behind the job that they stood behind, or
// the nearest before it that stays. Nothing but jobs taken out is lost.
func (t *Text) Arranged(wanted []Origin) Text {
	n := len(t.jobs)
	stays := staying(wanted, n)
	out := Text{eol: t.eol, head: t.head}
	behind := t.behind(stays, &out.head)
	for i, o := range wanted {
		block, gap := "[[job]]"+t.eol, t.separator()
		if o.job >= 0 {
			block = t.jobs[o.job]
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
	out.close(t.tail())
	return out
}

// behind is what stands behind each job that stays. Comments behind one that goes
// are added to the nearest before it that stays, or else to the head.
func (t *Text) behind(stays []bool, head *string) []string {
	out := make([]string, len(t.jobs))
	to := head
	for i := range len(t.jobs) - 1 {
		if stays[i] {
			out[i], to = t.gaps[i], &out[i]
		} else if strings.Contains(t.gaps[i], "#") {
			gap := t.gaps[i]
			if *to == t.eol || strings.HasSuffix(*to, t.eol+t.eol) { // one empty line is enough
				gap = strings.TrimPrefix(gap, t.eol)
			}
			*to += gap
		}
	}
	return out
}

// tail is what stands behind the last job of the file; it stays at its end.
func (t *Text) tail() string {
	if len(t.gaps) == 0 {
		return ""
	}
	return t.gaps[len(t.gaps)-1]
}

// close ends the text with its tail, and ends lines that no longer end it.
func (t *Text) close(tail string) {
	for i := range t.jobs {
		if i == len(t.jobs)-1 {
			t.gaps[i] += tail
		}
		if follows := i < len(t.jobs)-1 || t.gaps[i] != ""; follows && !strings.HasSuffix(t.jobs[i], "\n") {
			t.jobs[i] += t.eol
		}
	}
}

// separator is what the file puts between two jobs, an empty line where it has none.
func (t *Text) separator() string {
	for _, gap := range t.gaps[:max(len(t.gaps)-1, 0)] {
		if gap != "" && !strings.Contains(gap, "#") {
			return gap
		}
	}
	return t.eol
}

// staying picks, of n jobs of the file, as many as can stay in the order that they
// had: a longest ascending run of those wanted. It takes time quadratic in the
// jobs, of which a day has some hundreds at most.
func staying(wanted []Origin, n int) []bool {
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

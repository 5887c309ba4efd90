package planning

// memory keeps the answers of late: those asked for since, and as many before.
// 600 answers for a beam of 140 holders take about 10 MB.
type memory struct{ young, old map[question]*Outcome }

const memorySize = 600

func (m *memory) keep(q question, o *Outcome) {
	if m.young == nil || len(m.young) >= memorySize {
		m.old, m.young = m.young, make(map[question]*Outcome, memorySize)
	}
	m.young[q] = o
}

func (m *memory) find(q question) *Outcome {
	if o := m.young[q]; o != nil {
		return o
	}
	o := m.old[q]
	if o != nil {
		m.keep(q, o)
	}
	return o
}

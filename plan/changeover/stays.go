package changeover

// staySet holds which holders stay in some or in all plans with the fewest
// repositions. What a fewest plan never does need not be looked at again when
// ties are broken.
type staySet struct {
	chain   chain
	packing packing
	mirror  Scene // the scene seen from the drive side, for counting backwards

	most   int   // stays in a fewest plan
	upTo   []int // most stays up to and with each holder, when it stays; never when it can't
	fromOn []int // most stays from each holder on, when it stays
	before []int // most stays that the holders before each allow
	must   []bool
	may    []bool
}

// count is the most holders of the scene that can stay.
func (k *staySet) count(s *Scene) (stays int, ok bool) {
	if s.Impossible {
		return 0, false
	}
	if s.plain {
		return k.chain.longest(s)
	}
	return k.packing.most(s)
}

// Find fills k for a scene; ok is false when the layout can't be set.
func (k *staySet) Find(s *Scene) (ok bool) {
	if k.most, ok = k.count(s); !ok {
		return false
	}
	n := len(s.At)
	k.upTo, k.fromOn = k.upTo[:0], k.fromOn[:0]
	for range n {
		k.upTo, k.fromOn = append(k.upTo, never), append(k.fromOn, never)
	}
	if s.plain {
		k.chain.backwards()
		for v := 1; v < len(k.chain.nodes)-1; v++ {
			h := k.chain.nodes[v].holder
			k.upTo[h], k.fromOn[h] = k.chain.best[v], k.chain.back[v]
		}
	} else {
		copy(k.upTo, k.packing.stays)
		s.mirrorTo(&k.mirror)
		k.packing.most(&k.mirror)
		for i, stays := range k.packing.stays {
			k.fromOn[n-1-i] = stays
		}
	}
	k.sort()
	return true
}

// sort fills may and must. A plan in which holder i moves has at most the stays
// that its neighbours on either side allow on their own.
func (k *staySet) sort() {
	k.may, k.must = k.may[:0], k.must[:0]
	most := 0 // stays that holders before i allow
	for i, upTo := range k.upTo {
		k.may = append(k.may, upTo+k.fromOn[i]-1 == k.most)
		k.before = append(k.before[:i], most)
		most = max(most, upTo)
	}
	k.must = append(k.must, k.may...)
	most = 0
	for i := len(k.upTo) - 1; i >= 0; i-- {
		k.must[i] = k.before[i]+most < k.most
		most = max(most, k.fromOn[i])
	}
}

// Loose fills k for a scene in which any holder may move or stay.
func (k *staySet) Loose(s *Scene) {
	k.may, k.must = k.may[:0], k.must[:0]
	for i, c := range s.condition {
		k.may = append(k.may, s.stays[i].can)
		k.must = append(k.must, !c.Moves())
	}
}

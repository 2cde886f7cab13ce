package drawing

import (
	"cmp"
	"math"
	"slices"

	"slotwright/winding/layout"
)

// net is coil ends joined with each other, and the leads that come out of them.
type net struct {
	id         string
	set, phase int
	// tails is the x of its ends on the strip, going up from 0.
	tails []float64
	// from and to is the extent of the track; to is beyond the strip where it passes the seam. track is
	// its number, -1 for a net of one end.
	from, to float64
	track    int
	// kind orders the tracks: joins lowest, then circuits brought together, then nodes.
	kind int
	// leads are those of the net; name is that of a node.
	leads []netLead
	name  string
}

// netLead is a lead of a net: where it begins, and whether a cable comes out.
type netLead struct {
	layout.Lead
	at []float64
}

const (
	joinNet = iota
	leadNet
	nodeNet
)

// makeNets collects what is joined and gives every net its track.
func (u *unroll) makeNets() {
	for i, j := range u.wiring.Joins {
		c := u.coils[u.byCoil[j.From.Coil]]
		u.nets = append(u.nets, net{id: idOf("join", i+1), set: c.Set, phase: c.Phase,
			tails: []float64{u.tailOf(j.From), u.tailOf(j.To)}, kind: joinNet})
	}
	inNode := map[string]bool{}
	for i, n := range u.wiring.Nodes {
		node := net{id: idOf("node", i+1), set: n.Set, phase: -1, kind: nodeNet, name: n.Name}
		for _, name := range n.Leads {
			node.add(u.leadNamed(name))
			inNode[name] = true
		}
		u.nets = append(u.nets, node)
	}
	for i, l := range u.wiring.Leads {
		if !inNode[l.Name] {
			n := net{id: idOf("circuits", i+1), set: l.Set, phase: l.Phase, kind: leadNet}
			n.add(u.leadNamed(l.Name))
			u.nets = append(u.nets, n)
		}
	}
	u.assignTracks()
}

// tailOf is the place of a coil's end on the strip.
func (u *unroll) tailOf(e layout.EndRef) float64 {
	return wrapped(u.coils[u.byCoil[e.Coil]].tail(e.End), u.length())
}

// wrapped wraps x onto a strip.
func wrapped(x, length float64) float64 {
	x = math.Mod(x, length)
	if x < 0 {
		x += length
	}
	return x
}

// leadNamed finds a lead and its ends.
func (u *unroll) leadNamed(name string) netLead {
	i := slices.IndexFunc(u.wiring.Leads, func(l layout.Lead) bool { return l.Name == name })
	l := netLead{Lead: u.wiring.Leads[i]}
	for _, e := range l.Ends {
		l.at = append(l.at, u.tailOf(e))
	}
	return l
}

func (n *net) add(l netLead) {
	n.leads = append(n.leads, l)
	n.tails = append(n.tails, l.at...)
}

// stretch is the shortest interval of the strip that contains all of a net's tails: the strip without
// the widest gap between neighbours.
func (n *net) stretch(length float64) {
	xs := slices.Sorted(slices.Values(n.tails))
	last := len(xs) - 1
	n.from, n.to = xs[0], xs[last]
	widest := xs[0] + length - xs[last]
	for i := range last {
		if gap := xs[i+1] - xs[i]; gap > widest+1e-9 {
			widest, n.from, n.to = gap, xs[i+1], xs[i]+length
		}
	}
}

// assignTracks gives each net the lowest track of its kind that is free there, short nets first: then
// few lines cross.
func (u *unroll) assignTracks() {
	order := make([]*net, 0, len(u.nets))
	for i := range u.nets {
		n := &u.nets[i]
		n.track = -1
		n.stretch(u.length())
		if len(n.tails) > 1 {
			order = append(order, n)
		}
	}
	slices.SortStableFunc(order, func(a, b *net) int {
		return cmp.Or(cmp.Compare(a.kind, b.kind), cmp.Compare(math.Round(1e6*(a.to-a.from)), math.Round(1e6*(b.to-b.from))))
	})
	var tracks [][]*net
	base, kind := 0, joinNet
	for _, n := range order {
		if n.kind != kind {
			kind, base = n.kind, len(tracks)
		}
		if n.kind == nodeNet {
			// A node's track has an empty one above it for the names of its ends.
			tracks = append(tracks, []*net{n}, nil)
			n.track = len(tracks) - 2
			continue
		}
		for n.track = base; n.track < len(tracks) && u.busy(tracks[n.track], n); n.track++ {
		}
		if n.track == len(tracks) {
			tracks = append(tracks, nil)
		}
		tracks[n.track] = append(tracks[n.track], n)
	}
	u.tracks = len(tracks)
}

// busy reports whether a net overlaps one already on the track.
func (u *unroll) busy(track []*net, n *net) bool {
	air := 0.15 * u.pitch
	for _, o := range track {
		for _, turn := range []float64{-u.length(), 0, u.length()} {
			if n.from < o.to+turn+air && o.from+turn < n.to+air {
				return true
			}
		}
	}
	return false
}

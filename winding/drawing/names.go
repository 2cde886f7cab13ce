package drawing

import (
	"fmt"
	"slices"
	"strings"
)

// namesOf sets the names of a net's leads and of the node itself.
func (v *view) namesOf(n *net) {
	for _, l := range n.leads {
		for i, x := range l.at {
			w := words{text: l.Name, size: 2.8}
			if i == 0 {
				w.id = "lead-" + l.Name
			}
			at, here := v.spot(x, v.track(n.track))
			switch {
			case !here || l.Out && i > 0:
			case l.Out:
				at.y = v.leadY
				v.page.ring(point{at.x, at.y - 0.8}, 0.8, thin, "white")
				w.size, w.bold = 3.4, true
				v.name(w, nameAbove(point{at.x, at.y - 1.8}, w.size))
			default:
				w.plate = true
				v.name(w, nameAbove(point{at.x, at.y - 1}, w.size))
			}
		}
	}
	if n.name != "" {
		v.nodeName(n)
	}
}

// nodeName writes a node's name over the middle of its track, or where there is room, on every page
// that shows part of it.
func (v *view) nodeName(n *net) {
	name := n.name
	if v.plan.Spec().Sets > 1 && !strings.HasPrefix(name, "delta") {
		name = fmt.Sprintf("%s of set %d", name, n.set+1)
	}
	w := words{text: name, size: 2.6, plate: true}
	var places []words
	const tries = 80
	for i := range 2 * tries { // along the track, then along a second row
		row, step := 2.4+4.6*float64(i/tries), i%tries
		aside := float64((step+1)/2) / tries * float64(1-2*(step%2))
		if at, here := v.spot(n.from+(n.to-n.from)*(0.5+aside), v.track(n.track)-row); here {
			places = append(places, words{at: at, anchor: centred})
		}
	}
	if at, here := v.spot(n.tails[0], v.track(n.track)-2.4); here {
		w.id = "name-" + n.id
		for step := range tries {
			d := float64(step) * 1.5
			places = append(places, words{at: point{at.x + d, at.y}, anchor: fromLeft}, words{at: point{at.x - d, at.y}, anchor: toRight})
		}
	}
	v.name(w, places)
}

// name sets a name at the first free place.
func (v *view) name(w words, places []words) {
	if at, ok := v.names.try(w, slices.Values(places)); ok {
		v.page.say(at)
	}
}

// nameAbove is places for a name over a point, then to either side, then higher.
func nameAbove(at point, size float64) []words {
	up := halfLine*size + clearOf
	var places []words
	for row := range 3 {
		y := at.y - up - float64(row)*1.4*size
		places = append(places, words{at: point{at.x, y}, anchor: centred},
			words{at: point{at.x + 1, y}, anchor: fromLeft}, words{at: point{at.x - 1, y}, anchor: toRight},
			words{at: point{at.x + 2, y}, anchor: centred}, words{at: point{at.x - 2, y}, anchor: centred},
			words{at: point{at.x + 0.5, y}, anchor: fromLeft}, words{at: point{at.x - 0.5, y}, anchor: toRight})
	}
	return places
}

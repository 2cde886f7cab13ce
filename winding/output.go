package winding

import (
	"fmt"
	"reflect"
	"strings"

	"slotwright/winding/quantity"
)

// The tables find their fields by their JSON keys once, at the start; a line without a field is a
// programming error and panics.
var (
	trialByID   = bind(reflect.TypeFor[TrialOutcome](), trialOutputs)
	machineByID = bind(reflect.TypeFor[MachineOutcome](), machineOutputs)
	pointByID   = bind(reflect.TypeFor[RunPoint](), pointOutputs)
)

// bind finds the field of each line, and indexes the lines by id.
func bind(t reflect.Type, table []Output) map[string]*Output {
	paths := map[string][]int{}
	keys(t, "", nil, func(id string, path []int, _ reflect.Type) { paths[id] = path })
	byID := map[string]*Output{}
	for i := range table {
		o := &table[i]
		path, ok := paths[o.ID]
		if !ok || byID[o.ID] != nil {
			panic(fmt.Sprintf("winding: the table of figures has %q, %s has not", o.ID, t.Name()))
		}
		o.path, byID[o.ID] = path, o
	}
	return byID
}

var figureType = reflect.TypeFor[quantity.Figure]()

// keys walks the figures and plain numbers of a struct with their JSON keys.
func keys(t reflect.Type, under string, at []int, found func(id string, path []int, t reflect.Type)) {
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		path := append(append([]int{}, at...), i)
		switch {
		case !f.IsExported():
		case f.Anonymous:
			keys(f.Type, under, path, found)
		case f.Type == figureType || f.Type.Kind() == reflect.Float64:
			found(under+name, path, f.Type)
		case f.Type.Kind() == reflect.Struct:
			keys(f.Type, under+name+".", path, found)
		}
	}
}

// Outputs is the description of every figure of a trial, in the order a rewinder asks.
func Outputs() []Output { return trialOutputs }

// MachineOutputs is that of every figure no trial changes.
func MachineOutputs() []Output { return machineOutputs }

// PointOutputs is that of everything at one speed.
func PointOutputs() []Output { return pointOutputs }

// OutputOf describes a figure of a trial. An id that is not in the table is a programming error, and
// panics.
func OutputOf(id string) *Output { return must(trialByID, id) }

// MachineOutputOf describes a figure that no trial changes; see [OutputOf].
func MachineOutputOf(id string) *Output { return must(machineByID, id) }

// PointOutputOf describes a number at one speed; see [OutputOf].
func PointOutputOf(id string) *Output { return must(pointByID, id) }

func must(byID map[string]*Output, id string) *Output {
	o := byID[id]
	if o == nil {
		panic("winding: no figure is called " + id)
	}
	return o
}

// Of is the figure in a trial.
func (o *Output) Of(t *TrialOutcome) quantity.Figure { return *o.at(t) }

// at is the figure's address in a trial.
func (o *Output) at(t *TrialOutcome) *quantity.Figure {
	return reflect.ValueOf(t).Elem().FieldByIndex(o.path).Addr().Interface().(*quantity.Figure)
}

// OfMachine is the figure in what no trial changes.
func (o *Output) OfMachine(m *MachineOutcome) quantity.Figure { return *o.atMachine(m) }

func (o *Output) atMachine(m *MachineOutcome) *quantity.Figure {
	return reflect.ValueOf(m).Elem().FieldByIndex(o.path).Addr().Interface().(*quantity.Figure)
}

// AtPoint is the number at one speed.
func (o *Output) AtPoint(p *RunPoint) float64 {
	return reflect.ValueOf(p).Elem().FieldByIndex(o.path).Float()
}

// Past reports whether a trial's figure is known and over its limit, or belongs to a winding that
// cannot be wound.
func (o *Output) Past(all *Outcome, t *TrialOutcome) bool {
	return o.Of(t).Known() && (o.past != nil && o.past(all, t) || o.Runs && !t.Fits())
}

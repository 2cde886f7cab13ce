package tuitest

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// Snapshot writes out everything a value holds, including unexported fields and what pointers point to,
// so that a test can tell whether something in it has changed. For pointers to types outside the
// screen's packages only the address is written.
func Snapshot(v any) string {
	var b strings.Builder
	snapshot(&b, reflect.ValueOf(v), map[uintptr]bool{})
	return b.String()
}

func snapshot(b *strings.Builder, v reflect.Value, seen map[uintptr]bool) {
	switch v.Kind() {
	case reflect.Invalid:
		b.WriteString("nil")
	case reflect.Interface:
		snapshot(b, v.Elem(), seen)
	case reflect.Pointer:
		if v.IsNil() || seen[v.Pointer()] || !strings.Contains(v.Type().Elem().PkgPath(), "/tui") {
			fmt.Fprintf(b, "%#x", v.Pointer())
			return
		}
		seen[v.Pointer()] = true
		snapshot(b, v.Elem(), seen)
	case reflect.Struct:
		for i, head := range headsOf(v.Type()) {
			b.WriteString(head)
			snapshot(b, v.Field(i), seen)
		}
	case reflect.Slice, reflect.Array:
		fmt.Fprintf(b, "[%d:", v.Len())
		for i := range v.Len() {
			snapshot(b, v.Index(i), seen)
			b.WriteString(" ")
		}
		b.WriteString("]")
	case reflect.Map:
		snapshotMap(b, v, seen)
	case reflect.Func, reflect.Chan:
		fmt.Fprintf(b, "%s %t", v.Type(), v.IsNil())
	case reflect.String: // far the most often there is; its length tells it from what follows
		b.WriteString(strconv.Itoa(v.Len()) + " " + v.String())
	case reflect.Bool:
		b.WriteString(strconv.FormatBool(v.Bool()))
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		b.WriteString(strconv.FormatInt(v.Int(), 10))
	default:
		fmt.Fprintf(b, "%#v", v)
	}
}

// heads are what is written before the fields of each type of struct; names cost more than values.
var heads sync.Map

func headsOf(t reflect.Type) []string {
	if known, ok := heads.Load(t); ok {
		return known.([]string)
	}
	list := make([]string, t.NumField())
	for i := range list {
		list[i] = "\n" + t.Name() + "." + t.Field(i).Name + "="
	}
	heads.Store(t, list)
	return list
}

func snapshotMap(b *strings.Builder, v reflect.Value, seen map[uintptr]bool) {
	keys := v.MapKeys()
	slices.SortFunc(keys, func(x, y reflect.Value) int { return strings.Compare(fmt.Sprint(x), fmt.Sprint(y)) })
	for _, k := range keys {
		fmt.Fprintf(b, " %v:", k)
		snapshot(b, v.MapIndex(k), seen)
	}
}

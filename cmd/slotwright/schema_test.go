package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/drive"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"
	"slotwright/wiretable"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// answers is the type of each verb's answer in JSON, and of the one on failure.
var answers = map[string]reflect.Type{
	"report": reflect.TypeFor[reported](), "card": reflect.TypeFor[carded](), "check": reflect.TypeFor[checked](),
	"wire": reflect.TypeFor[wiretable.Description](), "layout": reflect.TypeFor[laidOut](), "new": reflect.TypeFor[written](),
	"shelf": reflect.TypeFor[shelved](), "draw": reflect.TypeFor[drawn](),
	"problems": reflect.TypeFor[failed](),
}

func schemaPath(verb string) string { return filepath.Join("../../testdata/schema", verb+".json") }

// The schemas are generated from the types of the answers, with the words of the table of figures;
// -update regenerates them. A key that is added or removed shows as a change of a file, a reminder to
// think of those who read it.
func TestSchemasAreThoseOfTheAnswers(t *testing.T) {
	for verb, of := range answers {
		s := schemer{t: t, defs: object{}}
		root := s.of(of, "")
		if ref, ok := root["$ref"].(string); ok {
			root = s.defs[strings.TrimPrefix(ref, "#/$defs/")].(object)
			delete(s.defs, strings.TrimPrefix(ref, "#/$defs/"))
		}
		root["$schema"], root["title"] = "https://json-schema.org/draft/2020-12/schema", "slotwright "+verb+" --json"
		root["properties"].(object)["format"] = object{"const": jsonFormat, "description": "Counts the shapes that answers have had."}
		root["required"] = append([]string{"format"}, root["required"].([]string)...)
		root["$defs"] = s.defs
		var b bytes.Buffer
		e := json.NewEncoder(&b)
		e.SetEscapeHTML(false)
		e.SetIndent("", "  ")
		require.NoError(t, e.Encode(root))
		if *update {
			require.NoError(t, os.MkdirAll(filepath.Dir(schemaPath(verb)), 0o755))
			require.NoError(t, os.WriteFile(schemaPath(verb), b.Bytes(), 0o600))
			continue
		}
		want, err := os.ReadFile(schemaPath(verb))
		require.NoError(t, err)
		assert.Equal(t, strings.ReplaceAll(string(want), "\r\n", "\n"), b.String(), verb)
	}
}

// schema reads a schema as a reader of the answers would.
func schema(t *testing.T, verb string) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	s, err := c.Compile(schemaPath(verb))
	require.NoError(t, err)
	return s
}

type object = map[string]any

// schemer writes the schema of a type; named structs go into defs.
type schemer struct {
	t    *testing.T
	defs object
}

// words are the types that take one of a few words.
var words = map[reflect.Type][]string{
	reflect.TypeFor[winding.Severity]():  {"note", "doubt", "broken"},
	reflect.TypeFor[winding.Verdict]():   {"same", "better", "worse", "past the limit"},
	reflect.TypeFor[layout.Connection](): {"star", "delta"},
	reflect.TypeFor[drive.Region](): {string(drive.Still), string(drive.Idling), string(drive.Charging), string(drive.Stalled),
		string(drive.Runaway), string(winding.Overload)},
}

// nameOf is a type's name here, with what its package says of it: a schema has no packages.
func nameOf(t reflect.Type) string {
	if t == reflect.TypeFor[wound.Record]() {
		return "WoundOutcome"
	}
	return t.Name()
}

// orNull are the keys that are null when their number is unknown.
var orNull = map[string]bool{"RunPoint.winding_c": true, "Operating.winding_c": true, "DrivePoint.winding_c": true, "FieldPoint.hold_field_a": true}

// of is the schema of a type; under is the path of keys to it from the table's own root.
func (s *schemer) of(t reflect.Type, under string) object {
	if list := words[t]; list != nil {
		return object{"enum": list}
	}
	switch t.Kind() {
	case reflect.Pointer:
		return s.of(t.Elem(), under)
	case reflect.Bool:
		return object{"type": "boolean"}
	case reflect.String:
		return object{"type": "string"}
	case reflect.Int:
		return object{"type": "integer"}
	case reflect.Float64:
		return object{"type": "number"}
	case reflect.Slice:
		return object{"type": "array", "items": s.of(t.Elem(), "")}
	case reflect.Map:
		return object{"type": "object", "additionalProperties": s.of(t.Elem(), "")}
	case reflect.Struct:
		return s.ref(t, under)
	}
	s.t.Fatalf("no schema for %v", t)
	return nil
}

// ref adds a struct to the definitions.
func (s *schemer) ref(t reflect.Type, under string) object {
	name := strings.ReplaceAll(under, ".", "_") + strings.ToLower(nameOf(t)[:1]) + nameOf(t)[1:]
	if s.defs[name] == nil {
		s.defs[name] = object{} // for one that holds its own kind
		if t == reflect.TypeFor[quantity.Figure]() {
			s.defs[name] = figureSchema()
		} else {
			s.defs[name] = s.fields(t, under)
		}
	}
	return object{"$ref": "#/$defs/" + name}
}

// figureSchema is a number with where it is from, or none with a reason.
func figureSchema() object {
	shape := func(required []string, properties object) object {
		return object{"type": "object", "additionalProperties": false, "required": required, "properties": properties}
	}
	why := object{"type": "string", "minLength": 1}
	return object{"oneOf": []object{
		shape([]string{"value", "from"}, object{
			"value":      object{"type": "number"},
			"plus_minus": object{"type": "number", "exclusiveMinimum": 0, "description": "How far it may be off, in the same unit, by the tolerances given."},
			"from": object{"enum": []string{"measured", "derived", "guessed", "default", "planned"},
				"description": "Measured: as it was given. Derived: worked out from what was measured. Guessed: given as a guess, or one weighs in it. Default: nobody gave it. Planned: turns that are meant to be wound."},
			"why": why,
		}),
		shape([]string{"value", "why"}, object{"value": object{"type": "null"}, "why": why}),
	}}
}

// fields is the object of a struct.
func (s *schemer) fields(t reflect.Type, under string) object {
	properties, required := object{}, []string{}
	for _, f := range reflect.VisibleFields(t) {
		key, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if !f.IsExported() || f.Anonymous || key == "-" {
			continue
		}
		if key == "" {
			s.t.Errorf("%v.%s: a field of an answer without a key", t, f.Name)
			continue
		}
		of, child := f.Type, ""
		if t == reflect.TypeFor[winding.TrialOutcome]() && of != reflect.TypeFor[quantity.Figure]() {
			child = under + key + "." // the table goes on within
		}
		p := s.of(of, child)
		if orNull[t.Name()+"."+key] {
			p["type"] = []string{"number", "null"}
		}
		if of.Kind() == reflect.String && options == "omitempty" && words[of] == nil {
			p["minLength"] = 1
		}
		p["description"] = describe(s.t, t, under, key)
		properties[key] = p
		if options == "" && !throughPointer(t, f.Index) {
			required = append(required, key)
		}
	}
	return object{"type": "object", "additionalProperties": false, "properties": properties, "required": required}
}

// throughPointer reports whether a promoted field may be wholly absent.
func throughPointer(t reflect.Type, index []int) bool {
	for _, i := range index[:len(index)-1] {
		f := t.Field(i)
		if f.Type.Kind() == reflect.Pointer {
			return true
		}
		t = f.Type
	}
	return false
}

// describe is the meaning of a key: from the list here if it has an entry for the type, from the table
// of figures, else from the list for every type.
func describe(t *testing.T, of reflect.Type, under, key string) string {
	if d := keyWords[nameOf(of)+"."+key]; d != "" {
		return d
	}
	for _, o := range tableOf(of) {
		switch {
		case o.ID != under+key:
		case o.Dim[0].Name == "" || o.Dim[0].Base(1) != 1: // a plain number or a fraction
			return o.Meaning
		default:
			return o.Meaning + " [" + o.Dim[0].Name + "]"
		}
	}
	if d := keyWords[key]; d != "" {
		return d
	}
	t.Errorf("%s.%s: a key without a description", of.Name(), under+key)
	return ""
}

func tableOf(t reflect.Type) []winding.Output {
	switch t {
	case reflect.TypeFor[winding.TrialOutcome](), reflect.TypeFor[winding.Brake](), reflect.TypeFor[winding.Ratios]():
		return winding.Outputs()
	case reflect.TypeFor[winding.MachineOutcome]():
		return winding.MachineOutputs()
	case reflect.TypeFor[winding.RunPoint](), reflect.TypeFor[winding.Operating](), reflect.TypeFor[winding.DrivePoint]():
		return winding.PointOutputs()
	}
	return nil
}

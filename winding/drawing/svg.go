package drawing

import (
	"encoding/xml"
	"strconv"
	"strings"
)

// The elements of a page, as encoding/xml writes them. Looks are attributes, not a style sheet: every
// viewer and every cutting program reads those.

type document struct {
	XMLName xml.Name `xml:"http://www.w3.org/2000/svg svg"`
	Width   string   `xml:"width,attr"`
	Height  string   `xml:"height,attr"`
	ViewBox string   `xml:"viewBox,attr"`
	Title   string   `xml:"title"`
	Desc    string   `xml:"desc"`
	Ground  rectElement
	Drawing group
}

type group struct {
	XMLName xml.Name `xml:"g"`
	Font    string   `xml:"font-family,attr"`
	Fill    string   `xml:"fill,attr"`
	Stroke  string   `xml:"stroke,attr"`
	Cap     string   `xml:"stroke-linecap,attr"`
	Join    string   `xml:"stroke-linejoin,attr"`
	Parts   []any
}

type rectElement struct {
	XMLName xml.Name `xml:"rect"`
	X       number   `xml:"x,attr"`
	Y       number   `xml:"y,attr"`
	Width   number   `xml:"width,attr"`
	Height  number   `xml:"height,attr"`
	Fill    string   `xml:"fill,attr"`
	Stroke  string   `xml:"stroke,attr"`
	Line    number   `xml:"stroke-width,attr"`
}

type pathElement struct {
	XMLName xml.Name `xml:"path"`
	ID      string   `xml:"id,attr,omitempty"`
	Class   string   `xml:"class,attr,omitempty"`
	D       string   `xml:"d,attr"`
	Width   number   `xml:"stroke-width,attr"`
	Dash    string   `xml:"stroke-dasharray,attr,omitempty"`
	Fill    string   `xml:"fill,attr,omitempty"`
}

type circleElement struct {
	XMLName xml.Name `xml:"circle"`
	X       number   `xml:"cx,attr"`
	Y       number   `xml:"cy,attr"`
	R       number   `xml:"r,attr"`
	Width   number   `xml:"stroke-width,attr"`
	Fill    string   `xml:"fill,attr,omitempty"`
}

type textElement struct {
	XMLName xml.Name `xml:"text"`
	ID      string   `xml:"id,attr,omitempty"`
	X       number   `xml:"x,attr"`
	Y       number   `xml:"y,attr"`
	Size    number   `xml:"font-size,attr"`
	Weight  string   `xml:"font-weight,attr,omitempty"`
	Anchor  string   `xml:"text-anchor,attr,omitempty"`
	Fill    string   `xml:"fill,attr"`
	Stroke  string   `xml:"stroke,attr"`
	// Length and Adjust make the viewer fit the text to a width, for letters that the tables do not
	// have.
	Length string `xml:"textLength,attr,omitempty"`
	Adjust string `xml:"lengthAdjust,attr,omitempty"`
	Words  string `xml:",chardata"`
}

// number is a length in mm, written to a hundredth.
type number float64

// MarshalXMLAttr writes it without trailing zeros.
func (n number) MarshalXMLAttr(name xml.Name) (xml.Attr, error) {
	return xml.Attr{Name: name, Value: mm(float64(n))}, nil
}

func mm(v float64) string {
	s := strconv.FormatFloat(v, 'f', 2, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// bytesPerPart is the approximate size of an element in a file.
const bytesPerPart = 160

// SVG is the page as a file. Its error is one of encoding/xml, which has none for anything a page
// contains.
func (p *Page) SVG() (string, error) {
	size := p.paper
	d := document{
		Width: mm(size.Width) + "mm", Height: mm(size.Height) + "mm", ViewBox: "0 0 " + mm(size.Width) + " " + mm(size.Height),
		Title: p.title, Desc: Signature,
		Ground:  rectElement{Width: number(size.Width), Height: number(size.Height), Fill: "white", Stroke: "none"},
		Drawing: group{Font: "sans-serif", Fill: "none", Stroke: "black", Cap: "butt", Join: "round", Parts: p.elements()},
	}
	var out strings.Builder // some hundred kilobytes, written once
	out.Grow(bytesPerPart * len(p.parts))
	out.WriteString(xml.Header)
	e := xml.NewEncoder(&out)
	e.Indent("", " ")
	err := e.Encode(d)
	out.WriteString("\n")
	return out.String(), err
}

// Signature is the words that identify a file as a page of this package.
const Signature = "A drawing by slotwright: a design estimate, not a rating."

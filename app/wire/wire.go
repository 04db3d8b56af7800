// Package wire writes Go values as bytes and reads them again, for two instances of
// the same program: what the page of a browser asks its worker to do, and what the
// worker answers.
//
// All fields are sent, including the unexported ones of other packages, since a
// result that lacks one is a different result. It is therefore not a file format:
// the bytes begin with a checksum of all types in them, and a program with other
// types refuses them.
//
// Floating-point numbers are sent bit by bit, nil and empty slices stay what they
// are, and what two pointers share stays shared. Functions, interfaces and
// channels cannot be sent; Write says so.
//
// # Form
//
// The sum of the types in 8 bytes, then the value, depth first in the order of
// fields. A float64 is its 8 bytes (IEEE 754, little end first), a whole number is
// a varint (Protocol Buffers' zigzag, or plain where it has no sign), a bool is a
// byte, a text is its length and bytes. A slice or map is 0 for nil, or 1 more than
// its length, and its elements; a map's are in order of its keys. A pointer is 0 for
// nil, 1 and what it points to, or 2 and more for the one that came so many before.
// A time is the text of its binary form (time.Time.MarshalBinary).
package wire

import (
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"reflect"
	"time"
)

var timeType = reflect.TypeFor[time.Time]()

// ErrOther is returned by Read for bytes of a program with other types.
var ErrOther = errors.New("written by another version of this program")

// sum is made of the names and kinds of a type and of all types in it.
func sum(t reflect.Type) uint64 {
	h := fnv.New64a()
	seen := map[reflect.Type]bool{}
	var add func(reflect.Type)
	add = func(t reflect.Type) {
		fmt.Fprintf(h, "%s %s;", t, t.Kind())
		if seen[t] || t == timeType {
			return
		}
		seen[t] = true
		switch t.Kind() {
		case reflect.Struct:
			for i := range t.NumField() {
				io.WriteString(h, t.Field(i).Name+" ")
				add(t.Field(i).Type)
			}
		case reflect.Map:
			add(t.Key())
			add(t.Elem())
		case reflect.Slice, reflect.Array, reflect.Pointer:
			add(t.Elem())
		}
	}
	add(t)
	return h.Sum64()
}

// shapes caches what is asked repeatedly about types.
type shapes map[reflect.Type]shape

type shape struct {
	floats int // number of float64 that it consists of; 0: it has other fields
	least  int // minimum size of a value in bytes
}

func (s shapes) of(t reflect.Type) shape {
	if known, ok := s[t]; ok {
		return known
	}
	x := shape{least: 1}
	switch {
	case t == timeType:
	case t.Kind() == reflect.Float64:
		x = shape{1, 8}
	case t.Kind() == reflect.Array:
		e := s.of(t.Elem())
		x = shape{t.Len() * e.floats, t.Len() * e.least}
	case t.Kind() == reflect.Struct:
		x = shape{}
		all := true
		for i := range t.NumField() {
			f := s.of(t.Field(i).Type)
			x.floats, x.least, all = x.floats+f.floats, x.least+f.least, all && f.floats > 0
		}
		if !all {
			x.floats = 0
		}
	}
	s[t] = x
	return x
}

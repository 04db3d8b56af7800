package wire

import (
	"encoding/binary"
	"fmt"
	"io"
	"maps"
	"math"
	"reflect"
	"slices"
	"time"
	"unsafe"
)

// chunk is how many bytes are gathered before they are written.
const chunk = 1 << 16

// Write writes what from points to.
func Write(w io.Writer, from any) error {
	v := reflect.ValueOf(from)
	if v.Kind() != reflect.Pointer || v.IsNil() {
		return fmt.Errorf("a pointer is written, not a %T", from)
	}
	e := &encoder{w: w, shapes: shapes{}, known: map[pointer]int{}}
	e.buf = binary.LittleEndian.AppendUint64(e.buf, sum(v.Type().Elem()))
	e.value(v.Elem())
	e.flush()
	return e.err
}

// pointer is one that was written: what lies there, as what type.
type pointer struct {
	at unsafe.Pointer
	of reflect.Type
}

type encoder struct {
	w      io.Writer
	buf    []byte
	shapes shapes
	known  map[pointer]int
	err    error
}

func (e *encoder) flush() {
	if e.err == nil && len(e.buf) > 0 {
		_, e.err = e.w.Write(e.buf)
	}
	e.buf = e.buf[:0]
}

func (e *encoder) value(v reflect.Value) {
	if len(e.buf) >= chunk {
		e.flush()
	}
	switch t := v.Type(); {
	case t == timeType:
		e.time(v)
	case v.CanInt():
		e.buf = binary.AppendVarint(e.buf, v.Int())
	case v.CanUint():
		e.buf = binary.AppendUvarint(e.buf, v.Uint())
	default:
		e.kinds(v, t)
	}
}

func (e *encoder) kinds(v reflect.Value, t reflect.Type) {
	switch v.Kind() {
	case reflect.Bool:
		e.length(boolean(v.Bool()))
	case reflect.Float64:
		e.buf = binary.LittleEndian.AppendUint64(e.buf, math.Float64bits(v.Float()))
	case reflect.String:
		e.length(v.Len())
		e.buf = append(e.buf, v.String()...)
	case reflect.Slice:
		e.slice(v, t)
	case reflect.Array:
		e.elements(v)
	case reflect.Struct:
		for i := range v.NumField() {
			e.value(v.Field(i))
		}
	case reflect.Map:
		e.table(v, t)
	case reflect.Pointer:
		e.pointer(v, t)
	default:
		e.fail(t)
	}
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

func (e *encoder) fail(t reflect.Type) {
	if e.err == nil {
		e.err = fmt.Errorf("a %s cannot be written", t)
	}
}

func (e *encoder) length(n int) { e.buf = binary.AppendUvarint(e.buf, uint64(n)) }

func (e *encoder) elements(v reflect.Value) {
	for i := range v.Len() {
		e.value(v.Index(i))
	}
}

func (e *encoder) slice(v reflect.Value, t reflect.Type) {
	if v.IsNil() {
		e.length(0)
		return
	}
	e.length(v.Len() + 1)
	if n := e.shapes.of(t.Elem()).floats; n > 0 && v.Len() > 0 {
		e.floats(unsafe.Slice((*float64)(v.UnsafePointer()), n*v.Len()))
		return
	}
	e.elements(v)
}

// floats writes many numbers, which are the bulk of all.
func (e *encoder) floats(all []float64) {
	for part := range slices.Chunk(all, chunk/8) {
		for _, x := range part {
			e.buf = binary.LittleEndian.AppendUint64(e.buf, math.Float64bits(x))
		}
		e.flush()
	}
}

func (e *encoder) table(v reflect.Value, t reflect.Type) {
	switch {
	case t.Key().Kind() != reflect.String:
		e.fail(t)
		return
	case v.IsNil():
		e.length(0)
		return
	}
	values := map[string]reflect.Value{}
	for _, k := range v.MapKeys() {
		values[k.String()] = v.MapIndex(k)
	}
	e.length(v.Len() + 1)
	for _, k := range slices.Sorted(maps.Keys(values)) {
		e.length(len(k))
		e.buf = append(e.buf, k...)
		e.value(values[k])
	}
}

func (e *encoder) pointer(v reflect.Value, t reflect.Type) {
	if v.IsNil() {
		e.length(0)
		return
	}
	p := pointer{v.UnsafePointer(), t}
	if n, ok := e.known[p]; ok {
		e.length(n + 2)
		return
	}
	e.known[p] = len(e.known)
	e.length(1)
	e.value(v.Elem())
}

func (e *encoder) time(v reflect.Value) {
	if !v.CanAddr() {
		e.fail(v.Type())
		return
	}
	text, err := (*time.Time)(v.Addr().UnsafePointer()).MarshalBinary()
	if err != nil && e.err == nil {
		e.err = err
	}
	e.length(len(text))
	e.buf = append(e.buf, text...)
}

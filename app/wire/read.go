package wire

import (
	"bufio"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"reflect"
	"slices"
	"time"
	"unsafe"
)

// deepest is how deep pointers may nest: a finding within a finding within an
// argument goes two or three deep.
const deepest = 64

// Errors of malformed bytes.
var (
	errShort = errors.New("the bytes end too early, or claim more than there is")
	errDeep  = errors.New("the value nests too deep")
	errBad   = errors.New("malformed bytes")
	errMore  = errors.New("there are bytes behind the value")
)

// Read reads into what to points to from size bytes that Write wrote. Malformed
// bytes give an error, and take no more memory than a small multiple of what
// they are.
func Read(r io.Reader, size int, to any) error {
	v := reflect.ValueOf(to)
	if v.Kind() != reflect.Pointer || v.IsNil() {
		return fmt.Errorf("a pointer is read into, not a %T", to)
	}
	d := &decoder{r: bufio.NewReaderSize(r, chunk), left: size, shapes: shapes{}}
	if b := d.take(8); b == nil || binary.LittleEndian.Uint64(b) != sum(v.Type().Elem()) {
		return errors.Join(ErrOther, d.err)
	}
	d.value(v.Elem())
	if d.err == nil && d.left > 0 {
		d.err = errMore
	}
	return d.err
}

// decoder reads. After an error it continues with zeros, of which no loop is long.
type decoder struct {
	r      *bufio.Reader
	left   int // bytes
	deep   int
	shapes shapes
	known  []reflect.Value // pointers so far
	err    error
}

func (d *decoder) fail(err error) {
	if d.err == nil {
		d.err = err
	}
	d.left = 0
}

// take returns the next n bytes of the input, n being no more than a chunk.
// They are valid until the next call.
func (d *decoder) take(n int) []byte {
	if n > d.left {
		d.fail(errShort)
		return nil
	}
	b, err := d.r.Peek(n)
	if err != nil {
		d.fail(errShort)
		return nil
	}
	d.r.Discard(n)
	d.left -= n
	return b
}

// ReadByte implements io.ByteReader.
func (d *decoder) ReadByte() (byte, error) {
	if b := d.take(1); b != nil {
		return b[0], nil
	}
	return 0, errShort
}

func (d *decoder) uint() uint64 {
	x, err := binary.ReadUvarint(d)
	if err != nil {
		d.fail(err)
		return 0
	}
	return x
}

// length reads how many things follow that take at least so many bytes each.
func (d *decoder) length(least int) int {
	n := d.uint()
	if n > uint64(d.left/max(least, 1)) {
		d.fail(errShort)
		return 0
	}
	return int(n)
}

// many is the length of a slice or map, −1 for nil.
func (d *decoder) many(least int) int {
	n := d.uint()
	if n > 0 && n-1 > uint64(d.left/max(least, 1)) {
		d.fail(errShort)
		return -1
	}
	return int(n) - 1
}

func (d *decoder) float() float64 {
	if b := d.take(8); b != nil {
		return math.Float64frombits(binary.LittleEndian.Uint64(b))
	}
	return 0
}

// bytes reads n bytes, of which so many are there.
func (d *decoder) bytes(n int) []byte {
	out := make([]byte, 0, n)
	for len(out) < n && d.err == nil {
		out = append(out, d.take(min(n-len(out), chunk))...)
	}
	return out
}

func (d *decoder) value(v reflect.Value) {
	if d.err != nil {
		return
	}
	if !v.CanSet() { // a field that only its package sees
		v = reflect.NewAt(v.Type(), v.Addr().UnsafePointer()).Elem()
	}
	switch t := v.Type(); {
	case t == timeType:
		d.time(v)
	case v.CanInt():
		d.int(v)
	case v.CanUint():
		x := d.uint()
		if v.OverflowUint(x) {
			d.fail(errBad)
			return
		}
		v.SetUint(x)
	default:
		d.kinds(v, t)
	}
}

func (d *decoder) int(v reflect.Value) {
	x, err := binary.ReadVarint(d)
	switch {
	case err != nil:
		d.fail(err)
	case v.OverflowInt(x):
		d.fail(errBad)
	default:
		v.SetInt(x)
	}
}

func (d *decoder) kinds(v reflect.Value, t reflect.Type) {
	switch v.Kind() {
	case reflect.Bool:
		x := d.uint()
		if x > 1 {
			d.fail(errBad)
		}
		v.SetBool(x == 1)
	case reflect.Float64:
		v.SetFloat(d.float())
	case reflect.String:
		v.SetString(string(d.bytes(d.length(1))))
	case reflect.Slice:
		d.slice(v, t)
	case reflect.Array:
		for i := range v.Len() {
			d.value(v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			d.value(v.Field(i))
		}
	case reflect.Map:
		d.table(v, t)
	case reflect.Pointer:
		d.pointer(v, t)
	default:
		d.fail(fmt.Errorf("a %s cannot be read", t))
	}
}

func (d *decoder) slice(v reflect.Value, t reflect.Type) {
	shape := d.shapes.of(t.Elem())
	n := d.many(shape.least)
	if n < 0 {
		return
	}
	v.Set(reflect.MakeSlice(t, n, n))
	if shape.floats > 0 && n > 0 {
		d.floats(unsafe.Slice((*float64)(v.UnsafePointer()), shape.floats*n))
		return
	}
	for i := range n {
		d.value(v.Index(i))
	}
}

func (d *decoder) floats(all []float64) {
	for part := range slices.Chunk(all, chunk/8) {
		b := d.take(8 * len(part))
		if b == nil {
			return
		}
		for i := range part {
			part[i] = math.Float64frombits(binary.LittleEndian.Uint64(b[8*i:]))
		}
	}
}

func (d *decoder) table(v reflect.Value, t reflect.Type) {
	n := d.many(1 + d.shapes.of(t.Elem()).least)
	if n < 0 {
		return
	}
	if t.Key().Kind() != reflect.String {
		d.fail(fmt.Errorf("a %s cannot be read", t))
		return
	}
	v.Set(reflect.MakeMap(t))
	for range n {
		key := reflect.New(t.Key()).Elem()
		key.SetString(string(d.bytes(d.length(1))))
		value := reflect.New(t.Elem()).Elem()
		d.value(value)
		v.SetMapIndex(key, value)
	}
}

func (d *decoder) pointer(v reflect.Value, t reflect.Type) {
	switch n := d.uint(); {
	case n == 0:
	case n == 1:
		if d.deep++; d.deep > deepest {
			d.fail(errDeep)
			return
		}
		p := reflect.New(t.Elem())
		d.known = append(d.known, p)
		d.value(p.Elem())
		v.Set(p)
		d.deep--
	case n-2 < uint64(len(d.known)) && d.known[n-2].Type() == t:
		v.Set(d.known[n-2])
	default:
		d.fail(errBad)
	}
}

func (d *decoder) time(v reflect.Value) {
	text := d.bytes(d.length(1))
	if d.err != nil {
		return
	}
	if err := (*time.Time)(v.Addr().UnsafePointer()).UnmarshalBinary(text); err != nil {
		d.fail(err)
	}
}

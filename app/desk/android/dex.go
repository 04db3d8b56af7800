package android

import (
	"encoding/binary"
	"errors"
	"fmt"
	"strings"
)

// class is a class of a file of classes, by its Java name, with its native
// methods.
type class struct {
	name   string
	native []string
}

// dex reads the tables of a file of classes. Offsets are those of Android's
// "Dalvik executable format".
type dex struct {
	data []byte
	left int // bytes that may still be read: tables of a damaged file may point to each other
}

// classSize is how long the definition of a class is, without its members.
const classSize = 32

// readsPerByte bounds the work. An undamaged file has each byte read about
// once, and names that several classes share a few times.
const readsPerByte = 16

var errDex = errors.New("damaged, or no file of classes")

// readDex lists the classes that a file of classes defines.
func readDex(data []byte) (all []class, err error) {
	defer func() {
		if recover() != nil { // an offset outside the file
			all, err = nil, errDex
		}
	}()
	if len(data) < 0x70 || string(data[:4]) != "dex\n" {
		return nil, errDex
	}
	d := &dex{data, readsPerByte * len(data)}
	count, at := d.u32(0x60), d.u32(0x64)
	if int(count) > len(data)/classSize {
		return nil, errDex
	}
	for i := range count {
		def := at + classSize*i
		c := class{name: javaName(d.typeName(d.u32(def)))}
		if list := d.u32(def + 24); list != 0 {
			c.native = d.natives(list)
		}
		all = append(all, c)
	}
	return all, nil
}

func (d *dex) u32(at uint32) uint32 { return binary.LittleEndian.Uint32(d.data[at:]) }

func (d *dex) byte(at uint32) byte {
	if d.left--; d.left < 0 {
		panic(errDex)
	}
	return d.data[at]
}

// uleb reads a number of variable length.
func (d *dex) uleb(at *uint32) (x uint32) {
	for shift := 0; shift < 35; shift += 7 {
		b := d.byte(*at)
		*at++
		x |= uint32(b&0x7f) << shift
		if b < 0x80 {
			return x
		}
	}
	panic(errDex)
}

func (d *dex) text(i uint32) string {
	at := d.u32(d.u32(0x3c) + 4*i)
	d.uleb(&at) // its length in UTF-16
	end := at
	for d.byte(end) != 0 {
		end++
	}
	return string(d.data[at:end])
}

func (d *dex) typeName(i uint32) string { return d.text(d.u32(d.u32(0x44) + 4*i)) }

// accNative marks a method whose code is in a library.
const accNative = 0x100

// natives names the native methods in the members of a class.
func (d *dex) natives(at uint32) (names []string) {
	static, instance, direct, virtual := d.uleb(&at), d.uleb(&at), d.uleb(&at), d.uleb(&at)
	for range static + instance {
		d.uleb(&at)
		d.uleb(&at)
	}
	for _, n := range []uint32{direct, virtual} {
		method := uint32(0)
		for range n {
			method += d.uleb(&at) // counted from the last
			flags := d.uleb(&at)
			d.uleb(&at)
			if flags&accNative != 0 {
				names = append(names, d.text(d.u32(d.u32(0x5c)+8*method+4)))
			}
		}
	}
	return names
}

// javaName turns "La/b/C;" into "a.b.C".
func javaName(descriptor string) string {
	return strings.ReplaceAll(strings.TrimSuffix(strings.TrimPrefix(descriptor, "L"), ";"), "/", ".")
}

// nativeName is the name of a native method in a library (Java Native
// Interface Specification, "Resolving Native Method Names").
func nativeName(class, method string) string {
	var b strings.Builder
	b.WriteString("Java")
	for _, part := range append(strings.Split(class, "."), method) {
		b.WriteByte('_')
		for _, r := range part {
			switch {
			case r == '_':
				b.WriteString("_1")
			case r < 0x80 && r != '$':
				b.WriteRune(r)
			default:
				fmt.Fprintf(&b, "_0%04x", r)
			}
		}
	}
	return b.String()
}

package sim

import (
	"fmt"
	"math"
	"reflect"
)

// notFinite finds a number that is NaN or infinite in a scenario, at any depth,
// and returns the path to it; "" if there is none.
func notFinite(path string, v reflect.Value) string {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			return path
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return notFinite(path, v.Elem())
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if at := notFinite(fmt.Sprintf("%s[%d]", path, i), v.Index(i)); at != "" {
				return at
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				if at := notFinite(path+"."+f.Name, v.Field(i)); at != "" {
					return at
				}
			}
		}
	}
	return ""
}

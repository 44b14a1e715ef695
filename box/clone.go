package box

import "reflect"

// deepest is how far a clone follows values within values: farther than any design
// goes, so that a foreign type which holds itself ends.
const deepest = 16

// clone copies a value with the slices and maps inside it, also those inside values
// of an interface. What is behind a pointer stays shared.
func clone[T any](x T) T {
	cloneIn(reflect.ValueOf(&x).Elem(), deepest)
	return x
}

// cloneIn gives v, which can be set, slices and maps of its own.
func cloneIn(v reflect.Value, depth int) {
	if depth == 0 || !v.CanSet() || plain(v.Type()) {
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			cloneIn(v.Field(i), depth-1)
		}
	case reflect.Array:
		for i := range v.Len() {
			cloneIn(v.Index(i), depth-1)
		}
	case reflect.Slice:
		if v.IsNil() {
			return
		}
		c := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(c, v)
		v.Set(c)
		if !plain(v.Type().Elem()) {
			for i := range v.Len() {
				cloneIn(v.Index(i), depth-1)
			}
		}
	case reflect.Map:
		if v.IsNil() {
			return
		}
		c := reflect.MakeMapWithSize(v.Type(), v.Len())
		for _, k := range v.MapKeys() {
			x := reflect.New(v.Type().Elem()).Elem()
			x.Set(v.MapIndex(k))
			cloneIn(x, depth-1)
			c.SetMapIndex(k, x)
		}
		v.Set(c)
	case reflect.Interface:
		if v.IsNil() || plain(v.Elem().Type()) {
			return
		}
		x := reflect.New(v.Elem().Type()).Elem()
		x.Set(v.Elem())
		cloneIn(x, depth-1)
		v.Set(x)
	}
}

// plain reports whether values of a type share nothing that a clone would copy.
func plain(t reflect.Type) bool {
	switch t.Kind() {
	case reflect.Struct:
		for i := range t.NumField() {
			if !plain(t.Field(i).Type) {
				return false
			}
		}
		return true
	case reflect.Array:
		return plain(t.Elem())
	case reflect.Slice, reflect.Map, reflect.Interface:
		return false
	}
	return true
}

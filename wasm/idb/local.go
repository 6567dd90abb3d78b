//go:build js

package idb

import (
	"strings"
	"syscall/js"
)

// Item is a text of one of the browser's storages; "" where there is none.
func Item(storage js.Value, key string) (text string) {
	var err error
	defer Recovered(&err)
	if value := storage.Call("getItem", key); value.Type() == js.TypeString {
		text = value.String()
	}
	return text
}

// SetItem keeps a text, or tells why not.
func SetItem(storage js.Value, key, text string) (err error) {
	defer Recovered(&err)
	storage.Call("setItem", key, text)
	return nil
}

// ItemKeys are the keys of one of the browser's storages that begin with a text; none
// where there is none.
func ItemKeys(storage js.Value, prefix string) (keys []string) {
	var err error
	defer Recovered(&err)
	for i := range storage.Get("length").Int() {
		if key := storage.Call("key", i).String(); strings.HasPrefix(key, prefix) {
			keys = append(keys, key)
		}
	}
	return keys
}

// RemoveItem removes a text, if it can be.
func RemoveItem(storage js.Value, key string) {
	var err error
	defer Recovered(&err)
	storage.Call("removeItem", key)
}

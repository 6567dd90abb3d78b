//go:build js

package idb

import (
	"errors"
	"fmt"
	"syscall/js"
)

// transaction is one on all stores. Where a method waits for the browser's answer, the
// page goes on meanwhile, so that a long transaction does not hold up a frame. Nothing
// else may be waited for: the browser ends a transaction of which it awaits no more
// requests. A browser that refuses a request throws, see recovered.
type Transaction struct {
	raw      js.Value
	Stores   map[string]js.Value
	sent     *int      // how many requests to write there were
	answered chan bool // whether the request that is waited for was granted
	ended    chan bool // whether all was written
	granted  js.Func   // tell answered
	refused  js.Func
	heard    *[]js.Func // all that is called by the browser's events
}

// bunch is how many requests are sent before one is waited for: the browser works on
// the next ones meanwhile.
const Bunch = 16

var errAborted = errors.New("storage: given up by the browser")

func NewTransaction(connection js.Value, mode string, storeNames []string) Transaction {
	all := make([]any, len(storeNames))
	for i, store := range storeNames {
		all[i] = store
	}
	t := Transaction{
		raw: connection.Call("transaction", all, mode), Stores: map[string]js.Value{}, sent: new(int),
		answered: make(chan bool, 1), ended: make(chan bool, 1), heard: new([]js.Func),
	}
	for _, store := range storeNames {
		t.Stores[store] = t.raw.Call("objectStore", store)
	}
	t.granted, t.refused = t.tells(t.answered, true), t.tells(t.answered, false)
	t.raw.Set("oncomplete", t.tells(t.ended, true))
	t.raw.Set("onabort", t.tells(t.ended, false))
	return t
}

// tells makes what the browser calls at an event: it passes a value on.
func (t Transaction) tells(c chan bool, what bool) js.Func {
	f := js.FuncOf(func(js.Value, []js.Value) any { c <- what; return nil })
	*t.heard = append(*t.heard, f)
	return f
}

// end waits until all is written, or undone if err is not nil, and tells why it was not
// written.
func (t Transaction) End(err error) error {
	if err != nil {
		t.abort()
	}
	written := <-t.ended
	for _, f := range *t.heard {
		f.Release()
	}
	if cause := t.raw.Get("error"); !written && cause.Truthy() {
		return js.Error{Value: cause}
	}
	if err == nil && !written {
		return errAborted
	}
	return err
}

func (t Transaction) abort() {
	var over error // it may have ended by itself
	defer Recovered(&over)
	t.raw.Call("abort")
}

// await waits for the answer to a request.
func (t Transaction) Await(request js.Value) (js.Value, error) {
	request.Set("onsuccess", t.granted)
	request.Set("onerror", t.refused)
	if !<-t.answered {
		return js.Undefined(), js.Error{Value: request.Get("error")}
	}
	return request.Get("result"), nil
}

// written waits for some of the requests to write. One that is refused ends the
// transaction.
func (t Transaction) written(request js.Value) error {
	if *t.sent++; *t.sent%Bunch != 0 {
		return nil
	}
	_, err := t.Await(request)
	return err
}

// source is a store, or one of its indexes if index is not "".
func (t Transaction) source(store, index string) js.Value {
	if index == "" {
		return t.Stores[store]
	}
	return t.Stores[store].Call("index", index)
}

// get reads a value; undefined where there is none.
func (t Transaction) Get(store string, key any) (js.Value, error) {
	return t.Await(t.Stores[store].Call("get", key))
}

// values hands over what there is under some keys, in order. f may use the transaction.
func (t Transaction) Values(store string, keys []any, f func(i int, value js.Value) error) error {
	return t.asked(t.Stores[store], "get", keys, f)
}

// counts hands over how much there is in some ranges of keys, in order.
func (t Transaction) Counts(store, index string, ranges []any, f func(i, n int)) error {
	return t.asked(t.source(store, index), "count", ranges, func(i int, n js.Value) error {
		f(i, n.Int())
		return nil
	})
}

// asked sends a request for each of some keys and hands over the answers in order, each
// in a task of the page's own.
func (t Transaction) asked(source js.Value, what string, keys []any, f func(i int, answer js.Value) error) error {
	answers := make(chan bool, Bunch)
	granted, refused := t.tells(answers, true), t.tells(answers, false)
	requests := make([]js.Value, len(keys))
	sent := 0
	for i := range keys {
		for ; sent < min(i+Bunch, len(keys)); sent++ {
			requests[sent] = source.Call(what, keys[sent])
			requests[sent].Set("onsuccess", granted)
			requests[sent].Set("onerror", refused)
		}
		request := requests[i]
		if requests[i] = js.Undefined(); !<-answers {
			return js.Error{Value: request.Get("error")}
		}
		if err := f(i, request.Get("result")); err != nil {
			return err
		}
	}
	return nil
}

// add adds a value under a key that must be free.
func (t Transaction) Add(store string, key, value any) error {
	return t.written(t.Stores[store].Call("add", value, key))
}

// put writes a value that holds its own key, or under a key of the store's choice.
func (t Transaction) Put(store string, value any) error {
	return t.written(t.Stores[store].Call("put", value))
}

// putAt writes a value under a key.
func (t Transaction) PutAt(store string, key, value any) error {
	return t.written(t.Stores[store].Call("put", value, key))
}

// delete removes what there is under a key or in a range of keys.
func (t Transaction) Delete(store string, keys any) error {
	return t.written(t.Stores[store].Call("delete", keys))
}

// clear empties a store.
func (t Transaction) Clear(store string) error {
	return t.written(t.Stores[store].Call("clear"))
}

// A cursor stands at a value while each goes through them.
type Cursor struct {
	raw   js.Value
	moved bool
}

func (c *Cursor) Key() js.Value { return c.raw.Get("key") }

// skip goes to the first key from a given one on, and not to the next.
func (c *Cursor) Skip(to any) {
	c.moved = true
	c.raw.Call("continue", to)
}

// The directions of each.
const (
	Ascending  = "next"
	Descending = "prev"
)

// each calls f with each value in a range of keys (all if that is undefined), until f
// returns false. f must not wait for anything.
func (t Transaction) Each(store, index string, keys any, direction string, f func(c *Cursor, value js.Value) bool) error {
	request := t.source(store, index).Call("openCursor", keys, direction)
	for {
		at, err := t.Await(request)
		if err != nil || at.IsNull() {
			return err
		}
		c := Cursor{raw: at}
		if !f(&c, at.Get("value")) {
			return nil
		}
		if !c.moved {
			at.Call("continue")
		}
	}
}

// count counts what there is in a range of keys; all if keys is undefined.
func (t Transaction) Count(store, index string, keys any) (int, error) {
	n, err := t.Await(t.source(store, index).Call("count", keys))
	if err != nil {
		return 0, err
	}
	return n.Int(), nil
}

// keys returns all keys of a store, as a list of JavaScript.
func (t Transaction) Keys(store string) (js.Value, error) {
	return t.Await(t.Stores[store].Call("getAllKeys"))
}

// startingWith is the range of those keys that are lists and begin with the given
// parts: lists come after all texts and numbers.
func StartingWith(parts ...any) js.Value {
	return js.Global().Get("IDBKeyRange").Call("bound", parts, append(parts[:len(parts):len(parts)], []any{}))
}

// asLine returns a stored value as a line. We store nothing but lines; what
// somebody else has put there is written as JSON, so that it is not lost.
func AsLine(value js.Value) string {
	if value.Type() != js.TypeString {
		value = js.Global().Get("JSON").Call("stringify", value)
	}
	return value.String()
}

// recovered turns a JavaScript exception into an error.
func Recovered(err *error) {
	if r := recover(); r != nil {
		*err = fmt.Errorf("storage: %v", r)
	}
}

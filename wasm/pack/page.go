package main

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"groundbeat/wasm/site"
)

// pack turns files under plain names into a site: hashed names, and in the page
// the given values in the place of their {{NAMES}}.
func pack(page files, values map[string]string) (files, error) {
	if _, ok := page[site.Index]; !ok {
		return nil, fmt.Errorf("the page %s is missing", site.Index)
	}
	p := packer{plain: page, hashed: map[string]string{site.Index: site.Index}, out: files{}}
	if err := p.finish(site.Index, nil); err != nil {
		return nil, err
	}
	for _, name := range slices.Sorted(maps.Keys(page)) {
		if _, done := p.hashed[name]; done {
			continue
		}
		if !alone(name) {
			return nil, fmt.Errorf("%s: nothing refers to this file: name it as \"./%s\", or take it away", name, name)
		}
		if err := p.add(name, nil); err != nil {
			return nil, err
		}
	}
	return p.out, fill(p.out, values)
}

// packer is the state of one packing.
type packer struct {
	plain  files
	hashed map[string]string // plain name to hashed name, of the files that are done
	out    files
}

// add packs a file, unless that is done already. from are the files that led here,
// the last of which refers to it.
func (p *packer) add(name string, from []string) error {
	if _, done := p.hashed[name]; done {
		return nil
	}
	if _, ok := p.plain[name]; !ok {
		return fmt.Errorf("%s refers to %s, and there is no such file", from[len(from)-1], name)
	}
	if slices.Contains(from, name) {
		return fmt.Errorf("%s: files must not refer to one another in a circle: no name could hold a hash", strings.Join(append(from, name), " → "))
	}
	return p.finish(name, from)
}

// finish packs a file after all that it refers to, since their names are part of
// its content, and so of its own name. The page alone may be referred to by what
// it refers to, for its name never changes.
func (p *packer) finish(name string, from []string) error {
	names, err := references(name, p.plain[name])
	if err != nil {
		return err
	}
	for _, n := range names {
		if err := p.add(n, append(slices.Clip(from), name)); err != nil {
			return err
		}
	}
	content := rewrite(name, p.plain[name], p.hashed)
	p.hashed[name] = p.name(name, content)
	p.out[p.hashed[name]] = content
	return nil
}

// name is the name that a file has in the site.
func (p *packer) name(plain string, content []byte) string {
	if plain == site.Index {
		return plain
	}
	return site.Name(plain, content)
}

var placeholder = regexp.MustCompile(`\{\{(\w+)\}\}`)

// fill puts values into the page. It is an error if the page asks for one that
// does not exist. The values stand in attributes and are not escaped.
func fill(out files, values map[string]string) error {
	var unknown error
	out[site.Index] = placeholder.ReplaceAllFunc(out[site.Index], func(name []byte) []byte {
		value, ok := values[string(name[2:len(name)-2])]
		if !ok {
			unknown = fmt.Errorf("%s: no value for %s; there are %v", site.Index, name, slices.Sorted(maps.Keys(values)))
		}
		return []byte(value)
	})
	return unknown
}

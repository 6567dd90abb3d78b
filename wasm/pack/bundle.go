package main

import (
	"errors"
	"fmt"
	"path"
	"strings"
	"sync"

	"github.com/evanw/esbuild/pkg/api"
)

// scriptName is the page's own script.
const scriptName = "boot.js"

// space is what the bundler calls where the page's files are.
const space = "page"

// loaderNotice stands above a script that holds the loader, as its licence asks.
const loaderNotice = "// Holds wasm_exec.js, copyright the Go Authors, BSD licence: https://go.dev/LICENSE"

// bundle makes one script of the page's own and of all that it imports, in the order
// in which they import one another, and takes the others out of the page. Each file
// that a browser asks for beside the program holds up the first frame.
func bundle(page files) error {
	var taken sync.Map // names; scripts are read side by side
	result := api.Build(api.BuildOptions{
		EntryPoints: []string{scriptName},
		Bundle:      true,
		Format:      api.FormatIIFE, // not a module, so that the script's own element can be asked
		Target:      api.ES2022,
		Charset:     api.CharsetUTF8,
		Banner:      map[string]string{"js": loaderNotice},
		Plugins:     []api.Plugin{inMemory(page, &taken)},

		MinifyWhitespace: true,
		MinifySyntax:     true,
	})
	if len(result.Errors) > 0 {
		m := result.Errors[0]
		if m.Location == nil {
			return errors.New(m.Text)
		}
		return fmt.Errorf("%s:%d: %s", strings.TrimPrefix(m.Location.File, space+":"), m.Location.Line, m.Text)
	}
	for name := range taken.Range {
		delete(page, name.(string))
	}
	page[scriptName] = result.OutputFiles[0].Contents
	return nil
}

// inMemory lets scripts import the page's files, and notes those that were.
func inMemory(page files, taken *sync.Map) api.Plugin {
	return api.Plugin{Name: space, Setup: func(build api.PluginBuild) {
		build.OnResolve(api.OnResolveOptions{Filter: ".*"}, func(a api.OnResolveArgs) (api.OnResolveResult, error) {
			name := path.Join(path.Dir(a.Importer), a.Path)
			if _, ok := page[name]; !ok {
				return api.OnResolveResult{}, fmt.Errorf("there is no file %s in the page", name)
			}
			return api.OnResolveResult{Path: name, Namespace: space}, nil
		})
		build.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: space}, func(a api.OnLoadArgs) (api.OnLoadResult, error) {
			taken.Store(a.Path, nil)
			content := string(page[a.Path])
			return api.OnLoadResult{Contents: &content, Loader: api.LoaderJS}, nil
		})
	}}
}

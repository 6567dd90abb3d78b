// As short a way to the program as there is.
const go = new Go();
WebAssembly.instantiateStreaming(fetch("./app.wasm"), go.importObject).then((made) => go.run(made.instance));

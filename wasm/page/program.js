// Compiles the program while it arrives (fetch.js asked for it) and the page's other
// parts are still on their way. boot.js starts it.
(() => {
  if (typeof WebAssembly !== "object" || !WebAssembly.instantiateStreaming) return halt("no-program");
  if (!window.Go) return; // its script did not arrive, and halt.js says so
  const { bytes } = document.currentScript.dataset;
  const asked = window.groundbeatAsked;
  if (!asked) return halt("no-file"); // the script that asks did not arrive

  // fetched counts what has arrived, unpacked, so that the progress is true with and
  // without compression.
  async function fetched() {
    const response = await asked;
    if (!response.ok) throw new Error(`${response.url}: ${response.status}`);
    const total = Number(bytes);
    let arrived = 0;
    const counted = response.body.pipeThrough(
      new TransformStream({
        transform(chunk, out) {
          arrived += chunk.byteLength;
          const progress = document.getElementById("boot-progress");
          if (progress) progress.value = total ? arrived / total : 0;
          out.enqueue(chunk);
        },
        flush(out) {
          if (arrived < total) out.error(new Error("the program is cut off"));
        },
      }),
    );
    return new Response(counted, { headers: { "Content-Type": "application/wasm" } });
  }

  const go = new Go();
  go.env = { GOGC: "off" }; // until the first frame: see main.go
  const made = WebAssembly.instantiateStreaming(fetched(), go.importObject);
  made.catch(() => {}); // boot.js tells
  window.groundbeatProgram = { go, made };
})();

// Fetches the program, by far the largest part, and compiles it while it arrives.
// boot.js starts it.
import "./wasm_exec.js";

// fetched counts what has arrived, unpacked, so that the progress is true with and
// without compression.
async function fetched(file, total) {
  const response = await fetch(file); // the page has asked for it already
  if (!response.ok) throw new Error(`${response.url}: ${response.status}`);
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

// compiled begins to fetch a program of so many bytes. It returns the loader with
// the promise of the program, or nothing where it has said that there can be none.
export function compiled(file, bytes) {
  if (typeof WebAssembly !== "object" || !WebAssembly.instantiateStreaming) return halt("no-program");
  const go = new Go();
  go.env = { GOGC: "off" }; // until the first frame: see main.go
  const made = WebAssembly.instantiateStreaming(fetched(file, Number(bytes)), go.importObject);
  made.catch(() => {}); // boot.js tells
  return { go, made };
}

// Starts the program, or says in the page why it cannot be started (halt.js).
import { mailbox } from "./mail.js";
import { bridge } from "./bridge.js";
import { taps } from "./taps.js";

const tag = document.querySelector("script[data-program]");
const part = (name) => document.getElementById("boot-" + name);

function drawable() {
  const canvas = document.createElement("canvas");
  try {
    const gl = canvas.getContext("webgl2") || canvas.getContext("webgl");
    gl?.getExtension("WEBGL_lose_context")?.loseContext();
    return Boolean(gl);
  } catch {
    return false;
  }
}

// storable reports whether the browser lets the page ask for storage. Where
// storage is blocked, even looking at it may throw.
function storable() {
  try {
    return Boolean(window.indexedDB);
  } catch {
    return false;
  }
}

// fetchProgram fetches the program and counts what has arrived, unpacked, so
// that the progress is true with and without compression.
async function fetchProgram() {
  const response = await fetch(tag.dataset.program);
  if (!response.ok) throw new Error(`${response.url}: ${response.status}`);
  const total = Number(tag.dataset.bytes);
  const progress = part("progress");
  let arrived = 0;
  const counted = response.body.pipeThrough(
    new TransformStream({
      transform(chunk, out) {
        arrived += chunk.byteLength;
        progress.value = total ? arrived / total : 0;
        out.enqueue(chunk);
      },
      flush(out) {
        if (arrived < total) out.error(new Error("the program is cut off"));
      },
    }),
  );
  return new Response(counted, { headers: { "Content-Type": "application/wasm" } });
}

// again starts again, but never in the middle of something.
function again() {
  if (document.querySelector("[data-tap], #choices, #finding, #sides")) setTimeout(again, 500);
  else location.reload();
}

async function run() {
  if (typeof WebAssembly !== "object" || !WebAssembly.instantiateStreaming) return halt("no-program");
  if (!drawable()) return halt("no-pictures");

  const box = mailbox();
  window.groundbeatParts = { box, bridge: bridge(box), start: document.getElementById("boot"), storage: storable(), version: tag.dataset.version };
  taps(box);

  const go = new Go();
  let program;
  try {
    program = await WebAssembly.instantiateStreaming(fetchProgram(), go.importObject);
  } catch (error) {
    console.error(error);
    return halt(error instanceof WebAssembly.CompileError ? "no-program" : "no-file");
  }
  // The engine reads the pixel ratio once: start again in the same place when
  // the window moves to a screen of another ratio.
  matchMedia(`(resolution: ${devicePixelRatio}dppx)`).addEventListener("change", again, { once: true });
  await go.run(program.instance);
  halt("stopped");
}

run().catch((error) => {
  console.error(error);
  halt("stopped");
});

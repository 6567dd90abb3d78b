// Starts the program, or says in the page why it cannot be started (halt.js). The
// build makes one script of this one and what it imports.
import { compiled } from "./program.js";
import { mailbox } from "./mail.js";
import { bridge } from "./bridge.js";
import { published } from "./mix.js";
import { taps } from "./taps.js";

const { version, file, bytes } = document.currentScript.dataset;
const program = compiled(file, bytes);

function drawable() {
  try {
    const canvas = document.createElement("canvas");
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

// small is one of the browser's storages for small texts; null where it is blocked.
function small(name) {
  try {
    return window[name];
  } catch {
    return null;
  }
}

// again starts again, but never in the middle of something: while something is
// played, asked, or told that a new start would forget.
function again() {
  if (document.querySelector("[data-tap], [data-action=stop], #choices, #finding, #sides, #keep, #why.warning, #why.finding")) setTimeout(again, 500);
  else location.reload();
}

async function run() {
  if (!program) return; // and it has been said why
  const box = mailbox();
  const local = small("localStorage"), session = small("sessionStorage");
  setTimeout(() => local?.length); // the first look takes long: better now than when the program waits for it
  const sound = bridge(box);
  window.groundbeatParts = { box, bridge: sound, mix: published(sound), start: document.getElementById("boot"), storage: storable(), local, session, version };
  taps(box);

  let made;
  try {
    made = await program.made;
  } catch (error) {
    console.error(error);
    return halt(error instanceof WebAssembly.CompileError ? "no-program" : "no-file");
  }
  // The engine reads the pixel ratio once: start again in the same place when
  // the window moves to a screen of another ratio.
  matchMedia(`(resolution: ${devicePixelRatio}dppx)`).addEventListener("change", again, { once: true });
  await program.go.run(made.instance);
  stopped();
}

// stopped says why the program has stopped. Whether there is anything to draw with is
// asked only now: where there is, asking would delay the first frame.
function stopped() {
  halt(drawable() ? "stopped" : "no-pictures");
}

run().catch((error) => {
  console.error(error);
  stopped();
});

// Taps, with the time that the browser itself stamped on the event.
//
// The stamp is right however late this listener runs. A tap counts while a tap
// area (an element with data-tap, whose value is the round's number) is on the
// page and has the focus or is pressed.
import { TAP } from "./mail.js";

const BY = { key: 0, mouse: 1, touch: 2, pen: 3, click: 4 };
const SILENT = new Set(["Control", "Meta", "Alt", "Shift", "CapsLock", "AltGraph", "Dead", "Unidentified"]);

export function taps(box) {
  const area = () => document.querySelector("[data-tap]");

  const tap = (event, head, by, x, y, pointer) => {
    // A stamp in the future, or from long ago, is not to be believed.
    const now = performance.now();
    const at = event.timeStamp <= now && event.timeStamp > now - 2000 ? event.timeStamp : now;
    box.post(TAP, at, x, y, pointer, BY[by] ?? BY.mouse, Number(head.dataset.tap));
  };

  // A key is a tap if it is the space bar or writes one letter, digit or sign.
  const taps = (event) =>
    !event.ctrlKey && !event.metaKey && !event.altKey && !SILENT.has(event.key) && [...event.key].length === 1;

  window.addEventListener(
    "keydown",
    (event) => {
      const head = area();
      if (!head || ![head, document.body].includes(document.activeElement) || !taps(event)) return;
      event.preventDefault();
      if (!event.repeat) tap(event, head, "key", 0.5, 0.5, -1);
    },
    { capture: true },
  );

  // Not passive: a press on the head must not scroll, zoom, select or click.
  window.addEventListener(
    "pointerdown",
    (event) => {
      const head = area();
      if (!head || !head.contains(event.target) || event.button !== 0) return;
      const box = head.getBoundingClientRect();
      const x = (event.clientX - box.left) / box.width;
      const y = (event.clientY - box.top) / box.height;
      tap(event, head, event.pointerType, x, y, event.pointerId);
      head.focus({ preventScroll: true });
    },
    { capture: true },
  );

  // What can be pressed beside the head leaves the focus to it, so that the next key
  // is a tap: a pointer does not take it away, and a key that pressed a button gives
  // it back.
  const beside = (event, head) => head && !head.contains(event.target) && event.target.closest("button");
  window.addEventListener("mousedown", (event) => beside(event, area()) && event.preventDefault(), { capture: true });
  window.addEventListener(
    "click",
    (event) => {
      const head = area();
      if (beside(event, head)) head.focus({ preventScroll: true });
    },
    { capture: true },
  );

  // A screen reader may send a bare click, with no pointer and no key before it.
  window.addEventListener(
    "click",
    (event) => {
      const head = area();
      if (!head || !head.contains(event.target)) return;
      event.preventDefault();
      if (event.detail === 0 && !event.pointerType) tap(event, head, "click", 0.5, 0.5, -1);
    },
    { capture: true },
  );
}

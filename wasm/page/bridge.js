// The sound's way from the game to the loudspeaker.
//
// The engine's web driver wants a ScriptProcessor or a worklet that asks for
// blocks at the last moment. Here it is handed something shaped like a
// ScriptProcessor instead: blocks are pulled well ahead and each is scheduled
// as a buffer source at an exact frame of the context's clock, so that a busy
// main thread (up to LEAD seconds of it) cannot be heard.
//
// Lead drum and bass drum arrive as left and right channel. Everything that has
// to act at once (stop, volume, balance, one drum alone, where the drums
// stand) is a gain behind the blocks and needs no new sound from the game.
//
// The driver fills what the game has not delivered with exact zeros; the
// stream itself is never exactly zero. Dropping frames that are zero in both
// channels therefore keeps the stream whole, and counting the others tells
// which stream frame lies at which context frame.
import { READING, PLACEMENT, STATE, HIDDEN, INTERRUPTED, DRY, DEVICE } from "./mail.js";
import { PLACES, mixed } from "./mix.js";

const BLOCK = 2048; // frames that the driver delivers at a time
const LEAD = 0.8; // seconds scheduled ahead of the device
const LATE = 0.02; // seconds; nearer than this to the device a block may miss its frame
const START = 0.06; // seconds from a start to its first frame
const HEAD = 4 * BLOCK; // frames that must be there before a start
const FADE = 0.012; // seconds that a gain takes to reach its new value
const STUCK = 500; // ms from when the browser says that the sound runs to when it has to

export function bridge(box) {
  const Native = window.AudioContext || window.webkitAudioContext;
  if (!Native) return null;
  const b = new Bridge(box, Native.prototype);
  class Bridged extends Native {
    constructor(opts) {
      if (b.context) return b.context; // what open made is what the driver gets
      super({ latencyHint: "interactive", ...opts });
      // The driver must not find the worklet: it would go round the bridge.
      Object.defineProperty(this, "audioWorklet", { value: undefined });
      b.attach(this);
    }
    // The driver asks at every press, until it hears once that the sound runs. The
    // bridge asks by itself, and the driver is told once: it listens no longer then.
    resume() {
      if (this.told) return new Promise(() => {});
      this.told = true;
      return b.started;
    }
    createScriptProcessor() {
      return {
        addEventListener: (kind, fill) => kind === "audioprocess" && b.source(fill),
        connect: () => b.pump(),
      };
    }
  }
  window.AudioContext = Bridged;
  return b;
}

class Bridge {
  constructor(box, native) {
    this.box = box;
    this.native = native; // the browser's own methods of a context
    this.context = null;
    this.fill = null;
    this.epoch = 0; // number of restarts
    this.next = 0; // context frame of the next block
    this.stream = 0; // stream frames delivered so far
    this.waiting = []; // blocks that are not scheduled yet
    this.opens = null; // the stream frame from which on the stream is to be heard
    this.live = new Set(); // sources that are scheduled or sounding
    this.mix = { lead: 1, bass: 1, volume: 1, stage: "centre" };
    this.aims = new Map(); // where each gain was last sent
    this.wanted = true; // should the sound run? (not while hidden)
    this.ran = false; // did it, when it was last looked at?
    this.started = new Promise((told) => (this.tell = told)); // when it runs for the first time
    this.block = {
      left: new Float32Array(BLOCK),
      right: new Float32Array(BLOCK),
      getChannelData: (c) => (c ? this.block.right : this.block.left),
    };
    this.event = { outputBuffer: this.block };
    this.soon = new MessageChannel();
    this.soon.port1.onmessage = () => this.pump();
  }

  // open makes the context and reports whether the browser could: there may be
  // no device at all.
  open(sampleRate) {
    try {
      return Boolean(new AudioContext({ sampleRate }));
    } catch (error) {
      console.warn(error);
      return false;
    }
  }

  attach(context) {
    if (this.context) return;
    this.context = context;
    this.rate = context.sampleRate;
    this.graph();
    this.restart();
    context.addEventListener("statechange", () => this.changed());
    context.addEventListener("sinkchange", () => this.restart(DEVICE));
    document.addEventListener("visibilitychange", () => this.visible());
    for (const kind of ["keydown", "pointerup", "click"]) {
      window.addEventListener(kind, () => this.resume(), { capture: true, passive: true });
    }
    setInterval(() => this.pump(), 100);
    const frame = () => {
      this.read();
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  }

  // lead ─┬─ leadLeft ──┐
  //       └─ leadRight ─┤
  // bass ─┬─ bassLeft ──┼─ left, right ─ gate ─ volume ─ destination
  //       └─ bassRight ─┘
  graph() {
    const c = this.context;
    const split = c.createChannelSplitter(2);
    const merge = c.createChannelMerger(2);
    this.gains = {};
    for (const [drum, from] of [["lead", 0], ["bass", 1]]) {
      for (const [side, to] of [["Left", 0], ["Right", 1]]) {
        const g = c.createGain();
        split.connect(g, from);
        g.connect(merge, 0, to);
        this.gains[drum + side] = g.gain;
      }
    }
    const gate = c.createGain();
    const volume = c.createGain();
    merge.connect(gate).connect(volume).connect(c.destination);
    this.gains.gate = gate.gain;
    this.gains.volume = volume.gain;
    this.input = split;
    gate.gain.value = 0;
    for (const [name, value] of Object.entries(this.levels())) this.gains[name].value = value;
  }

  // Where the drums stand. "apart" sends each drum to one side alone, at its
  // full level; "centre" is the same in both ears and safe in mono.
  levels() {
    const { lead, bass, volume, stage } = this.mix;
    const [ll, lr, bl, br] = PLACES[stage];
    return { leadLeft: ll * lead, leadRight: lr * lead, bassLeft: bl * bass, bassRight: br * bass, volume };
  }

  // balance sets the drums' gains, 0..1, and where they stand; heard within FADE.
  balance(lead, bass, stage = this.mix.stage) {
    this.set({ lead, bass, stage });
  }

  // stand sets where the drums stand, one of PLACES; heard within FADE.
  stand(stage) {
    this.set({ stage });
  }

  // volume sets the level behind the mix, 0..1; heard within FADE.
  volume(volume) {
    this.set({ volume });
  }

  // set changes the mix. What can be no part of one leaves it as it is.
  set(part) {
    this.mix = mixed(this.mix, part);
    if (!this.context) return;
    for (const [name, value] of Object.entries(this.levels())) this.ramp(this.gains[name], value);
  }

  ramp(gain, value) {
    const from = this.context.currentTime;
    const now = this.aims.get(gain) ?? gain.value; // not every browser reports an automated value
    gain.cancelScheduledValues(0);
    gain.setValueAtTime(now, from);
    gain.linearRampToValueAtTime(value, from + FADE);
    this.aims.set(gain, value);
  }

  // stop silences what is sounding and what is queued, within FADE.
  stop() {
    this.opens = null;
    if (this.context) this.ramp(this.gains.gate, 0);
  }

  // restart cuts what is queued and begins a new epoch, whose first block starts
  // START seconds after HEAD frames are there: on a slow machine, what the press
  // brought about on the page delays the start, and does not tear it. It returns the
  // epoch's number.
  restart(reason = 0) {
    this.epoch++;
    if (!this.context) return this.epoch;
    const now = this.context.currentTime;
    for (const source of this.live) source.stop(now + FADE);
    this.live.clear();
    this.waiting = [];
    this.fresh = true; // nothing placed in this epoch yet
    this.torn = false; // nor was it interrupted since
    if (reason) this.box.post(STATE, this.running() ? 1 : 0, reason);
    this.soon.port2.postMessage(0);
    return this.epoch;
  }

  // play restarts with the gate open.
  // Nothing before stream frame `base` is heard: it belongs to what was cut.
  play(base) {
    this.stop();
    this.opens = base;
    return this.restart();
  }

  // raise opens the gate just before a time.
  raise(at) {
    const gate = this.gains.gate;
    gate.setValueAtTime(0, at - 2 * FADE);
    gate.linearRampToValueAtTime(1, at - FADE);
    this.aims.set(gate, 1);
    this.opens = null;
  }

  source(fill) {
    this.fill = fill;
    this.pump();
  }

  running() {
    return this.context !== null && this.context.state === "running";
  }

  // pump schedules blocks until LEAD is reached: one a task, so that the game's
  // own goroutines can refill between them.
  pump() {
    if (!this.running()) return;
    this.ran = true;
    this.tell();
    if (!this.fill || this.pulling) return;
    const now = Math.round(this.context.currentTime * this.rate);
    if (!this.fresh && this.next < now + LATE * this.rate) return void this.restart(DRY);
    if (!this.fresh && this.next >= now + LEAD * this.rate) return;
    this.pulling = true;
    this.fill(this.event);
    this.pulling = false;
    const block = this.take();
    if (!block) return;
    this.waiting.push(block);
    this.soon.port2.postMessage(0);
    if (this.fresh) {
      if (this.waiting.reduce((sum, b) => sum + b.frames, 0) < HEAD) return;
      this.next = Math.ceil((this.context.currentTime + START) * this.rate);
      this.fresh = false;
    }
    for (const b of this.waiting) this.place(b);
    this.waiting = [];
  }

  // take returns what the driver delivered as a block, or null if that was nothing.
  take() {
    const { left, right } = this.block;
    let n = 0;
    for (let i = 0; i < BLOCK; i++) {
      if (left[i] === 0 && right[i] === 0) continue;
      left[n] = left[i];
      right[n++] = right[i];
    }
    if (n === 0) return null;
    const buffer = this.context.createBuffer(2, n, this.rate);
    buffer.copyToChannel(left.subarray(0, n), 0);
    buffer.copyToChannel(right.subarray(0, n), 1);
    const block = { buffer, from: this.stream, frames: n };
    this.stream += n;
    return block;
  }

  // place schedules a block at the next frame.
  place({ buffer, from, frames }) {
    if (this.opens !== null && from + frames > this.opens) this.raise((this.next + Math.max(0, this.opens - from)) / this.rate);
    const source = this.context.createBufferSource();
    source.buffer = buffer;
    source.connect(this.input);
    source.onended = () => {
      source.disconnect();
      this.live.delete(source);
      this.read();
      this.pump();
    };
    source.start(this.next / this.rate);
    this.live.add(source);
    this.box.post(PLACEMENT, this.epoch, this.next, from, frames);
    this.next += frames;
  }

  // read notes how the device's clock stands against the page's, and beside it what
  // that can be checked against: some browsers' output times are not what they say.
  read() {
    const c = this.context;
    const stamp = c.getOutputTimestamp ? c.getOutputTimestamp() : { contextTime: 0, performanceTime: 0 };
    this.box.post(
      READING, stamp.contextTime, stamp.performanceTime, this.running() ? 1 : 0,
      c.currentTime, performance.now(), c.outputLatency || 0, c.baseLatency || 0,
    );
  }

  // resume asks for the sound to run, whenever somebody does something: a browser may
  // grant it only then. How long the device takes to start is its own matter (one that
  // has to wake takes seconds): nothing is undone meanwhile.
  resume() {
    if (!this.context || this.running() || !this.wanted) return;
    const settled = () => {
      clearTimeout(this.stuck);
      this.stuck = setTimeout(() => this.leave(), STUCK);
    };
    this.ask().then(settled, settled);
    if (this.context.state === "interrupted") settled(); // it may never be told
  }

  ask() {
    return this.native.resume.call(this.context);
  }

  // leave is for systems that leave an interrupted context only by a suspend and a
  // resume, or say that it was resumed though it was not.
  leave() {
    if (this.running() || !this.wanted) return;
    this.context.suspend().then(() => this.ask()).catch(() => {});
  }

  // changed is told of each change of the context's state. What begins while the sound
  // does not run is played when it does: that it still does not is no interruption.
  changed() {
    const ran = this.ran;
    this.ran = this.running();
    if (this.ran) {
      if (this.torn) this.restart(); // but not what was begun while nothing ran
      this.pump();
      this.box.post(STATE, 1, 0);
    } else if (ran) {
      this.torn = true;
      this.box.post(STATE, 0, document.hidden ? HIDDEN : INTERRUPTED);
    }
  }

  visible() {
    this.wanted = !document.hidden;
    if (document.hidden) {
      this.box.post(STATE, 0, HIDDEN);
      this.context.suspend().catch(() => {});
    } else {
      this.ask().catch(() => {});
    }
  }
}

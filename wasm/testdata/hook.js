// Runs before the page's own scripts: whatever is connected to the loudspeaker
// goes through a monitor, which is there before the first block.
(() => {
  const Native = window.AudioContext;
  const connect = AudioNode.prototype.connect;
  const m = {
    ready: false,
    parts: [], // {frame, left, right} as they passed
    readings: [], // [context time (s), performance time (ms)]
    onsets: [], // context frames at which the right channel rose to `rise`
    rise: 0.25,
    quiet: 9600, // frames after an onset in which no other is looked for
    missed: 0, // frames that the monitor did not see
    quietUntil: 0,
    starts: [], // blocks as they were scheduled: {at (s), frames}
  };
  window.monitor = m;

  function attach(context) {
    m.context = context;
    m.entry = context.createGain();
    context.audioWorklet?.addModule("/test/monitor.js").then(() => {
      m.node = new AudioWorkletNode(context, "monitor", { outputChannelCount: [2] });
      connect.call(m.entry, m.node);
      connect.call(m.node, context.destination);
      m.node.port.onmessage = (event) => event.data.forEach(take);
      m.ready = true;
    });
    const read = () => {
      const stamp = context.getOutputTimestamp();
      if (stamp.performanceTime && context.state === "running") m.readings.push([stamp.contextTime, stamp.performanceTime]);
      requestAnimationFrame(read);
    };
    read();
  }

  // A loaded machine may hand the monitor an old currentFrame for some quanta,
  // and later the right one. The quanta themselves are counted; where the count
  // began too low, before anything sounded, it is put right, and later a stated
  // frame ahead of the count means that some were missed.
  function take(part) {
    m.count ??= part.frame;
    const ahead = part.frame - m.count;
    if (ahead > 0 && m.onsets.length === 0) m.parts.forEach((p) => (p.frame += ahead));
    else if (ahead > 0) m.missed += ahead;
    if (ahead > 0) m.count = part.frame;
    part.frame = m.count;
    m.count += 128;
    m.parts.push(part);
    for (let i = 0; i < part.right.length; i++) {
      const frame = part.frame + i;
      if (frame < m.quietUntil || Math.abs(part.right[i]) < m.rise) continue;
      m.onsets.push(frame);
      m.quietUntil = frame + m.quiet;
    }
  }

  // performance time at which a context frame is heard, by the reading nearest to a time
  m.heardAt = (frame, near) => {
    let best = m.readings[0];
    for (const r of m.readings) if (Math.abs(r[1] - near) < Math.abs(best[1] - near)) best = r;
    return best[1] + (frame / m.context.sampleRate - best[0]) * 1000;
  };
  m.last = (frame) => {
    const r = m.readings.at(-1);
    return r[1] + (frame / m.context.sampleRate - r[0]) * 1000;
  };
  // hands over what was captured: frames as float32, left and right in turn
  m.send = async () => {
    const parts = m.parts;
    const out = new Float32Array(parts.length * 256);
    parts.forEach((p, k) => {
      for (let i = 0; i < 128; i++) {
        out[256 * k + 2 * i] = p.left[i];
        out[256 * k + 2 * i + 1] = p.right[i];
      }
    });
    await fetch("/test/capture", { method: "POST", body: out });
    return { from: parts[0].frame, missed: m.missed };
  };
  m.clear = () => {
    m.parts = [];
    m.onsets = [];
  };

  window.AudioContext = class extends Native {
    constructor(options) {
      super(options);
      if (!m.context) attach(this);
    }
  };
  AudioNode.prototype.connect = function (to, ...rest) {
    if (m.context && to === m.context.destination && this !== m.node) {
      connect.call(this, m.entry, ...rest);
      return to;
    }
    return connect.call(this, to, ...rest);
  };
  const start = AudioBufferSourceNode.prototype.start;
  AudioBufferSourceNode.prototype.start = function (at, ...rest) {
    const b = this.buffer;
    m.starts.push({ at, frames: b.length, first: [b.getChannelData(0)[0], b.getChannelData(1)[0]], left: m.keep ? Array.from(b.getChannelData(0)) : null, right: m.keep ? Array.from(b.getChannelData(1)) : null });
    return start.call(this, at, ...rest);
  };

  // a busy main thread
  m.stall = (ms) => {
    const until = performance.now() + ms;
    while (performance.now() < until);
  };
})();

// A click at a known frame once every quarter of a second, straight to the
// loudspeaker, and readings of the clock: with or without a monitor in the way.
window.bare = { readings: [], clicks: [] };
window.addEventListener("click", async () => {
  const context = new AudioContext({ sampleRate: 48000 });
  if (window.monitor) {
    while (!monitor.ready) await new Promise((r) => setTimeout(r, 10));
  }
  await context.resume();
  const click = context.createBuffer(2, 1, 48000);
  click.getChannelData(0)[0] = click.getChannelData(1)[0] = 0.5;
  const first = Math.ceil(context.currentTime * 48000) + 9600;
  for (let k = 0; k < 16; k++) {
    const frame = first + 12000 * k + 37 * k; // never on the same place in a quantum
    const source = context.createBufferSource();
    source.buffer = click;
    source.connect(context.destination);
    source.start(frame / 48000);
    bare.clicks.push(frame);
  }
  const end = performance.now() + 4500;
  while (performance.now() < end) {
    const stamp = context.getOutputTimestamp();
    if (stamp.performanceTime) {
      const now = performance.now();
      bare.readings.push([stamp.contextTime * 1000 - stamp.performanceTime, now - stamp.performanceTime]);
    }
    await new Promise((r) => setTimeout(r, 10));
  }
  bare.latency = (context.baseLatency + context.outputLatency) * 1000;
  bare.done = true;
});

// Hands everything that passes to the page, and passes it on unchanged.
const QUANTA = 8; // render quanta in a message

class Monitor extends AudioWorkletProcessor {
  constructor() {
    super();
    this.parts = [];
  }

  process([input], [output]) {
    const [left, right] = input.length ? [input[0], input[1] ?? input[0]] : [new Float32Array(128), new Float32Array(128)];
    output[0].set(left);
    output[1]?.set(right);
    this.parts.push({ frame: currentFrame, left: left.slice(), right: right.slice() });
    if (this.parts.length === QUANTA) {
      this.port.postMessage(this.parts);
      this.parts = [];
    }
    return true;
  }
}

registerProcessor("monitor", Monitor);

// What a mix of the two drums may be: lead, bass and volume are gains from 0 to 1, and
// stage is where the drums stand.

// The gains of lead left, lead right, bass left and bass right.
export const PLACES = { centre: [0.71, 0.71, 0.71, 0.71], spread: [0.83, 0.56, 0.56, 0.83], apart: [1, 0, 0, 1] };

const placed = (stage) => typeof stage === "string" && Object.hasOwn(PLACES, stage);

// mixed is a mix with a part of it changed. A gain beyond 0..1 becomes the end that it
// is beyond; what is no gain and no place changes nothing.
export function mixed(mix, part) {
  const now = { ...mix };
  for (const [name, value] of Object.entries(part)) {
    if (name === "stage" ? placed(value) : Number.isFinite(value)) {
      now[name] = name === "stage" ? value : Math.min(Math.max(value, 0), 1);
    }
  }
  return now;
}

// published is what window.groundbeat does to the mix, with sound and without: it tells
// whoever asks for what cannot be what can, and then changes nothing.
export function published(bridge) {
  return {
    balance(lead, bass, stage) {
      gain("lead", lead);
      gain("bass", bass);
      if (stage !== undefined) place(stage);
      bridge?.balance(lead, bass, stage);
    },
    volume(v) {
      gain("volume", v);
      bridge?.volume(v);
    },
  };
}

function gain(name, value) {
  if (typeof value !== "number") throw new TypeError(`${name} is ${told(value)}; it must be a number from 0 to 1`);
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} is ${value}; it must be from 0 to 1`);
}

function place(stage) {
  const all = Object.keys(PLACES).map((name) => JSON.stringify(name)).join(", ");
  if (typeof stage !== "string") throw new TypeError(`stage is ${told(stage)}; it must be one of ${all}`);
  if (!placed(stage)) throw new RangeError(`stage is ${JSON.stringify(stage)}; it must be one of ${all}`);
}

// told is how a value is named in an error.
function told(value) {
  return typeof value === "object" && value ? "an object" : typeof value === "string" ? JSON.stringify(value) : String(value);
}

// Mail from the page to the game: one ring of fixed-size letters, read once a
// tick. A letter is eight numbers: its kind, then up to seven values. Letters
// keep their order across kinds, so a tap never overtakes the clock reading
// that was taken before it.
//
// kind 1, reading:   output time stamp: context time (s), performance time (ms), 0 both if there is none; running (0 or 1),
//                    current context time (s), performance time now (ms), output latency, base latency (s, 0 if not stated)
// kind 2, placement: epoch, context frame, stream frame, frames
// kind 3, tap:       event time stamp (ms), x, y (0..1 in the tap area), pointer id, by (0 key, 1 mouse, 2 touch, 3 pen, 4 click), round id
// kind 4, state:     running (0 or 1), reason (0 none, 1 hidden, 2 interrupted, 3 ran dry, 4 device)
const SIZE = 8;
const ROOM = 1024;

export const READING = 1, PLACEMENT = 2, TAP = 3, STATE = 4;
export const HIDDEN = 1, INTERRUPTED = 2, DRY = 3, DEVICE = 4;

export function mailbox() {
  const letters = new Float64Array(SIZE * ROOM);
  return {
    letters: new Uint8Array(letters.buffer),
    waiting: 0, // letters to be read
    lost: 0, // letters that found the box full
    post(kind, ...values) {
      if (this.waiting === ROOM) {
        // Readings come again; taps and placements do not. Make room by
        // forgetting the oldest reading.
        if (kind === READING || !this.forget()) {
          this.lost++;
          return;
        }
      }
      const at = SIZE * this.waiting++;
      letters.fill(0, at, at + SIZE);
      letters[at] = kind;
      letters.set(values, at + 1);
    },
    forget() {
      for (let i = 0; i < this.waiting; i++) {
        if (letters[SIZE * i] !== READING) continue;
        letters.copyWithin(SIZE * i, SIZE * (i + 1), SIZE * this.waiting);
        this.waiting--;
        return true;
      }
      return false;
    },
    // The reader copies `waiting` letters from the front and then clears.
    clear() {
      this.waiting = 0;
    },
  };
}

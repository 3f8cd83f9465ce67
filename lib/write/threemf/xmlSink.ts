/** Where a document is written piece by piece: text, and coordinates straight to bytes. */
export interface XmlSink {
  /** Writes text as it stands; text from outside must have been escaped. */
  text(text: string): void;
  /** Writes a few bytes (at most 64) encoded before: the mark-up that a large mesh repeats. */
  bytes(bytes: Uint8Array): void;
  /** Writes a whole number from 0 to 2^53. */
  whole(value: number): void;
  /** Writes a whole number of nanometres as millimetres, without exponent or needless zeros. */
  millimetres(nanometres: number): void;
  /** Hands on what is still held back. */
  end(): void;
}

/** Room for any number and any repeated mark-up; a buffer with less left is handed on first. */
const LONGEST_PIECE = 64;
const BUFFER_BYTES = 65536;

/**
 * A sink that gathers bytes in one buffer of fixed size and hands each full buffer to `push`, so that a
 * document of any length passes in little memory. `push` must copy what it wants to keep.
 */
export function xmlSink(push: (bytes: Uint8Array, last: boolean) => void): XmlSink {
  const buffer = new Uint8Array(BUFFER_BYTES);
  const encoder = new TextEncoder();
  let used = 0;

  const flush = (last: boolean): void => {
    push(buffer.subarray(0, used), last);
    used = 0;
  };
  const whole = (value: number): void => {
    if (used > BUFFER_BYTES - LONGEST_PIECE) flush(false);
    used = writeWhole(buffer, used, value);
  };
  return {
    text(text) {
      for (let rest = text; rest.length > 0; ) {
        const { read, written } = encoder.encodeInto(rest, buffer.subarray(used));
        used += written;
        rest = rest.slice(read);
        if (rest.length > 0) flush(false);
      }
    },
    bytes(bytes) {
      if (used > BUFFER_BYTES - LONGEST_PIECE) flush(false);
      // A loop: for so few bytes a call of `set` costs more than the copying.
      for (let i = 0; i < bytes.length; i++) buffer[used++] = bytes[i];
    },
    whole,
    millimetres(nanometres) {
      if (used > BUFFER_BYTES - LONGEST_PIECE) flush(false);
      if (nanometres < 0) buffer[used++] = MINUS;
      const size = Math.abs(nanometres);
      const units = Math.floor(size / 1e6);
      used = writeWhole(buffer, used, units);
      used = writeFraction(buffer, used, size - units * 1e6);
    },
    end() {
      flush(true);
    },
  };
}

const ZERO = 0x30;
const MINUS = 0x2d;
const POINT = 0x2e;

function writeWhole(buffer: Uint8Array, at: number, value: number): number {
  let end = at + 1;
  for (let rest = value; rest >= 10; rest = Math.floor(rest / 10)) end++;
  for (let i = end - 1, rest = value; i >= at; i--) {
    const tenth = Math.floor(rest / 10);
    buffer[i] = ZERO + rest - 10 * tenth;
    rest = tenth;
  }
  return end;
}

/** Six decimals after a point, without zeros at the end; nothing at all for 0. */
function writeFraction(buffer: Uint8Array, at: number, millionths: number): number {
  let digits = 6;
  let rest = millionths;
  if (rest === 0) return at;
  for (; rest % 10 === 0; digits--) rest /= 10;
  buffer[at] = POINT;
  for (let i = at + digits; i > at; i--) {
    const tenth = Math.floor(rest / 10);
    buffer[i] = ZERO + rest - 10 * tenth;
    rest = tenth;
  }
  return at + digits + 1;
}

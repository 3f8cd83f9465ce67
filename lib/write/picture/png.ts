import { zlibSync } from 'fflate';

/** A picture: red, green, blue of pixel i at 3i, rows from the top. */
export interface Pixels {
  width: number;
  height: number;
  rgb: Uint8Array;
}

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const COLOUR_TYPE_RGB = 2;

/**
 * A picture as a PNG file, 8 bits a channel, without any date: the same bytes for the same pixels.
 * Source: ISO/IEC 15948 (Portable Network Graphics), from memory; read back by another program in the tests.
 */
export function encodePng({ width, height, rgb }: Pixels): Uint8Array {
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  header.set([8, COLOUR_TYPE_RGB, 0, 0, 0], 8);
  const chunks = [
    chunk('IHDR', header),
    chunk('IDAT', zlibSync(filtered(width, height, rgb), { level: 6 })),
    chunk('IEND', new Uint8Array()),
  ];
  const bytes = new Uint8Array(SIGNATURE.length + chunks.reduce((sum, { length }) => sum + length, 0));
  bytes.set(SIGNATURE);
  chunks.reduce((at, piece) => {
    bytes.set(piece, at);
    return at + piece.length;
  }, SIGNATURE.length);
  return bytes;
}

/** Number of filters in the standard. */
const FILTERS = 5;

/** Each row as differences from what its neighbours foretell, by the filter that leaves the smallest ones. */
function filtered(width: number, height: number, rgb: Uint8Array): Uint8Array {
  const row = 3 * width;
  const out = new Uint8Array(height * (row + 1));
  const tried = new Uint8Array(row);
  for (let y = 0; y < height; y++) {
    const to = y * (row + 1);
    let least = Number.POSITIVE_INFINITY;
    for (let filter = 0; filter < FILTERS; filter++) {
      const sum = differences(rgb, y, row, filter, tried);
      if (sum >= least) continue;
      least = sum;
      out[to] = filter;
      out.set(tried, to + 1);
    }
  }
  return out;
}

/** Writes the differences of row `y` by one filter. Returns their sum, those from 128 on counting as negative ones. */
function differences(rgb: Uint8Array, y: number, row: number, filter: number, into: Uint8Array): number {
  let sum = 0;
  for (let i = 0; i < row; i++) {
    const at = y * row + i;
    const left = i < 3 ? 0 : rgb[at - 3];
    const above = y === 0 ? 0 : rgb[at - row];
    const corner = i < 3 || y === 0 ? 0 : rgb[at - row - 3];
    const difference = (rgb[at] - foretold(filter, left, above, corner)) & 0xff;
    into[i] = difference;
    sum += difference < 128 ? difference : 256 - difference;
  }
  return sum;
}

/** What a filter of the standard foretells: none, sub, up, average, Paeth. */
function foretold(filter: number, left: number, above: number, corner: number): number {
  if (filter === 0) return 0;
  if (filter === 1) return left;
  if (filter === 2) return above;
  if (filter === 3) return (left + above) >> 1;
  const toLeft = Math.abs(above - corner);
  const toAbove = Math.abs(left - corner);
  const toCorner = Math.abs(left + above - 2 * corner);
  if (toLeft <= toAbove && toLeft <= toCorner) return left;
  return toAbove <= toCorner ? above : corner;
}

function chunk(type: string, data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + data.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, data.length);
  bytes.set(new TextEncoder().encode(type), 4);
  bytes.set(data, 8);
  view.setUint32(8 + data.length, crc32(bytes.subarray(4, 8 + data.length)));
  return bytes;
}

/** Cyclic redundancy check with the polynomial 0xedb88320 (reversed), a table of its remainders by byte. */
const REMAINDERS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (rest >>> 8) ^ REMAINDERS[(rest ^ byte) & 0xff];
  return ~rest >>> 0;
}

import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import { refuse } from '../refusal.js';
import type { Part } from '../solid/mesh.js';
import { writeModel } from './threemf/model.js';
import { contentTypes, relationships, THUMBNAIL } from './threemf/package.js';
import { type XmlSink, xmlSink } from './threemf/xmlSink.js';

/** On gear meshes the highest level takes about twice as long for 2 % less. */
const DEFLATE_LEVEL = 3;
/** A zip entry without the ZIP64 extension, which producers of 3MF should avoid, ends here. */
const LARGEST_ENTRY = 0xffff_ffff;

/** The first day a zip file can name, in local time as zip has it: today's date would change the bytes. */
const firstDay = () => new Date(1980, 0, 1);

/** What the package says of itself besides its bodies. */
export interface PackageOptions {
  /** Names the assembly and the file [`gear set`]. */
  title?: string;
  /** A PNG that file managers and slicers show [none]; `renderPicture(parts, { width: 256, height: 256 })` makes one. */
  thumbnail?: Uint8Array;
}

/**
 * All parts, in place, as one 3MF package in memory: a named object a part, all of them in one assembly
 * that a slicer keeps together; equal planets share one mesh. Coordinates in mm with six decimals; the same bytes for
 * the same input.
 * @param parts at least one; each mesh closed and outward (see `Mesh`), z from the bed up
 * @throws Refusal for no part at all, a part without a body, positions that are not finite, two vertices of a
 * part closer than the last decimal, or a model of more than 4 GiB before compression
 * Source: 3MF Core Specification 1.2.4; ECMA-376 part 2 for the package (the latter from memory).
 */
export function encode3mf(parts: readonly Part[], options: PackageOptions = {}): Uint8Array {
  return join([...threemfChunks(parts, options)]);
}

/**
 * The same file as `encode3mf`, piece by piece: joined, the chunks are that file, byte for byte. A mesh of any size
 * passes in little memory.
 * @throws Refusal as `encode3mf` does, part of it only when the chunks are asked for
 */
export function* threemfChunks(
  parts: readonly Part[],
  { title = 'gear set', thumbnail }: PackageOptions = {},
): Generator<Uint8Array> {
  if (parts.length === 0) refuse('wrong-count', 'parts', [], 'a 3MF file holds at least one part');
  for (const { name, mesh } of parts) {
    const count = mesh.triangles.length / 3;
    if (count < 4) refuse('bad-mesh', `parts.${name}.triangles`, count, 'a body has at least 4 triangles');
  }
  const ready: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    ready.push(chunk);
  });
  const types = contentTypes(thumbnail !== undefined);
  const relations = relationships(thumbnail !== undefined);
  const steps = [
    addEntry(zip, '[Content_Types].xml', (sink) => [sink.text(types)]),
    addEntry(zip, '_rels/.rels', (sink) => [sink.text(relations)]),
    addEntry(zip, '3D/3dmodel.model', (sink) => writeModel(sink, parts, title)),
  ];
  for (const step of steps) for (const _ of step) yield* ready.splice(0);
  if (thumbnail) addBytes(zip, THUMBNAIL, thumbnail);
  zip.end();
  yield* ready;
}

/** Adds an entry as it is: a PNG is compressed already. */
function addBytes(zip: Zip, name: string, bytes: Uint8Array): void {
  const entry = new ZipPassThrough(name);
  entry.mtime = firstDay();
  zip.add(entry);
  entry.push(bytes, true);
}

/** Adds one entry, compressed while it is written, and stops wherever `write` does. */
function* addEntry(zip: Zip, name: string, write: (sink: XmlSink) => Iterable<void>): Generator<void> {
  const entry = new ZipDeflate(name, { level: DEFLATE_LEVEL });
  entry.mtime = firstDay();
  zip.add(entry);
  let size = 0;
  const sink = xmlSink((bytes, last) => {
    size += bytes.length;
    if (size > LARGEST_ENTRY)
      refuse('too-large', 'parts', size, 'a model in a 3MF file is at most 4294967295 bytes long');
    entry.push(bytes, last);
  });
  yield* write(sink);
  sink.end();
}

function join(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

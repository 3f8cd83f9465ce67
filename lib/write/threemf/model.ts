import type { Part } from '../../solid/mesh.js';
import { escapeText } from '../escape.js';
import { type Shared, sharedBodies } from './sharedBodies.js';
import { type Nanometres, roundVertices } from './vertices.js';
import type { XmlSink } from './xmlSink.js';

/** Least distance of the set from the planes x = 0 and y = 0, in nanometres (10 mm). */
const MARGIN = 10e6;

const CORE_NAMESPACE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';

/** Vertices or triangles written between two chances to pass on what has been compressed. */
const STRIDE = 3 * 16384;

/**
 * Writes the 3D Model part: an object a part (ids 1, 2, …), then one components object that holds them all in their
 * places, then one build item of it, moved in x and y so that everything is at least 10 mm inside the positive octant.
 * z is written as it is: the bed is z = 0. The first of several equal bodies is a mesh, the others refer to it.
 * Yields now and then, so that the caller can pass on what has been written.
 * Source: 3MF Core Specification 1.2.4, sections 3.3 (octant), 3.4 (model), 4.1 (meshes), 4.2 (components).
 */
export function* writeModel(sink: XmlSink, parts: readonly Part[], title: string): Generator<void> {
  sink.text('<?xml version="1.0" encoding="UTF-8"?>\n');
  sink.text(`<model unit="millimeter" xml:lang="en-US" xmlns="${CORE_NAMESPACE}">\n`);
  sink.text(`<metadata name="Title">${escapeText(title)}</metadata>\n`);
  sink.text('<metadata name="Application">cogweave</metadata>\n<resources>\n');
  const shared = sharedBodies(parts);
  for (const [index, part] of parts.entries()) {
    sink.text(`<object id="${index + 1}" type="model" name="${escapeText(part.name)}">\n`);
    const first = shared[index];
    if (first) writeCopy(sink, first);
    else yield* writeMesh(sink, part, roundVertices(part));
    sink.text('</object>\n');
  }
  const assembly = parts.length + 1;
  sink.text(`<object id="${assembly}" type="model" name="${escapeText(title)}">\n<components>\n`);
  for (let id = 1; id < assembly; id++) sink.text(`<component objectid="${id}"/>\n`);
  sink.text('</components>\n</object>\n</resources>\n<build>\n');
  sink.text(`<item objectid="${assembly}" transform="1 0 0 0 1 0 0 0 1 `);
  const [left, front] = leastCorner(parts);
  sink.millimetres(MARGIN - left);
  sink.text(' ');
  sink.millimetres(MARGIN - front);
  sink.text(' 0"/>\n</build>\n</model>\n');
}

/** Least x and y of all vertices, in nanometres. */
function leastCorner(parts: readonly Part[]): [number, number] {
  const least: [number, number] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const { mesh } of parts)
    for (let i = 0; i < mesh.positions.length; i += 3) {
      if (mesh.positions[i] < least[0]) least[0] = mesh.positions[i];
      if (mesh.positions[i + 1] < least[1]) least[1] = mesh.positions[i + 1];
    }
  return [Math.round(least[0] * 1e6), Math.round(least[1] * 1e6)];
}

/** A part that is an earlier one, turned and moved: x' = x cos − y sin + dx, y' = x sin + y cos + dy. */
function writeCopy(sink: XmlSink, { first, cos, sin, offset: [dx, dy] }: Shared): void {
  const turn = [cos, sin, 0, -sin, cos, 0, 0, 0, 1].map((value) => `${Number(value.toFixed(12)) + 0}`);
  sink.text(`<components>\n<component objectid="${first + 1}" transform="${turn.join(' ')} `);
  sink.millimetres(Math.round(dx * 1e6) + 0);
  sink.text(' ');
  sink.millimetres(Math.round(dy * 1e6) + 0);
  sink.text(' 0"/>\n</components>\n');
}

function* writeMesh(sink: XmlSink, { mesh: { triangles } }: Part, vertices: Nanometres): Generator<void> {
  sink.text('<mesh>\n<vertices>\n');
  for (let i = 0; i < vertices.length; i += 3) {
    if (i % STRIDE === 0) yield;
    sink.bytes(MARKUP.x);
    sink.millimetres(vertices[i]);
    sink.bytes(MARKUP.y);
    sink.millimetres(vertices[i + 1]);
    sink.bytes(MARKUP.z);
    sink.millimetres(vertices[i + 2]);
    sink.bytes(MARKUP.end);
  }
  sink.text('</vertices>\n<triangles>\n');
  for (let i = 0; i < triangles.length; i += 3) {
    if (i % STRIDE === 0) yield;
    sink.bytes(MARKUP.v1);
    sink.whole(triangles[i]);
    sink.bytes(MARKUP.v2);
    sink.whole(triangles[i + 1]);
    sink.bytes(MARKUP.v3);
    sink.whole(triangles[i + 2]);
    sink.bytes(MARKUP.end);
  }
  sink.text('</triangles>\n</mesh>\n');
}

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

/** What every vertex and every triangle repeats. */
const MARKUP = {
  x: encode('<vertex x="'),
  y: encode('" y="'),
  z: encode('" z="'),
  v1: encode('<triangle v1="'),
  v2: encode('" v2="'),
  v3: encode('" v3="'),
  end: encode('"/>\n'),
};

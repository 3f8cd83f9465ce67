import type { Part } from '../../solid/mesh.js';
import { escapeText } from '../escape.js';
import { type Nanometres, roundVertices } from './vertices.js';
import type { XmlSink } from './xmlSink.js';

/** Least distance of the set from the planes x = 0 and y = 0, in nanometres (10 mm). */
const MARGIN = 10e6;

const CORE_NAMESPACE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';

/**
 * Writes the 3D Model part: a mesh object a part (ids 1, 2, …), then one components object that holds them
 * all in their places, then one build item of it, moved in x and y so that everything is at least 10 mm
 * inside the positive octant. z is written as it is: the bed is z = 0.
 * Source: 3MF Core Specification 1.2.4, sections 3.3 (octant), 3.4 (model), 4.1 (meshes), 4.2 (components).
 */
export function writeModel(sink: XmlSink, parts: readonly Part[], title: string): void {
  sink.text('<?xml version="1.0" encoding="UTF-8"?>\n');
  sink.text(`<model unit="millimeter" xml:lang="en-US" xmlns="${CORE_NAMESPACE}">\n`);
  sink.text(`<metadata name="Title">${escapeText(title)}</metadata>\n`);
  sink.text('<metadata name="Application">cogweave</metadata>\n<resources>\n');
  const least: [number, number] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  parts.forEach((part, index) => {
    const vertices = roundVertices(part);
    for (let i = 0; i < vertices.length; i += 3) {
      if (vertices[i] < least[0]) least[0] = vertices[i];
      if (vertices[i + 1] < least[1]) least[1] = vertices[i + 1];
    }
    writeObject(sink, index + 1, part, vertices);
  });
  const assembly = parts.length + 1;
  sink.text(`<object id="${assembly}" type="model" name="${escapeText(title)}">\n<components>\n`);
  for (let id = 1; id < assembly; id++) sink.text(`<component objectid="${id}"/>\n`);
  sink.text('</components>\n</object>\n</resources>\n<build>\n');
  sink.text(`<item objectid="${assembly}" transform="1 0 0 0 1 0 0 0 1 `);
  sink.millimetres(MARGIN - least[0]);
  sink.text(' ');
  sink.millimetres(MARGIN - least[1]);
  sink.text(' 0"/>\n</build>\n</model>\n');
}

function writeObject(sink: XmlSink, id: number, part: Part, vertices: Nanometres): void {
  const { triangles } = part.mesh;
  sink.text(`<object id="${id}" type="model" name="${escapeText(part.name)}">\n<mesh>\n<vertices>\n`);
  for (let i = 0; i < vertices.length; i += 3) {
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
    sink.bytes(MARKUP.v1);
    sink.whole(triangles[i]);
    sink.bytes(MARKUP.v2);
    sink.whole(triangles[i + 1]);
    sink.bytes(MARKUP.v3);
    sink.whole(triangles[i + 2]);
    sink.bytes(MARKUP.end);
  }
  sink.text('</triangles>\n</mesh>\n</object>\n');
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

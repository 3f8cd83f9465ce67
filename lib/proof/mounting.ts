import { fasteners, threadDiameter } from '../features/fasteners.js';
import type { PlanetarySpec } from '../spec/types.js';
import type { MountingRecord } from './sheetTypes.js';

/** Lengths in which countersunk screws are sold, mm: preferred lengths of ISO 10642, from memory. */
const LENGTHS = [8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 120, 140];

/** What to saw, drill and buy for a panel mount; nothing where the file asks for none. */
export function mountingRecord({ ring, faceWidth }: PlanetarySpec): MountingRecord | undefined {
  const { mount, flange } = ring;
  if (!mount || !flange) return undefined;
  const { hole, panel, screw, screws, circle, clamp } = mount;
  const stack = flange.thickness + panel + clamp;
  // The tip must reach through the nut, which lies within the clamp ring.
  const reach = stack - mount.nutDepth + fasteners[screw].nutHeight;
  const length = LENGTHS.find((each) => each >= reach) ?? Math.ceil(reach);
  const drill = Math.max(mount.diameter, fasteners[screw].medium);
  const angles = Array.from({ length: screws }, (_, i) => Math.round((36000 * i) / screws) / 100);
  const above = faceWidth - flange.thickness - panel;
  const out = length - stack;
  return {
    hole,
    panel,
    drill: { diameter: drill, circle, count: screws, angles },
    screw: `countersunk ${screw} × ${length} (ISO 10642)`,
    nut: `hexagon ${screw} (ISO 4032)`,
    says: [
      `Saw a hole of ${hole} mm diameter through the panel, ${panel} mm thick. Try the ring in it before drilling.`,
      'Put the ring through the hole until its flange lies against the panel, and lay the clamp ring around it on the other side, its nut pockets outward.',
      `Drill ${screws} holes of ${drill} mm through the panel on a circle of ${circle} mm, at ${angles.map((angle) => `${angle}°`).join(', ')}; use the flange as the template.`,
      `Fasten with ${screws} countersunk ${screw} × ${length} screws, heads in the flange and nuts in the clamp ring; tighten by hand, plastic creeps.` +
        (out > threadDiameter(screw) / 2
          ? ` About ${out.toFixed(1)} mm of each screw stands out: cut it off and round the end.`
          : ''),
      above >= 0
        ? `On the clamp ring’s side the gears stand ${above.toFixed(1)} mm out of the panel, the clamp ring ${clamp} mm.`
        : `On the clamp ring’s side the gears end ${(-above).toFixed(1)} mm inside the panel.`,
      'Wear eye protection, clamp the panel down, and keep to the instructions of saw and drill.',
    ],
  };
}

import type {
  CrankSocket,
  GearFeatures,
  PlanetFeatures,
  RingFeatures,
  Text,
} from '../spec/features/types.js';
import { filled, textWords } from '../spec/features/words.js';
import type { CommonSpec } from '../spec/types.js';

/**
 * Features as they are drawn so that they come out as asked: openings wider and what stands up narrower by the growth
 * on either side, everything larger by the shrinkage; heights and depths grow by no walls.
 * @param spec as asked
 */
export function drawnFeatures(growth: number, scale: number, spec: CommonSpec) {
  const opening = (width: number) => (width + 2 * growth) * scale;
  const standing = (width: number) => (width - 2 * growth) * scale;
  const length = (size: number) => size * scale;
  const text = ({ content, size, height, ...rest }: Text): Text => ({
    ...rest,
    // Labels say what is asked, not what is drawn.
    content: filled(content, textWords(spec)),
    size: length(size),
    height: length(height),
  });
  const crank = ({ acrossFlats, clearance, depth, handle, ...rest }: CrankSocket): CrankSocket => ({
    ...rest,
    acrossFlats: standing(acrossFlats),
    // Both peg and pit are set back.
    clearance: (clearance + 4 * growth) * scale,
    depth: length(depth),
    ...(handle !== undefined && { handle: length(handle) }),
  });
  const pit = <T extends { diameter: number; depth: number }>(asked: T): T => ({
    ...asked,
    diameter: opening(asked.diameter),
    depth: length(asked.depth),
  });

  return {
    gear({ screw, nut, knob, crank: socket, text: letters }: GearFeatures): GearFeatures {
      return {
        ...(screw && {
          screw: { ...screw, diameter: opening(screw.diameter), headDiameter: opening(screw.headDiameter) },
        }),
        ...(nut && {
          nut: {
            ...nut,
            acrossFlats: opening(nut.acrossFlats),
            diameter: opening(nut.diameter),
            depth: length(nut.depth),
          },
        }),
        ...(knob && { knob: { ...knob, diameter: standing(knob.diameter), height: length(knob.height) } }),
        ...(socket && { crank: crank(socket) }),
        ...(letters && { text: text(letters) }),
      };
    },
    planet({ hole, dimple, pocket, text: letters }: PlanetFeatures): PlanetFeatures {
      return {
        ...(hole && { hole: { diameter: opening(hole.diameter) } }),
        ...(dimple && { dimple: pit(dimple) }),
        ...(pocket && { pocket: pit(pocket) }),
        ...(letters && { text: text(letters) }),
      };
    },
    ring({ grip, flange, bolts, mount, text: letters }: RingFeatures): RingFeatures {
      return {
        ...(grip && { grip: { ...grip, depth: length(grip.depth) } }),
        ...(flange && {
          flange: { ...flange, diameter: standing(flange.diameter), thickness: length(flange.thickness) },
        }),
        ...(bolts && {
          bolts: { ...bolts, circle: length(bolts.circle), diameter: opening(bolts.diameter) },
        }),
        ...(mount && {
          mount: {
            ...mount,
            hole: length(mount.hole),
            panel: length(mount.panel),
            // Ring and clamp ring are both set back.
            clearance: opening(mount.clearance),
            circle: length(mount.circle),
            diameter: opening(mount.diameter),
            headDiameter: opening(mount.headDiameter),
            nutFlats: opening(mount.nutFlats),
            nutDepth: length(mount.nutDepth),
            clamp: length(mount.clamp),
          },
        }),
        ...(letters && { text: text(letters) }),
      };
    },
  };
}

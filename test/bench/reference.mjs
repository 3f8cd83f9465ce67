// The reference set: 15, 15 and 45 teeth, five planets, herringbone at 30°, a round bore of 8 mm.
import { resolveSpec } from 'cogweave';

export const reference = {
  name: 'reference',
  kind: 'planetary',
  module: 1.5,
  pressureAngle: 20,
  rack: 'B',
  helix: { form: 'herringbone', angle: 30, hand: 'right' },
  faceWidth: 20,
  sun: { teeth: 15, profileShift: 0, bore: { shape: 'round', diameter: 8 } },
  planets: { teeth: 15, count: 5, spacing: 'equal' },
  ring: { teeth: 45, rim: 5 },
  fit: { gap: 0.25, gapShare: 0.5 },
  printer: { nozzle: 0.4, layer: 0.2 },
};

export const spec = resolveSpec(reference);

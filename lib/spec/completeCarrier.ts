import { gearSizes } from '../tooth/gear.js';
import { ranges } from './ranges.js';
import type { FileOf } from './schema.js';
import type { Carrier, Lips, PlanetarySpec, Rack } from './types.js';

/** Plates are this thick, up to whole layers, mm. Common practice, no source. */
const USUAL_THICKNESS = 3;
/** Pins are this share of the planets' root diameter, and no thicker than this, mm. Common practice, no source. */
const PIN_SHARE = 0.5;
const MOST_PIN = 10;
/** Cones of a pin are this many gaps deep, so that the planet is held whichever way it is pushed. */
const DEPTH_PER_GAP = 3;
/** What lips leave between first layers, mm. Common practice, no source. */
const FIRST_LAYER_SPARE = 0.02;

/** What the carrier's defaults follow from beside the file. Lengths in mm. */
interface Known {
  module: number;
  rack: Rack;
  helixAngle: number;
  layer: number;
}

/** The carrier with its defaults. */
export function completeCarrier(file: FileOf<'planetary'>, known: Known): PlanetarySpec['carrier'] {
  const { carrier } = file;
  if (carrier === 'none') return 'none';
  const { form, plates, axialGap, thickness = wholeLayers(USUAL_THICKNESS, known.layer) } = carrier;
  const gap = carrier.gap ?? file.fit.gap;
  const boss = carrier.boss === 'none' ? { shape: 'none' as const } : carrier.boss;
  const completed: Carrier = {
    form,
    plates,
    thickness,
    gap,
    axialGap,
    centre: carrier.centre ?? (boss.shape === 'none' ? 'open' : 'closed'),
    boss,
    bolts:
      carrier.bolts === 'none'
        ? 'none'
        : { ...carrier.bolts, count: carrier.bolts.count ?? file.planets.count },
  };
  if (form === 'cage') return completed;
  const pin = { form: 'straight' as const, ...carrier.pin };
  const depth = pin.depth ?? (pin.form === 'straight' ? 0 : DEPTH_PER_GAP * gap);
  return { ...completed, pin: { diameter: pin.diameter ?? usualPin(file, known), form: pin.form, depth } };
}

/** The lips with their defaults. */
export function completeLips({ lips, fit, printer }: FileOf<'planetary'>): Lips {
  const roomy = 2 * printer.firstLayerGrowth + FIRST_LAYER_SPARE;
  return { ...lips, on: lips?.on ?? 'both', gap: lips?.gap ?? Math.max(fit.gap, roomy) };
}

/** The least whole number of layers that is at least `height`, mm, free of the rounding of doubles. */
function wholeLayers(height: number, layer: number): number {
  return Number((Math.ceil(height / layer - 1e-9) * layer).toFixed(6));
}

function usualPin(
  { planets, pressureAngle }: FileOf<'planetary'>,
  { module, rack, helixAngle }: Known,
): number {
  const { teeth, profileShift = 0 } = planets;
  const gear = { teeth, module, pressureAngle, helixAngle, rack, profileShift, internal: false };
  const half = PIN_SHARE * 2 * gearSizes(gear).rootRadius;
  return Math.max(ranges.pin[0], Math.floor(Math.min(MOST_PIN, half) * 10) / 10);
}

import { notWith, WALL_LINES } from '../../features/room.js';
import { featuresOf } from '../../features/through.js';
import type { ProblemCode } from '../../problemCode.js';
import { type Problem, problemOf } from '../../refusal.js';
import { ceilThousandth, floorThousandth, ROUNDING } from '../nearest.js';
import type { Carrier, PlanetarySpec } from '../types.js';
import { footEdge } from './feet.js';
import type { Rule } from './rule.js';

/** Cones of a pin leave this share of the face straight, half at each end. Common practice, no source. */
const STRAIGHT_SHARE = 0.2;
/** Cones this many gaps deep hold a planet however it is pushed. */
const LEAST_DEPTH_PER_GAP = 2;
/** Lines that a pin is thick at its thinnest. Common practice. */
const PIN_LINES = 3;

function ruleOf(
  needs: readonly string[],
  find: (carrier: Carrier, spec: PlanetarySpec) => Problem[],
): Rule<'planetary'> {
  return {
    needs: ['carrier', ...needs],
    find: (spec) => (spec.carrier === 'none' ? [] : find(spec.carrier, spec)),
  };
}

/** Plates are whole layers thick, so that what stands over them begins with a layer of its own. */
const plateLayers = ruleOf(['printer.layer', 'printer.nozzle'], ({ thickness }, { printer: { layer } }) => {
  const layers = thickness / layer;
  const off = Math.abs(layers - Math.round(layers));
  if (off < 1e-6 && Math.round(layers) >= 1) return [];
  const at = (count: number) => Number((count * layer).toFixed(6));
  const nearest = [at(Math.max(1, Math.round(layers))), at(Math.max(1, Math.ceil(layers)))];
  const rule = `must be whole layers of ${layer} mm`;
  return [problemOf('not-whole', 'carrier.thickness', thickness, rule, [...new Set(nearest)])];
});

/** The ring's foot is the part of its rim outside its teeth: two lines of it at least. */
const footRim = ruleOf(
  ['module', 'ring.rim', 'printer.nozzle', 'printer.lineWidth'],
  (_, { carrier, module, ring, printer }) => {
    const edge = footEdge({ carrier, module });
    const least = ceilThousandth(edge + WALL_LINES * printer.lineWidth);
    if (edge === 0 || ring.rim >= least - ROUNDING) return [];
    const rule = `must be at least ${least} mm, so that the ring stands beside the plate on two lines of wall`;
    return [problemOf('too-small', 'ring.rim', ring.rim, rule, [least])];
  },
);

/** A boss and a closed middle need an upper plate. */
const upperPlate = ruleOf([], ({ plates, boss, centre }) => {
  if (plates !== 'below') return [];
  if (boss.shape !== 'none')
    return [
      problemOf('excluded', 'carrier.plates', plates, 'must be above or both where there is a boss', [
        'above',
        'both',
      ]),
    ];
  if (centre === 'open') return [];
  const rule = 'must be open where the only plate is below: the sun stands on the bed within it';
  return [problemOf('excluded', 'carrier.centre', centre, rule, ['open'])];
});

/** A cage has no pins. */
const cageWithoutPins: Rule<'planetary'> = {
  needs: ['carrier'],
  find(_, { carrier }) {
    if (carrier === 'none' || carrier.form === 'pins' || carrier.pin === undefined) return [];
    const rule = 'must be pins where carrier.pin is given: a cage has none';
    return [problemOf('excluded', 'carrier.form', carrier.form, rule, ['pins'])];
  },
};

/** Straight pins have no cones; others have cones deep enough to hold, and room for them along the face. */
const pinDepth = ruleOf(
  ['faceWidth', 'fit.gap', 'printer.nozzle', 'printer.lineWidth'],
  ({ pin, gap }, { faceWidth, printer }) => {
    if (!pin) return [];
    const { form, depth, diameter } = pin;
    const problem = (code: ProblemCode, rule: string, nearest: number): Problem[] => [
      problemOf(code, 'carrier.pin.depth', depth, rule, [nearest]),
    ];
    if (form === 'straight') return depth === 0 ? [] : problem('excluded', 'must be 0 for a straight pin', 0);
    const least = ceilThousandth(LEAST_DEPTH_PER_GAP * gap);
    const byFace = ((1 - STRAIGHT_SHARE) * faceWidth) / 2;
    const byPin = diameter / 2 - (PIN_LINES * printer.lineWidth) / 2;
    const most = floorThousandth(Math.min(byFace, byPin));
    if (most < least) {
      const rule = `has no room for cones ${least} mm deep: the face is ${faceWidth} mm, the pin ${diameter} mm`;
      return [problemOf('no-room', 'carrier.pin.form', form, rule, ['straight'])];
    }
    if (depth < least - ROUNDING)
      return problem(
        'beyond-limit',
        `must be from ${least} to ${most} mm: ${LEAST_DEPTH_PER_GAP} × carrier.gap at least`,
        least,
      );
    if (depth > most + ROUNDING) return problem('beyond-limit', `must be from ${least} to ${most} mm`, most);
    return [];
  },
);

/** Pins are thick enough to print. */
const pinThickness = ruleOf(
  ['printer.nozzle', 'printer.lineWidth', 'module', 'helix', 'rack', 'pressureAngle', 'planets.teeth'],
  ({ pin }, { printer }) => {
    const least = ceilThousandth(PIN_LINES * printer.lineWidth);
    if (!pin || pin.diameter >= least - ROUNDING) return [];
    const rule = `must be at least ${least} mm: ${PIN_LINES} lines`;
    return [problemOf('too-small', 'carrier.pin.diameter', pin.diameter, rule, [least])];
  },
);

/** The flat of a D lies between the middle and just inside the far side. */
const bossFlat = ruleOf([], ({ boss }) => {
  if (boss.shape !== 'D') return [];
  const [least, most] = [ceilThousandth(boss.diameter / 2), floorThousandth(0.98 * boss.diameter)];
  if (boss.acrossFlat >= least - ROUNDING && boss.acrossFlat <= most + ROUNDING) return [];
  const rule = `must be from ${least} to ${most} mm: half the diameter to 0.98 × the diameter`;
  const nearest = [boss.acrossFlat < least ? least : most];
  return [problemOf('beyond-limit', 'carrier.boss.acrossFlat', boss.acrossFlat, rule, nearest)];
});

/** A pin takes the middle of a planet, and with it whatever else would be there. */
const pinOrFeatures: Rule<'planetary'> = {
  needs: ['carrier', 'planets'],
  find({ carrier, planets }, file) {
    if (carrier === 'none' || carrier.form === 'cage') return [];
    const [taken] = featuresOf(planets);
    if (!taken) return [];
    const { key, own } = taken;
    if (file.carrier !== 'none' && file.carrier.pin !== undefined)
      return notWith(`planets.${key}`, own, 'carrier.pin');
    const rule = `must be cage where planets.${key} is given: a pin goes through the planet there`;
    return [problemOf('excluded', 'carrier.form', carrier.form, rule, ['cage'])];
  },
};

/** A knob on the sun stands up through the middle of an upper plate. */
const knobThroughPlate = ruleOf(['sun'], ({ plates, centre }, { sun }) => {
  if (!sun.knob || plates === 'below' || centre === 'open') return [];
  const rule = 'must be open where the sun has a knob, which stands up through the plate';
  return [problemOf('excluded', 'carrier.centre', centre, rule, ['open'])];
});

/** What a carrier's keys ask of each other. */
export const carrierRules: readonly Rule<'planetary'>[] = [
  plateLayers,
  footRim,
  upperPlate,
  cageWithoutPins,
  pinThickness,
  pinDepth,
  bossFlat,
  pinOrFeatures,
  knobThroughPlate,
];

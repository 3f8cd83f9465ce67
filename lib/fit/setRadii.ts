import type { Spec } from '../spec/types.js';
import { generatedFormRadius } from '../tooth/externalProfile.js';
import { gearSizes } from '../tooth/gear.js';
import { leastRingTipRadius } from '../train/interference.js';
import { pairSizes } from '../train/pair.js';
import type { SetGears } from '../train/setGears.js';
import { reliefs } from './reliefs.js';

/** Tip and root radius of each kind of gear as made, mm, and what was changed to get them. */
export interface SetRadii {
  sun: { tip: number; root: number };
  planet: { tip: number; root: number };
  ring: { tip: number; root: number };
  /** Each change against the standard tooth, in one sentence. */
  adjustments: string[];
}

/** Differences below this are rounding, mm. */
const ROUNDING = 1e-9;

/**
 * Tip and root radii that let the set run:
 * tips are shortened where a changed centre distance eats into the rack's bottom clearance; roots are deepened
 * where that clearance is less than the gap; ring tips are cut back to where the planet's involute begins.
 * @throws Refusal when a pair has no working pressure angle
 */
export function setRadii(spec: Spec, gears: SetGears): SetRadii {
  const gap = spec.fit.gap;
  const clearance = (spec.rack.dedendum - spec.rack.addendum) * spec.module;
  const inner = pairSizes(gears.sun, gears.planet);
  const outer = pairSizes(gears.planet, gears.ring);
  const [toSun, toRing] = [inner.centreDistance, outer.centreDistance];
  const radii = {
    sun: standard(gears.sun),
    planet: standard(gears.planet),
    ring: standard(gears.ring),
  };
  const adjustments: string[] = [];
  const { sun, planet, ring } = radii;

  const shorten = (part: 'sun' | 'planet' | 'ring', room: number) => {
    const missing = clearance - room;
    if (missing <= ROUNDING) return;
    radii[part].tip += part === 'ring' ? missing : -missing;
    adjustments.push(`tips of the ${part} shortened by ${mm(missing)} to keep the rack's bottom clearance`);
  };
  shorten('sun', toSun - sun.tip - planet.root);
  shorten('planet', Math.min(toSun - planet.tip - sun.root, ring.root - toRing - planet.tip));
  shorten('ring', ring.tip - toRing - planet.root);

  const deepen = (part: 'sun' | 'planet' | 'ring', room: number) => {
    const missing = gap - room;
    if (missing <= ROUNDING) return;
    radii[part].root += part === 'ring' ? missing : -missing;
    adjustments.push(`roots of the ${part} deepened by ${mm(missing)} so that its mates' tips keep the gap`);
  };
  deepen('sun', toSun - planet.tip - sun.root);
  deepen('planet', Math.min(toSun - sun.tip - planet.root, ring.tip - toRing - planet.root));
  deepen('ring', ring.root - toRing - planet.tip);

  const formRadius1 = backedOff(
    spec,
    gears,
    generatedFormRadius(gears.planet, reliefs(spec.fit).planet, planet.root),
  );
  const least = Math.max(leastRingTipRadius({ ...outer, formRadius1 }), gearSizes(gears.ring).baseRadius);
  if (least - ring.tip > ROUNDING) {
    adjustments.push(
      `tips of the ring cut back by ${mm(least - ring.tip)} to where the planet's involute begins (involute interference)`,
    );
    ring.tip = least;
  }
  return { ...radii, adjustments };
}

/**
 * The planet's form radius moved up its flank by the gap, along the line of action: with every part centred, a tip
 * that stands off by the gap has its nearest point that much lower on the flank, and it must still be involute.
 */
function backedOff(spec: Spec, gears: SetGears, formRadius: number): number {
  const { baseRadius, baseHelixAngle } = gearSizes(gears.planet);
  const along = Math.sqrt(Math.max(0, formRadius ** 2 - baseRadius ** 2));
  return Math.hypot(baseRadius, along + spec.fit.gap / Math.cos(baseHelixAngle));
}

function standard(gear: SetGears['sun']): { tip: number; root: number } {
  const { tipRadius, rootRadius } = gearSizes(gear);
  return { tip: tipRadius, root: rootRadius };
}

function mm(length: number): string {
  return `${length.toFixed(3)} mm`;
}

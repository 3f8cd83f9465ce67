import type {
  ExternalGear,
  GearSpec,
  InternalGear,
  PairSpec,
  RackSpec,
  TrainSpec,
} from '../../spec/types.js';
import { type Gear, gearSizes } from '../../tooth/gear.js';
import { transverseContactRatio } from '../../train/contactRatio.js';
import { pairSizes } from '../../train/pair.js';
import { rackMesh } from '../../train/rackMesh.js';
import type { Adjustment } from '../adjustment.js';
import { pairBodyRoom } from '../bodyRoom.js';
import { type MadeRadii, madeRadii } from '../madeRadii.js';
import { pairGears } from './pairGears.js';
import type { Train, TrainGear } from './train.js';

/**
 * The numbers of a pair, a rack and pinion, or one gear: teeth, shifts, and radii as made.
 * @throws Refusal as `pairGears`, and where bores and features find no room
 */
export function trainNumbers(spec: TrainSpec): Train {
  switch (spec.kind) {
    case 'pair':
      return pairNumbers(spec);
    case 'rack':
      return rackNumbers(spec);
    case 'gear':
      return gearNumbers(spec);
  }
}

function pairNumbers(spec: PairSpec): Train {
  const { pinion, wheel } = pairGears(spec);
  const relief = reliefsOf(spec);
  const { radii, adjustments } = madeRadii(spec, { pinion, wheel }, [['pinion', 'wheel']], {
    pinion: relief.first,
    wheel: relief.second,
  });
  pairBodyRoom(spec, radii);
  const { hand } = spec.helix;
  const gears: TrainGear[] = [
    outside('pinion', spec.pinion, pinion, radii.pinion, relief.first, hand),
    spec.wheel.internal
      ? inside('wheel', spec.wheel, wheel, radii.wheel, relief.second, hand)
      : outside('wheel', spec.wheel, wheel, radii.wheel, relief.second, opposite(hand)),
  ];
  const pair = pairSizes(pinion, wheel, { tipRadius1: radii.pinion.tip, tipRadius2: radii.wheel.tip });
  return {
    spec,
    gears,
    bar: null,
    mesh: {
      between: ['pinion', 'wheel'],
      centreDistance: pair.centreDistance,
      workingPressureAngle: pair.workingPressureAngle,
      transverseContactRatio: transverseContactRatio(pair),
      pair,
    },
    adjustments,
  };
}

function rackNumbers(spec: RackSpec): Train {
  const relief = reliefsOf(spec);
  const gear = gearOf(spec, spec.pinion, false);
  const { radii, tip, root, active, adjustments } = besideBar(spec, gear, 'pinion');
  const { centreDistance, transverseContactRatio: ratio } = rackMesh(gear, radii.tip, tip);
  const { module, pressureAngle, rack, helix } = spec;
  return {
    spec,
    gears: [outside('pinion', spec.pinion, gear, radii, relief.first, helix.hand)],
    bar: {
      part: 'bar',
      bar: { module, pressureAngle, helixAngle: helix.angle, rack },
      ...spec.bar,
      relief: relief.second,
      tip,
      root,
      active,
      hand: helix.hand,
    },
    mesh: {
      between: ['pinion', 'bar'],
      centreDistance,
      workingPressureAngle: gearSizes(gear).transversePressureAngle,
      transverseContactRatio: ratio,
      pair: null,
    },
    adjustments,
  };
}

/**
 * One gear by itself: with teeth outside made for a bar, which asks more of a gear's roots than any mate with teeth
 * outside; with teeth inside made for the smallest gear that is to run in it.
 */
function gearNumbers(spec: GearSpec): Train {
  const relief = reliefsOf(spec);
  const { gear: asked } = spec;
  const gear = gearOf(spec, asked, asked.internal);
  const { hand } = spec.helix;
  if (!asked.internal) {
    const { radii, adjustments } = besideBar(spec, gear, 'gear');
    const gears = [outside('gear', asked, gear, radii, relief.first, hand)];
    return {
      spec,
      gears,
      bar: null,
      mesh: null,
      adjustments: adjustments.filter(({ part }) => part === 'gear'),
    };
  }
  const mate = { ...gear, teeth: asked.mateTeeth, profileShift: gear.profileShift, internal: false };
  const { radii, adjustments } = madeRadii(spec, { mate, gear }, [['mate', 'gear']], {
    mate: relief.second,
    gear: relief.first,
  });
  return {
    spec,
    gears: [inside('gear', asked, gear, radii.gear, relief.first, hand)],
    bar: null,
    mesh: null,
    adjustments: adjustments
      .filter(({ part }) => part === 'gear')
      .map(({ part, says }) => ({ part, says: `${says}, for a mate of ${asked.mateTeeth} teeth or more` })),
  };
}

/** Radii of a pinion and heights of a bar that run together: roots deepened where the rack's clearance is less than the gap. */
function besideBar(spec: TrainSpec, gear: Gear, name: 'pinion' | 'gear') {
  const { rack, module, fit } = spec;
  const sizes = gearSizes(gear);
  const deeper = Math.max(0, fit.gap - (rack.dedendum - rack.addendum) * module);
  const [tip, root] = [rack.addendum * module, -rack.dedendum * module - deeper];
  const { start, end } = rackMesh(gear, sizes.tipRadius, tip);
  // A tip that stands off its mate by the gap has its nearest point that much farther along the line of action.
  const off = fit.gap / Math.cos(sizes.baseHelixAngle);
  const sin = Math.sin(sizes.transversePressureAngle);
  const radii: MadeRadii = {
    tip: sizes.tipRadius,
    root: sizes.rootRadius - deeper,
    active: Math.hypot(sizes.baseRadius, Math.max(0, start - off)),
    // The bar's tips stand off the rack's flanks by the gap, along their normal, which leans towards the root.
    straight: tip - gear.profileShift * module + fit.gap * Math.sin(sizes.normalPressureAngle),
  };
  const active = gear.profileShift * module - (end + off - sizes.referenceRadius * sin) * sin;
  const adjustments: Adjustment[] =
    deeper > 0
      ? [name, 'bar'].map((part) => ({
          part,
          says: `roots of the ${part} deepened by ${deeper.toFixed(3)} mm so that its mates' tips keep the gap`,
        }))
      : [];
  return { radii, tip, root, active, adjustments };
}

function outside(
  part: TrainGear['part'],
  { bore, screw, nut, knob, crank, text }: ExternalGear,
  gear: Gear,
  radii: MadeRadii,
  relief: number,
  hand: TrainGear['hand'],
): TrainGear {
  return { part, gear, radii, relief, hand, bore, rim: 0, features: { screw, nut, knob, crank, text } };
}

function inside(
  part: TrainGear['part'],
  { rim, grip, flange, bolts, text }: InternalGear,
  gear: Gear,
  radii: MadeRadii,
  relief: number,
  hand: TrainGear['hand'],
): TrainGear {
  const bore = { shape: 'none' } as const;
  return { part, gear, radii, relief, hand, bore, rim, features: { grip, flange, bolts, text } };
}

function gearOf(
  { module, pressureAngle, rack, helix }: TrainSpec,
  { teeth, profileShift = 0 }: { teeth: number; profileShift?: number },
  internal: boolean,
): Gear {
  return { teeth, module, pressureAngle, helixAngle: helix.angle, rack, profileShift, internal };
}

/** What is set back on the first part's flanks, and on its mate's. */
function reliefsOf({ fit: { gap, gapShare } }: TrainSpec): { first: number; second: number } {
  return { first: gap * gapShare, second: gap * (1 - gapShare) };
}

function opposite(hand: 'right' | 'left'): 'right' | 'left' {
  return hand === 'right' ? 'left' : 'right';
}

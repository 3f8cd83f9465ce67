import { liftOf } from '../fit/carrier/carrierSizes.js';
import { handleSeat } from '../fit/handleSeat.js';
import type { FittedTrain, PlacedGear } from '../fit/train/fitTrain.js';
import { chordTolerance } from '../spec/workload.js';
import { radians } from '../tooth/gear.js';
import type { ToothProfile } from '../tooth/profile.js';
import { barBody } from './bar/barBody.js';
import { barSweep } from './bar/barSweep.js';
import type { Wall } from './blank.js';
import { carrierBody } from './carrier/carrierBody.js';
import { planetBore } from './carrier/planetBore.js';
import { clampInUse, clampRing } from './features/clampRing.js';
import { featureContext } from './features/context.js';
import { crankHandle, handleInUse } from './features/crankHandle.js';
import { gearBlank } from './features/gearBlank.js';
import { planetBlank } from './features/planetBlank.js';
import { ringBlank } from './features/ringBlank.js';
import { onFoot } from './feet.js';
import { gearBody } from './gearBody.js';
import type { InUse } from './inUse.js';
import type { Mesh, Part } from './mesh.js';
import { placed, raised } from './place.js';
import { soundBody } from './soundBody.js';
import type { Sweep } from './sweep/helix.js';
import type { KnownPitches } from './teeth.js';

/**
 * Every part of a train that is fitted as it is to be drawn (`fitDrawn`): the gears in their order, a bar, a carrier, and
 * what lies beside them until it is used.
 * @throws Refusal when a part cannot be made
 */
export function buildTrain(train: FittedTrain): Part[] {
  const { spec, gears, bar, carrier } = train;
  const { tolerance } = spec;
  const lift = liftOf(carrier);
  const axes = axesOf(train);
  const known: KnownPitches = new Map();
  const sound = (what: string, build: (fine: number) => Mesh) => soundBody(what, tolerance, build);
  const toothed = gears.flatMap((one) => {
    const body = sound(one.key, (fine) =>
      raised(gearBody(one.profile, sweepOf(train, one), wallOf(train, one, fine), fine, known), lift),
    );
    // A sun is made where it stands.
    if (one === gears[0] && axes.length) return [{ name: one.part, mesh: body }];
    return one.places.map(
      ({ name, rotation, centre }): Part => ({ name, mesh: placed(body, rotation, centre) }),
    );
  });
  return [
    ...toothed,
    ...(bar ? [{ name: 'bar', mesh: barBody(bar, barSweep(spec, bar), tolerance) }] : []),
    ...(carrier
      ? [
          {
            name: 'carrier',
            mesh: sound('carrier', (fine) => raised(carrierBody(carrier, axes, fine), lift)),
          },
        ]
      : []),
    ...looseParts(train).map(({ name, of, build }) => ({ name, mesh: sound(of, build) })),
  ];
}

/** Where the planets' axes are. */
function axesOf({ gears }: FittedTrain): [number, number][] {
  return gears.filter(({ orbits }) => orbits).flatMap(({ places }) => places.map(({ centre }) => centre));
}

/** How a gear of a train is swept. */
export function sweepOf({ spec }: FittedTrain, { hand, end }: PlacedGear): Sweep {
  return {
    form: spec.helix.form,
    faceWidth: spec.faceWidth,
    hand,
    bevelSize: end.bevelSize,
    bevelAngle: radians(spec.bevel.angle),
    lips: end.lips,
  };
}

/**
 * What a gear has besides its teeth.
 * @param tolerance largest distance of its mesh from the exact surface, mm
 * @throws Refusal where letters find no room
 */
export function wallOf(train: FittedTrain, one: PlacedGear, tolerance: number): Wall {
  const { spec, carrier } = train;
  const { gear, profile, bore, features, orbits, hand } = one;
  const { rootRadius } = profile;
  const lift = orbits ? 0 : liftOf(carrier);
  const context = featureContext(
    { ...spec, tolerance, faceWidth: spec.faceWidth + lift },
    one.key,
    { teeth: gear.teeth, rootRadius },
    { rotation: one.places[0].rotation, mirrored: hand === 'left' },
  );
  if (orbits) return carrier?.pin ? planetBore(carrier, tolerance) : planetBlank(features, context);
  const wall = gear.internal
    ? ringBlank(features, outerRadius(one), context)
    : gearBlank({ bore, ...features }, context);
  const radius = (gear.internal ? carrier?.skirtRadius : carrier?.hubRadius) ?? 0;
  // As near to the teeth as their own chords.
  const fine = chordTolerance(spec.module, tolerance);
  return onFoot(wall, spec.faceWidth, { height: lift, radius }, fine);
}

/** Outer radius of a gear with teeth inside, flange and scallops left out, mm. */
export function outerRadius({ profile, rim }: { profile: ToothProfile; rim: number }): number {
  return profile.rootRadius + rim;
}

/** A part that lies beside the train until it is used. */
interface LoosePart {
  name: string;
  /** What in the file asks for it. */
  of: string;
  build(tolerance: number): Mesh;
  /** Part that it is put on, and how it gets there from the bed. */
  on: string;
  inUse: InUse;
}

/** Clamp ring and crank handle. */
export function looseParts(train: FittedTrain): LoosePart[] {
  const loose: LoosePart[] = [];
  for (const one of train.gears) {
    const { mount, flange } = one.features;
    if (!mount || !flange) continue;
    loose.push({
      name: 'clamp-ring',
      of: `${one.key}.mount`,
      build: (fine) => clampRing(mount, flange, outerRadius(one), fine),
      on: one.part,
      inUse: clampInUse(mount, flange),
    });
  }
  const seat = handleSeat(train);
  const gear = train.gears.find(({ part }) => part === seat?.gear);
  const crank = gear?.features.crank;
  const length = crank?.handle;
  if (seat && gear && crank && length !== undefined)
    loose.push({
      name: 'crank-handle',
      of: `${gear.key}.crank`,
      build: (fine) => crankHandle(crank, length, seat, reachOf(train), fine),
      on: gear.part,
      inUse: handleInUse(crank, length, seat, reachOf(train)),
    });
  return loose;
}

/** How far the parts reach towards −y, mm: a handle lies beside them, clear of a bar there. */
function reachOf({ gears, bar }: FittedTrain): number {
  const radii = gears.map((one) =>
    one.gear.internal
      ? Math.max(outerRadius(one), (one.features.flange?.diameter ?? 0) / 2)
      : one.profile.tipRadius,
  );
  return Math.max(...radii, bar ? bar.backing - bar.datum - bar.profile.root : 0);
}

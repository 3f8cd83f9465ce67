import { CARRIER } from '../../../fit/play/carrierContacts.js';
import type { FittedTrain } from '../../../fit/train/fitTrain.js';
import { linksOf } from '../../../fit/train/linksOf.js';
import { speeds } from '../../../train/speeds.js';
import type { LiveMode, LiveMotion } from './liveData.js';

/** The ways to drive a train: each member that can be held is, and the first of the others is turned. */
export function modesOf(train: FittedTrain): LiveMode[] {
  const { gears } = train;
  const [first] = gears;
  const onAxis = gears.filter(({ orbits }) => !orbits).map(({ part }) => part);
  if (onAxis.length === gears.length)
    return [modeOf(train, { label: 'axes', driver: first.part, known: { [first.part]: 1 } })];
  return [...onAxis.slice(1), CARRIER, first.part].map((held) => {
    const driver = onAxis.find((part) => part !== held)!;
    const label = held === CARRIER ? 'planets’ axes' : held;
    return modeOf(train, { label, driver, known: { [driver]: 1, [held]: 0 } });
  });
}

function modeOf(
  train: FittedTrain,
  { label, driver, known }: { label: string; driver: string; known: Record<string, number> },
): LiveMode {
  const { gears, bar, meshes } = train;
  const links = linksOf(train);
  const turns = speeds(links, known);
  const orbit = turns[CARRIER] ?? 0;
  const motions: Record<string, LiveMotion> = {};
  for (const { part, orbits, places } of gears)
    for (const { name } of places) motions[name] = motion(turns[part], orbits ? orbit : 0);
  if (CARRIER in turns) motions[CARRIER] = motion(orbit);
  const [first] = gears;
  const pitches = (turns[first.part] - orbit) * first.gear.teeth;
  // The bar lies below the pinion, whose lowest tooth moves to the right when it turns counter-clockwise.
  if (bar) motions[bar.part] = { turns: 0, orbit: 0, shift: [pitches * bar.profile.transversePitch, 0] };
  return { label, driver, motions, pitches: meshes.length ? pitches : 0 };
}

function motion(turns: number, orbit = 0): LiveMotion {
  return { turns, orbit, shift: [0, 0] };
}

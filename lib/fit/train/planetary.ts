import type { PlanetarySpec } from '../../spec/types.js';
import { polar } from '../../tooth/polar.js';
import { planetPlaces } from '../../train/assembly.js';
import { phases } from '../../train/phases.js';
import { setGears } from '../../train/setGears.js';
import { setBodyRoom } from '../bodyRoom.js';
import { drawnCarrier } from '../carrier/drawnCarrier.js';
import { drawnLips } from '../compensation.js';
import { madeRadii } from '../madeRadii.js';
import type { Arrangement } from './arrangement.js';
import { gearMesh } from './meshSizes.js';
import { alone } from './place.js';
import { gearIn, reliefOf, type Train } from './train.js';
import { opposite, trainGear } from './trainGear.js';

/** Sun, planets and ring. The sun has a tooth at angle 0, the first planet stands on +x. */
export const planetary: Arrangement<PlanetarySpec> = {
  numbers(spec) {
    const { sun, planet, ring } = setGears(spec);
    const { hand } = spec.helix;
    const [share, rest] = [reliefOf(spec.fit, 'share'), reliefOf(spec.fit, 'rest')];
    const { radii, adjustments } = madeRadii(
      spec,
      { sun, planet, ring },
      [
        ['sun', 'planet'],
        ['planet', 'ring'],
      ],
      { sun: share, planet: rest, ring: share },
    );
    const meshes = [
      gearMesh(['sun', 'planet'], { gear: sun, tip: radii.sun.tip }, { gear: planet, tip: radii.planet.tip }),
      gearMesh(
        ['planet', 'ring'],
        { gear: planet, tip: radii.planet.tip },
        { gear: ring, tip: radii.ring.tip },
      ),
    ];
    setBodyRoom(spec, radii, [meshes[0].centreDistance, meshes[1].centreDistance]);
    return {
      spec,
      gears: [
        trainGear(spec, spec.sun, { part: 'sun', way: 1, hand, gear: sun, radii: radii.sun, share: 'share' }),
        trainGear(
          spec,
          spec.planets,
          { part: 'planet', way: -1, hand: opposite(hand), gear: planet, radii: radii.planet, share: 'rest' },
          { key: 'planets', count: spec.planets.count, orbits: true },
        ),
        trainGear(spec, spec.ring, {
          part: 'ring',
          way: -1,
          hand: opposite(hand),
          gear: ring,
          radii: radii.ring,
          share: 'share',
        }),
      ],
      bar: null,
      meshes,
      adjustments,
    };
  },

  /**
   * A set that breaks the assembly rule is placed all the same, each planet by its own mesh with the sun and the ring by
   * the first planet: the checks say what is wrong with it.
   */
  places(train) {
    const [sunTeeth, planetTeeth, ringTeeth] = ['sun', 'planet', 'ring'].map(
      (part) => gearIn(train, part).gear.teeth,
    );
    const directions = planetPlaces(sunTeeth, ringTeeth, gearIn(train, 'planet').count);
    const turns = directions.map((direction) => phases({ sunTeeth, planetTeeth, ringTeeth }, [direction]));
    const { centreDistance } = train.meshes[0].pair!;
    return [
      alone('sun', 0),
      directions.map((degrees, i) => {
        const direction = (degrees * Math.PI) / 180;
        const centre = polar(centreDistance, direction);
        return { name: `planet-${i + 1}`, centre, direction, rotation: turns[i].planets[0] };
      }),
      alone('ring', turns[0].ringTooth),
    ];
  },

  drawn({ lips, carrier }, growth, scale) {
    return {
      ...(lips && { lips: drawnLips(lips, growth, scale) }),
      carrier: drawnCarrier(carrier, growth, scale),
    };
  },
};

/** Whether a train is a planetary set. */
export function isPlanetary<T extends Train>(train: T): train is T & Train<PlanetarySpec> {
  return train.gears.some(({ orbits }) => orbits);
}

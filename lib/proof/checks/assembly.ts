import type { PlanetarySpec } from '../../spec/types.js';
import {
  allowsEqualSpacing,
  assemblyStep,
  departure,
  planetPlaces,
  unbalance,
} from '../../train/assembly.js';
import type { NamingCheck } from '../check.js';
import type { PlanFindings } from '../findings.js';
import { nearestSetsTo, sayNearestSets, spacingOffer } from '../offer.js';

/**
 * Planets mesh with sun and ring at once only when the angles between them are multiples of
 * 360° / (sun + ring teeth): equally spaced ones when (sun + ring teeth) / planets is whole. With `spacing: nearest` the
 * figure is the largest departure from equal spacing, which half a step bounds.
 * Source: assembly condition of simple planetary sets (AGMA 6123 and handbooks, from memory).
 */
export function assembly(found: PlanFindings<PlanetarySpec>): NamingCheck {
  return found.spec.planets.spacing === 'nearest' ? nearestSpacing(found) : equalSpacing(found);
}

function equalSpacing({ spec }: PlanFindings<PlanetarySpec>): NamingCheck {
  const { sun, planets, ring } = spec;
  const sum = sun.teeth + ring.teeth;
  const holds = allowsEqualSpacing(sun.teeth, ring.teeth, planets.count);
  const quotient = sum / planets.count;
  const sets = holds ? [] : nearestSetsTo(spec);
  return {
    id: 'assembly',
    holds,
    level: 'must',
    value: quotient,
    limit: Math.round(quotient),
    unit: '1',
    sets,
    says: holds
      ? `(sun ${sun.teeth} + ring ${ring.teeth}) / ${planets.count} planets = ${quotient}, whole: all planets go in equally spaced`
      : `planets.count ${planets.count}: (sun ${sun.teeth} + ring ${ring.teeth}) / ${planets.count} = ${quotient.toFixed(3)} must be whole ` +
        ['for equally spaced planets.', spacingOffer(spec), sayNearestSets(sets)].filter(Boolean).join(' '),
  };
}

function nearestSpacing({ spec }: PlanFindings<PlanetarySpec>): NamingCheck {
  const { sun, planets, ring } = spec;
  const step = assemblyStep(sun.teeth, ring.teeth);
  const places = planetPlaces(sun.teeth, ring.teeth, planets.count);
  const off = departure(places);
  // A place is met when it is a whole number of steps away, rounding of doubles aside.
  const whole = places.every((place) => Math.abs(place / step - Math.round(place / step)) < 1e-6);
  return {
    id: 'assembly',
    holds: whole && off <= step / 2 + 1e-9,
    level: 'must',
    value: off,
    limit: step / 2,
    unit: 'deg',
    says:
      `planets at multiples of ${step.toFixed(3)}°: ${places.map((place) => `${place.toFixed(3)}°`).join(', ')}; ` +
      `at most ${off.toFixed(3)}° off equal angles, their common centre of mass ${(100 * unbalance(places)).toFixed(2)} % of the centre distance off the axis`,
  };
}

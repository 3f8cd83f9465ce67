import { type Bore, boreOutline } from '../../features/bore.js';
import { shoulderRadius } from '../../features/crank.js';
import type { FeatureContext } from '../../features/feature.js';
import type { GearFeatures } from '../../features/index.js';
import { knobFace, knobOn } from '../../features/knob.js';
import { lettering } from '../../features/letters/lettering.js';
import { aboutTheAxis } from '../../features/through.js';
import { reachOf } from '../../stack/contour.js';
import { type Feature, together } from '../../stack/stack.js';
import { type Blank, noFeature, throughHole } from '../blank.js';

/**
 * A gear with outside teeth, its bore and its features: what is about the axis goes through a knob where there is one.
 * @throws Refusal when text finds no room
 */
export function gearBlank(gear: GearFeatures & { bore: Bore }, context: FeatureContext): Blank {
  const { knob, text } = gear;
  const { faceWidth, rootRadius, tolerance } = context;
  const top = faceWidth + (knob?.height ?? 0);
  const middle = inMiddle(gear, top, context);
  const opened = Math.max(0, ...(middle.holes.top ?? []).map(({ points }) => reachOf(points)));
  const letters = (z: number, outer: number, inner: number) =>
    text ? lettering(text, z, { inner, outer }, context) : noFeature;
  if (!knob) {
    const { crank } = gear;
    // Letters that stand up keep clear of the shoulder that a handle stands on.
    const shoulder = crank?.handle !== undefined && text?.style === 'raised';
    const inner = shoulder ? shoulderRadius(crank, rootRadius) : opened;
    return { feature: together<'bottom' | 'top'>([middle, letters(faceWidth, rootRadius, inner)]) };
  }

  const onKnob = opened === 0 ? letters(top, knobFace(knob), 0) : noFeature;
  const around = opened === 0 ? noFeature : letters(faceWidth, rootRadius, knob.diameter / 2);
  const inTop: Feature = together<'bottom' | 'top'>([middle, onKnob]);
  const standing = knobOn(knob, faceWidth, inTop.holes.top ?? [], tolerance);
  const below: Feature = {
    holes: { bottom: inTop.holes.bottom ?? [] },
    walls: inTop.walls,
    faces: inTop.faces,
  };
  return { feature: together([below, standing, around]) };
}

function inMiddle(gear: GearFeatures & { bore: Bore }, top: number, context: FeatureContext): Feature {
  const outline = boreOutline(gear.bore, context.tolerance);
  return outline.length ? throughHole(outline, top) : aboutTheAxis(gear, top, context);
}

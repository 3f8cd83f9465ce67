/** Narrower windows than this, in pitches, are not divided again: rounding alone is left. */
const NARROWEST = 1e-7;

/** What a mesh comes to at a phase, mm. */
export interface AtPhase {
  /** The least gap there. */
  value: number;
  /** No less is met within the window; of no meaning where it is more than was asked. */
  around: number;
}

/**
 * The least gap over a whole pitch, not only at the phases that were looked at: windows in which less might be met than
 * the least found, less what may be left, are halved until there is none.
 * @param phases evenly spread over the pitch, the first at 0
 * @param found the least at them, mm, and where
 * @param left what the true least may be below the one returned, mm
 * @param look at a phase: up to `bound`, with the window `half` a width either way
 */
export function betweenPhases(
  phases: number,
  found: { least: number; phase: number },
  left: number,
  look: (phase: number, half: number, bound: number) => AtPhase,
): { least: number; phase: number } {
  let { least, phase } = found;
  const search = (centre: number, half: number): void => {
    if (least <= 0) return;
    const { value, around } = look(centre, half, least);
    if (value < least) [least, phase] = [value, (centre + 1) % 1];
    if (around >= least - left || half < NARROWEST) return;
    search(centre - half / 2, half / 2);
    search(centre + half / 2, half / 2);
  };
  for (let step = 0; step < phases; step++) search(step / phases, 1 / (2 * phases));
  return { least, phase };
}

/**
 * What a maker must be told with every set. Plain words; local codes and licensed practice decide.
 * Small parts: 16 CFR 1501.4 (children under 3). Drying temperatures: common practice, no source.
 */
export function cautions(): string[] {
  return [
    'Small parts: keep away from children under 3 years. A planet that comes loose may be swallowed; test against the small-parts cylinder of 16 CFR 1501.4 or your local rule.',
    'Fingers and hair: turning teeth pinch. Cover the teeth where children turn the set, and let no one turn it under power while it is open.',
    'Not for lifting, holding people, vehicles or powered machines: printed gears break without warning. Such uses need a licensed engineer and your local codes.',
    'Not for food: printed grooves hold germs, and filament and nozzle are seldom food safe.',
    'Dry filament below its glass transition and only in a dryer made for it, never in an oven that cooks food; hot filament and fumes can harm.',
  ];
}

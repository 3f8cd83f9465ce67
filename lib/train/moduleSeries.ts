/**
 * Standard modules, mm. Source: ISO 54:1996 table 1, series I and II from 1 up (without 6.5, which it advises
 * against); below 1 the series I and II of DIN 780-1. All from memory.
 */
export const standardModules: readonly number[] = [
  0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1, 1.125, 1.25, 1.375, 1.5, 1.75, 2, 2.25, 2.5, 2.75,
  3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 9, 10,
];

/** The standard modules from `least` to `most`, mm, both included. */
export function modulesBetween(least: number, most: number): number[] {
  return standardModules.filter((module) => module >= least && module <= most);
}

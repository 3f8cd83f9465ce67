/** Typical figures of a filament printed solid. Moduli and stresses in MPa, temperatures in °C. */
export interface FilamentProfile {
  /** Young's modulus along the layers. */
  modulus: number;
  /** Stress along the layers at which a wall breaks. */
  strength: number;
  /** Poisson's ratio. */
  poisson: number;
  glassTransition: number;
  dryingTemperature: number;
  /** Shrinkage of a print, percent: offered in the schema, never applied unless the file gives it. */
  typicalShrinkage: [number, number];
}

/**
 * Shipped filaments: low figures of those published, so that what is worked out from them is on the safe side.
 *
 * Modulus. PLA: 1997 ± 64 MPa along the layers in a data sheet of a filled PLA, ISO 527 (page seen); solid PLA has
 * about 3500 (npj Materials Degradation, s41529-025-00724-1, table 2, page seen). PETG 2000 and ABS 2100: MDPI
 * Processes 13 (2025) 2733 (page seen). ASA: as PETG, common practice, no source.
 * Strength and Poisson's ratio: common practice, no source.
 * Glass transition. PLA 55 to 60: npj Materials Degradation, as above (page seen). ABS 100 to 107: MDPI Processes,
 * as above (page seen). PETG and ASA: common practice, no source.
 * Drying and shrinkage: common practice, no source.
 */
export const filamentProfiles = {
  PLA: {
    modulus: 2000,
    strength: 40,
    poisson: 0.36,
    glassTransition: 55,
    dryingTemperature: 45,
    typicalShrinkage: [0.2, 0.5],
  },
  PETG: {
    modulus: 2000,
    strength: 40,
    poisson: 0.36,
    glassTransition: 75,
    dryingTemperature: 55,
    typicalShrinkage: [0.1, 0.6],
  },
  ABS: {
    modulus: 2100,
    strength: 30,
    poisson: 0.36,
    glassTransition: 100,
    dryingTemperature: 60,
    typicalShrinkage: [0.4, 0.9],
  },
  ASA: {
    modulus: 2000,
    strength: 30,
    poisson: 0.36,
    glassTransition: 100,
    dryingTemperature: 60,
    typicalShrinkage: [0.4, 0.9],
  },
} as const satisfies Record<string, FilamentProfile>;

/** Name of a shipped filament. */
export type FilamentName = keyof typeof filamentProfiles;

/** The names, in the order in which they are offered. */
export const filamentNames = Object.keys(filamentProfiles) as [FilamentName, ...FilamentName[]];

/** One figure of every filament, as words for the schema: `PLA 55, PETG 75, …`. */
export function eachFilament(key: keyof FilamentProfile): string {
  return filamentNames
    .map((name) => `${name} ${[filamentProfiles[name][key]].flat().join(' to ')}`)
    .join(', ');
}

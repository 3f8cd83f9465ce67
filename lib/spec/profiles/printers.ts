/** What a shipped printer profile sets; what it leaves out follows from the rest. Lengths in mm. */
export interface PrinterProfile {
  nozzle: number;
  layer: number;
  bed: { width: number; depth: number; height: number };
}

/**
 * Shipped printers by their size, not by any make: common practice, no source. Growth is left at 0 in each of
 * them: it is measured on a print, not known beforehand.
 */
export const printerProfiles = {
  usual: { nozzle: 0.4, layer: 0.2, bed: { width: 220, depth: 220, height: 250 } },
  small: { nozzle: 0.4, layer: 0.2, bed: { width: 120, depth: 120, height: 120 } },
  large: { nozzle: 0.6, layer: 0.3, bed: { width: 300, depth: 300, height: 400 } },
  fine: { nozzle: 0.25, layer: 0.1, bed: { width: 220, depth: 220, height: 250 } },
} as const satisfies Record<string, PrinterProfile>;

/** Name of a shipped printer profile. */
export type PrinterName = keyof typeof printerProfiles;

/** The names, in the order in which they are offered. */
export const printerNames = Object.keys(printerProfiles) as [PrinterName, ...PrinterName[]];

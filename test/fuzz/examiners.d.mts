export interface Examined {
  outcome: string;
  faults: string[];
  cost?: { seconds: number; megabytes: number };
}
export const MOST_SECONDS: number;
export const MOST_MEGABYTES: number;
export function withExcess(result: Examined): Examined;

/** A figure for reading: at most `decimals` [3] decimals, a real minus sign, a dash where there is none. */
export function figure(value: number | null, decimals = 3): string {
  if (value === null || !Number.isFinite(value)) return '–';
  // Adding 0 turns −0 into 0.
  return String(Number(value.toFixed(decimals)) + 0).replace('-', '−');
}

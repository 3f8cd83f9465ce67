/** Where one copy of a gear stands, at z = 0. Lengths in mm, angles in radians. */
export interface Place {
  /** Name of its part. */
  name: string;
  centre: [number, number];
  /** Direction of its axis seen from that of the train; 0 for one on it. */
  direction: number;
  /** Angle of one of its tooth centres. */
  rotation: number;
}

/** One that stands alone. */
export function alone(name: string, rotation: number, centre: [number, number] = [0, 0]): Place[] {
  return [{ name, centre, direction: 0, rotation }];
}

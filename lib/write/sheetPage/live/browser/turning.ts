import type { LiveBody, LiveData, LiveMode } from '../liveData.js';

/** Where the set stands: one turn of the driver moves everything. */
export interface Turning {
  mode(): LiveMode;
  setMode(index: number): void;
  /** Turns of the driver from rest. */
  turns(): number;
  turnTo(turns: number): void;
  /** Place and angle (radians) of a body now. */
  place(body: LiveBody): { x: number; y: number; angle: number };
  /** Share of a pitch that has passed, 0 … 1. */
  phase(): number;
  /** Called after every change. */
  onChange(listener: () => void): void;
}

/** Runs in the page, so it names nothing outside itself. */
export function turning(data: LiveData): Turning {
  const listeners: (() => void)[] = [];
  let mode = data.modes[0];
  let turns = 0;
  const changed = () => {
    for (const listener of listeners) listener();
  };
  return {
    mode: () => mode,
    setMode(index) {
      mode = data.modes[index];
      turns = 0;
      changed();
    },
    turns: () => turns,
    turnTo(next) {
      turns = next;
      changed();
    },
    place({ name, centre }) {
      const motion = mode.motions[name];
      if (!motion) return { x: centre[0], y: centre[1], angle: 0 };
      const round = 2 * Math.PI * motion.orbit * turns;
      const [cos, sin] = [Math.cos(round), Math.sin(round)];
      return {
        x: centre[0] * cos - centre[1] * sin + motion.shift[0] * turns,
        y: centre[0] * sin + centre[1] * cos + motion.shift[1] * turns,
        angle: 2 * Math.PI * motion.turns * turns,
      };
    },
    phase() {
      const pitches = mode.pitches * turns + data.phaseAtRest;
      return pitches - Math.floor(pitches);
    },
    onChange(listener) {
      listeners.push(listener);
    },
  };
}

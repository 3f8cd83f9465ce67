import { describe, expect, it } from 'vitest';
import { tipThickness } from '../../lib/proof/checks/tipThickness.js';
import { planSets } from '../../lib/proof/planSets.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import type { Gear } from '../../lib/tooth/gear.js';
import { toothProfile } from '../../lib/tooth/profile.js';
import { transverseContactRatio } from '../../lib/train/contactRatio.js';
import { leastRingTipRadius } from '../../lib/train/interference.js';
import { type By, merits } from '../../lib/train/merit.js';
import { pairSizes } from '../../lib/train/pair.js';
import type { PlanRow } from '../../lib/train/planRow.js';
import type { WantedSets } from '../../lib/train/planWanted.js';
import { fitSet, planOf, setNumbers } from '../planetarySets.js';
import { gear } from '../tooth/gears.js';

const B = { addendum: 1, dedendum: 1.25, fillet: 0.3 };
/** Engagement is looked at on its own: here every other rule is. */
const all = { engagement: 0, limit: 100_000 };

interface Wish {
  helixAngle: number;
  modules: number[];
  sun: [number, number];
  planet: [number, number];
  ring: [number, number];
  planets: [number, number];
  gap: number;
  outer: number;
  arc: number;
  ratio: [held: 'ring' | 'carrier' | 'sun', value: number, tolerance: number];
}

/** Every set by trying every count, and every rule written out from its textbook form. */
function bruteForce(wish: Wish): string[] {
  const found: string[] = [];
  const mt = 1 / Math.cos((wish.helixAngle * Math.PI) / 180);
  for (const m of wish.modules)
    for (let zs = wish.sun[0]; zs <= wish.sun[1]; zs++)
      for (let zp = wish.planet[0]; zp <= wish.planet[1]; zp++)
        for (let zr = wish.ring[0]; zr <= wish.ring[1]; zr++)
          for (let n = wish.planets[0]; n <= wish.planets[1]; n++) {
            if (zr !== zs + 2 * zp || Math.round((zs + zr) / n) * n !== zs + zr) continue;
            const a = (m * mt * (zs + zp)) / 2;
            const tip = (m * mt * zp) / 2 + m;
            if (2 * a * Math.sin(Math.PI / n) - 2 * tip < wish.gap) continue;
            if (m * mt * zr + 2.5 * m + 2 * Math.max(3, 2.7 * m) > wish.outer) continue;
            if (360 / n - (2 * Math.asin(tip / a) * 180) / Math.PI > wish.arc) continue;
            const [held, value, tolerance] = wish.ratio;
            const turns = { ring: 1 + zr / zs, carrier: zr / zs, sun: 1 + zs / zr }[held];
            // A ratio on the very edge counts, whatever the last bit says.
            if (Math.abs(turns - value) > tolerance + 1e-9) continue;
            found.push(`${zs}/${zp}/${zr} × ${n}, module ${m}`);
          }
  return found.sort();
}

const name = (row: PlanRow) =>
  `${row.sunTeeth}/${row.planetTeeth}/${row.ringTeeth} × ${row.planets}, module ${row.module}`;

const wishes: [string, Wish][] = [
  [
    'no limits',
    {
      helixAngle: 25,
      modules: [1, 2],
      sun: [8, 24],
      planet: [8, 24],
      ring: [10, 64],
      planets: [2, 8],
      gap: 0.25,
      outer: 2000,
      arc: 360,
      ratio: ['ring', 4, 1000],
    },
  ],
  [
    'every limit, herringbone',
    {
      helixAngle: 30,
      modules: [1, 1.25, 1.5],
      sun: [9, 36],
      planet: [7, 30],
      ring: [10, 80],
      planets: [3, 7],
      gap: 0.4,
      outer: 100,
      arc: 14,
      ratio: ['ring', 4, 0.6],
    },
  ],
  [
    'carrier held',
    {
      helixAngle: 20,
      modules: [0.8],
      sun: [6, 40],
      planet: [6, 30],
      ring: [35, 90],
      planets: [3, 12],
      gap: 0.02,
      outer: 80,
      arc: 25,
      ratio: ['carrier', 2.5, 0.3],
    },
  ],
];

function asked(wish: Wish): WantedSets {
  const span = ([least, most]: [number, number]) => ({ least, most });
  const [held, value, tolerance] = wish.ratio;
  return {
    ...all,
    helixAngle: wish.helixAngle,
    module: wish.modules,
    sunTeeth: span(wish.sun),
    planetTeeth: span(wish.planet),
    ringTeeth: span(wish.ring),
    planets: span(wish.planets),
    gap: wish.gap,
    outerDiameter: wish.outer,
    opening: wish.arc,
    ratio: { value, tolerance, held },
  };
}

describe('the search', () => {
  it.each(wishes)('%s: finds what trying everything finds', (_, wish) => {
    const expected = bruteForce(wish);
    expect(expected.length).toBeGreaterThan(10);
    expect(planSets(asked(wish)).rows.map(name).sort()).toEqual(expected);
  });

  it.each([
    [30, 0.25],
    [15, 0.4],
  ])(
    'planets at the nearest places, into a hole: finds what trying everything finds, helix %d',
    (helixAngle, gap) => {
      const expected = new Map<string, [arc: number, unbalance: number]>();
      const mt = 1.5 / Math.cos((helixAngle * Math.PI) / 180);
      for (let zs = 12; zs <= 20; zs++)
        for (let zp = 10; zp <= 16; zp++)
          for (let n = 3; n <= 7; n++) {
            const teeth = 2 * (zs + zp);
            const places = Array.from({ length: n }, (_, i) => Math.round((i * teeth) / n) / teeth);
            const between = places.map((at, i) => (places[i + 1] ?? 1) - at);
            const [a, tip] = [(mt * (zs + zp)) / 2, (mt * zp) / 2 + 1.5];
            if (2 * a * Math.sin(Math.PI * Math.min(...between)) - 2 * tip < gap) continue;
            if (mt * (zs + 2 * zp) + 2.5 * 1.5 + 2 * 4.05 > 85 - 2 * gap) continue;
            const arc = 360 * Math.max(...between) - (2 * Math.asin(tip / a) * 180) / Math.PI;
            const sum = (f: (at: number) => number) =>
              places.reduce((all, at) => all + f(2 * Math.PI * at), 0);
            const unbalance = Math.hypot(sum(Math.cos), sum(Math.sin)) / n;
            expected.set(`${zs}/${zp}/${zs + 2 * zp} × ${n}, module 1.5`, [Math.max(0, arc), unbalance]);
          }
      const { rows } = planSets({
        ...all,
        spacing: 'nearest',
        helixAngle,
        gap,
        module: 1.5,
        hole: 85,
        sunTeeth: { least: 12, most: 20 },
        planetTeeth: { least: 10, most: 16 },
        planets: { least: 3, most: 7 },
      });
      expect(rows.map(name).sort()).toEqual([...expected.keys()].sort());
      const uneven = rows.filter(({ spacing }) => spacing === 'nearest');
      expect(uneven.length).toBeGreaterThan(20);
      for (const row of rows) {
        const [arc, unbalance] = expected.get(name(row))!;
        expect(row.opening.arc).toBeCloseTo(arc, 9);
        expect(row.unbalance).toBeCloseTo(unbalance, 9);
        expect(row.spacing).toBe((row.sunTeeth + row.ringTeeth) % row.planets === 0 ? 'equal' : 'nearest');
      }
    },
  );

  it('says of what is just too large for a hole how much room there is', () => {
    const { nearMisses } = planSets({
      hole: 93,
      gap: 0.3,
      module: 1.5,
      sunTeeth: 16,
      planetTeeth: 16,
      planets: 4,
    });
    expect(nearMisses.map(({ fails }) => fails)).toContain(
      'hole: 94.988 mm across, a hole of 93 takes at most 92.4, the gap free all around',
    );
  });

  it('spur: leaves out what lets go of its mate once the gap is taken off, and nothing else', () => {
    const wish = { ...wishes[0][1], helixAngle: 0, modules: [1] };
    const found = planSets(asked(wish)).rows.map(name);
    const left = bruteForce(wish).filter((set) => !found.includes(set));
    expect(found.every((set) => bruteForce(wish).includes(set))).toBe(true);
    expect(found.length).toBeGreaterThan(100);
    expect(left.length).toBeGreaterThan(100);
    for (const set of left.filter((_, i) => i % 7 === 0)) {
      const [sun, planet, , count] = set.split(/\D+/).map(Number);
      const spec = resolveSpec({
        kind: 'planetary',
        module: 1,
        helix: { form: 'spur' },
        faceWidth: 20,
        sun: { teeth: sun },
        planets: { teeth: planet, count },
      });
      const made = fitSet(spec);
      const contact = Math.min(transverseContactRatio(made.inner), transverseContactRatio(made.outer));
      expect(contact, set).toBeLessThan(1);
    }
  });

  it.each(Object.keys(merits) as By[])('ranks by %s', (by) => {
    const asked = { module: [1, 1.5], ratio: { value: 4, tolerance: 0.5 }, outerDiameter: 120, gap: 0.2 };
    const { rows } = planSets({ ...asked, limit: 200, by });
    // Each formula written out once more, from the row alone.
    const expected: Record<By, (row: PlanRow) => number> = {
      overall: (row) =>
        (row.engagement / 2) *
        (1 - (row.planets * row.opening.arc) / 360) *
        (1 - Math.abs(row.ratios.ringHeld - 4)) *
        (row.outerDiameter / 120),
      opening: (row) => 1 - row.opening.arc / 360,
      ratio: (row) => 4 / (4 + Math.abs(row.ratios.ringHeld - 4)),
      engagement: (row) => row.engagement,
      strength: (row) => (Math.PI * row.module) / 2 - 0.2 / Math.cos(Math.PI / 9),
      size: (row) => 1 - row.outerDiameter / 120,
    };
    expect(rows.length).toBeGreaterThan(50);
    for (const row of rows) expect(row.merit).toBeCloseTo(expected[by](row), 12);
    for (let i = 1; i < rows.length; i++) expect(rows[i - 1].merit).toBeGreaterThanOrEqual(rows[i].merit);
    // The best of all is the best of what every order gives.
    const best = Math.max(
      ...planSets({ ...asked, limit: 100_000, by: by === 'size' ? 'overall' : 'size' }).rows.map(
        expected[by],
      ),
    );
    expect(rows[0].merit).toBeCloseTo(best, 12);
  });

  it('no set is larger than the bed, and tips are a line wide where a nozzle is named', () => {
    const small = planSets({ bed: 100, limit: 100_000, module: [1, 2], planets: 4 }).rows;
    const all = planSets({ limit: 100_000, module: [1, 2], planets: 4 }).rows;
    expect(all.some(({ outerDiameter }) => outerDiameter > 100)).toBe(true);
    expect(small.map(name).sort()).toEqual(
      all
        .filter(({ outerDiameter }) => outerDiameter <= 100)
        .map(name)
        .sort(),
    );
    const tip = (row: PlanRow) => {
      const spec = resolveSpec({
        kind: 'planetary',
        module: row.module,
        faceWidth: 20,
        sun: { teeth: row.sunTeeth },
        planets: { teeth: row.planetTeeth, count: row.planets },
      });
      return tipThickness(planOf(spec)).value!;
    };
    const wide = planSets({ bed: 100, limit: 100_000, module: [1, 2], planets: 4, nozzle: 0.4 });
    expect(wide.rows.map(name).sort()).toEqual(
      small
        .filter((row) => tip(row) >= 0.45)
        .map(name)
        .sort(),
    );
    expect(wide.rows.length).toBeLessThan(small.length);
    expect(wide.nearMisses.some(({ fails }) => /^nozzle: .* is 0\.45 wide$/.test(fails))).toBe(true);
  });

  it('finds 15/15/45 with five planets, and nothing else in that place', () => {
    const { rows } = planSets({
      planets: 5,
      module: 1.5,
      ratio: { value: 4 },
      ringTeeth: { least: 40, most: 48 },
    });
    expect(rows.map(name)).toEqual(['15/15/45 × 5, module 1.5']);
    expect(rows[0]).toMatchObject({
      spacing: 'equal',
      profileShifts: { sun: 0, planet: 0, ring: 0 },
      ratios: { ringHeld: 4, carrierHeld: -3 },
    });
  });

  it('ranks by merit, without ties left to chance', () => {
    const { rows } = planSets({ module: [1, 1.5], ringTeeth: { least: 10, most: 70 }, limit: 500 });
    for (let i = 1; i < rows.length; i++) expect(rows[i - 1].merit).toBeGreaterThanOrEqual(rows[i].merit);
    expect(new Set(rows.map(name)).size).toBe(rows.length);
    const first = planSets({ module: [1.5, 1], ringTeeth: { least: 10, most: 70 }, limit: 7 });
    expect(first.rows).toEqual(rows.slice(0, 7));
  });

  it('says what was searched for, defaults filled in', () => {
    expect(planSets({ planets: 4, ratio: { value: 5 } }).wanted).toMatchObject({
      planets: { least: 4, most: 4 },
      ringTeeth: { least: 10, most: 120 },
      ratio: { value: 5, tolerance: 0.1, held: 'ring' },
      module: [1, 1.125, 1.25, 1.375, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3],
      rack: B,
      helixAngle: 30,
      outerDiameter: null,
    });
  });
});

describe('figures of a row', () => {
  const rows = planSets({ limit: 400, module: [1.5], gap: 0.25 }).rows;

  it('engagement is the lesser contact ratio of the two meshes as they will be made', () => {
    const shared = { module: 1.5, helixAngle: 30, rack: B };
    for (const row of rows) {
      const sun = gear(row.sunTeeth, shared);
      const planet = gear(row.planetTeeth, shared);
      const ring: Gear = { ...gear(row.ringTeeth, shared), internal: true };
      const formRadius1 = toothProfile(planet).formRadius;
      const inner = pairSizes(sun, planet, {
        formRadius1: toothProfile(sun).formRadius,
        formRadius2: formRadius1,
      });
      const outer = pairSizes(planet, ring, { formRadius1 });
      const tipRadius2 = Math.max(outer.tipRadius2, outer.baseRadius2, leastRingTipRadius(outer));
      const expected = Math.min(
        transverseContactRatio(inner),
        transverseContactRatio({ ...outer, tipRadius2 }),
      );
      expect(row.engagement).toBeCloseTo(expected, 10);
      expect(row.engagement).toBeGreaterThanOrEqual(1);
    }
  });

  it('outer diameter is that of the parameter file with the same counts and nothing said of the rim', () => {
    for (const row of [...rows.slice(0, 20), ...planSets({ module: 0.8 }).rows.slice(0, 5)]) {
      const spec = resolveSpec({
        kind: 'planetary',
        module: row.module,
        faceWidth: 10,
        sun: { teeth: row.sunTeeth },
        planets: { teeth: row.planetTeeth, count: row.planets },
      });
      expect(row.outerDiameter).toBeCloseTo(2 * (setNumbers(spec).radii.ring.root + spec.ring.rim), 9);
    }
  });

  it('drop is measured from the ring tips after they are cut back for the planet', () => {
    const [row] = planSets({ module: 1, sunTeeth: 15, planetTeeth: 15, planets: 5, helixAngle: 0 }).rows;
    const outer = pairSizes(gear(15, { rack: B }), { ...gear(45, { rack: B }), internal: true });
    const tip = leastRingTipRadius({ ...outer, formRadius1: toothProfile(gear(15, { rack: B })).formRadius });
    expect(tip).toBeGreaterThan(21.7);
    // Outer common tangent of two planets 36° to either side: a cos 36° + r_a from the axis.
    expect(row.opening.drop).toBeCloseTo(tip - (15 * Math.cos(Math.PI / 5) + 8.5), 12);
  });

  it('drop grows with the module as every length does', () => {
    const [small] = planSets({ module: 1, sunTeeth: 15, planetTeeth: 15, planets: 3, gap: 0.02 }).rows;
    const [large] = planSets({ module: 2, sunTeeth: 15, planetTeeth: 15, planets: 3, gap: 0.02 }).rows;
    expect(small.opening.drop).toBeGreaterThan(0);
    expect(large.opening.drop).toBeCloseTo(2 * small.opening.drop, 10);
    expect(large.opening.arc).toBe(small.opening.arc);
  });

  it('merit can be worked out from the row and the wishes', () => {
    const wanted: WantedSets = { outerDiameter: 120, module: 1.5, ratio: { value: 4, tolerance: 0.5 } };
    const plan = planSets(wanted);
    expect(plan.rows.length).toBeGreaterThan(3);
    for (const row of plan.rows) {
      const departure = Math.abs(row.ratios.ringHeld - 4);
      const covered = 1 - (row.planets * row.opening.arc) / 360;
      const expected = (row.engagement / 2) * covered * (1 - departure) * (row.outerDiameter / 120);
      expect(row.merit).toBeCloseTo(expected, 12);
    }
  });
});

describe('near misses', () => {
  it('keep every rule but the one they name', () => {
    const wish = wishes[1][1];
    const { rows, nearMisses } = planSets(asked(wish));
    const has = (changes: Partial<Wish>, row: PlanRow) =>
      bruteForce({ ...wish, ...changes }).includes(name(row));
    // What the rule would have to be for the row to be found: only the rule named is let go.
    const relaxed: Record<string, Partial<Wish>> = {
      neighbours: { gap: -100 },
      outerDiameter: { outer: 2000 },
      opening: { arc: 360 },
      ratio: { ratio: ['ring', 4, 1000] },
    };
    const kinds = new Set<string>();
    expect(nearMisses.length).toBeGreaterThan(10);
    for (const miss of nearMisses) {
      const kind = miss.fails.slice(0, miss.fails.indexOf(':'));
      expect(rows.map(name)).not.toContain(name(miss));
      if (kind === 'assembly') {
        expect((miss.sunTeeth + miss.ringTeeth) % miss.planets).not.toBe(0);
        continue;
      }
      if (kinds.has(kind)) continue;
      kinds.add(kind);
      expect(relaxed[kind], kind).toBeDefined();
      expect(has({}, miss), miss.fails).toBe(false);
      expect(has(relaxed[kind], miss), miss.fails).toBe(true);
    }
    expect([...kinds].sort()).toEqual(['neighbours', 'opening', 'outerDiameter', 'ratio']);
  });

  it('show the set asked for when it just misses, and why', () => {
    const { rows, nearMisses } = planSets({ sunTeeth: 16, planetTeeth: 16, planets: 5, module: 1.5 });
    expect(rows).toEqual([]);
    expect(nearMisses[0]).toMatchObject({ sunTeeth: 16, ringTeeth: 48, planets: 5 });
    expect(nearMisses[0].fails).toBe(
      'assembly: (16 + 48) / 5 is not whole, planets sit at multiples of 5.625°',
    );
    const tight = planSets({ sunTeeth: 9, planetTeeth: 30, planets: 3, module: 1.5, engagement: 1.1 });
    expect(tight.nearMisses[0].fails).toMatch(/^engagement: contact ratio 1\.0\d+, at least 1\.1 wanted$/);
  });
});

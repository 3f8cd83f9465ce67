// Every place that takes a value of the parameter file holds to the same limits, in the same words: the file itself,
// plan, the coupon, trial logs, profiles, solved shifts. Help and README say the defaults that there are.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { planFlags } from '../../bin/flags/plan.js';
import { stationsLike } from '../../lib/fit/coupon/stations.js';
import { guideAt } from '../../lib/spec/guide.js';
import { LARGEST, LEAST_HELIX, MOST_GAP_PER_MODULE } from '../../lib/spec/ranges.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import type { WantedSets } from '../../lib/train/planWanted.js';
import { figures, readWanted, spans, stated } from '../../lib/train/readWanted.js';
import { rimOf } from '../../lib/train/searchSets.js';
import { setOf } from '../sets.js';
import { deep, only, roomy, shared, shifts } from './doors.js';
import { problemsOf, spinner, withValue } from './table.js';

describe('limits', () => {
  it.each(shared)('of %s are the same wherever it is given', (path, step, doors) => {
    const { minimum, maximum } = guideAt(path.split('.'), deep('fillet')())!;
    expect(minimum).toBeLessThan(maximum!);
    const beyond = new RegExp(`from ${minimum} to ${maximum}\\b`);
    for (const [place, tried] of Object.entries(doors)) {
      for (const value of [minimum! - step, maximum! + step]) {
        const found = tried(value);
        expect(found, `${place}: ${value}`).not.toEqual([]);
        for (const { rule } of found) expect(rule, place).toMatch(beyond);
      }
      // Rules with other values may say something else at the very ends; the range may not.
      for (const value of [minimum!, maximum!])
        for (const { rule } of tried(value)) expect(rule, `${place}: ${value}`).not.toMatch(beyond);
    }
  });

  it('that are refused nowhere at their ends are accepted at every door', () => {
    const bound = (path: string) => guideAt(path.split('.'), roomy())!;
    for (const [path, , doors] of shared)
      for (const end of ['minimum', 'maximum'] as const) {
        const value = bound(path)?.[end];
        if (value === undefined || path.startsWith('rack.') || path === 'helix.angle') continue;
        const said = Object.entries(doors).filter(([, tried]) => tried(value).length > 0);
        // A ring of the least count has no room for planets, a coupon of two equal gaps says nothing.
        if (path === 'ring.teeth' && end === 'minimum') continue;
        expect(said.map(([place]) => `${place}: ${path} ${value}`)).toEqual([]);
      }
  });

  it('of a gap in modules are one rule in file, plan, coupon and solved shifts', () => {
    const most = MOST_GAP_PER_MODULE;
    const rule = `must be at most ${most} mm: ${most} × module`;
    expect(only(problemsOf(withValue('fit.gap', most, { ...spinner(), module: 1 })), 'fit.gap')).toEqual([]);
    expect(problemsOf({ gap: most, module: 1 }, readWanted as never)).toEqual([]);
    expect(shifts('gap')(most)).toEqual([]);
    const over = most + 0.01;
    expect(problemsOf(withValue('fit.gap', over, { ...spinner(), module: 1 }))[0].rule).toBe(rule);
    expect(problemsOf({ gap: over, module: 1 }, readWanted as never)[0].rule).toBe(rule);
    const like = setOf(15, 15, 45, 5, { module: 1 });
    expect(problemsOf([0.2, over], ((gaps: number[]) => stationsLike(like, gaps)) as never)[0]).toMatchObject(
      {
        parameter: 'gaps',
        rule: `${rule} (as fit.gap)`,
        nearest: [String(most)],
      },
    );
    expect(shifts('gap')(over)[0].rule).toContain(`to ${most}`);
  });

  it('of a helix that is worth the name, and of a rack, are those of the file in plan', () => {
    const both = (wanted: WantedSets, inFile: object) => {
      const [asked] = problemsOf(wanted, readWanted as never);
      const [given] = problemsOf({ ...spinner(), ...inFile });
      expect(asked?.rule).toBe(given?.rule);
      return asked?.rule;
    };
    const slight = LEAST_HELIX - 0.001;
    expect(both({ helixAngle: slight }, { helix: { angle: slight } })).toContain(`from ${LEAST_HELIX} to 45`);
    expect(both({ helixAngle: LEAST_HELIX }, { helix: { angle: LEAST_HELIX } })).toBeUndefined();
    const flat = { addendum: 1, dedendum: 0.9, fillet: 0.3 };
    expect(both({ rack: flat }, { rack: flat })).toContain('more than rack.addendum');
    expect(both({ rack: 'D', pressureAngle: 30 }, { rack: 'D', pressureAngle: 30 })).toContain(
      'come to a point',
    );
    const wide = { faceWidth: 280, tolerance: 0.2, fit: { gap: 0.5 } };
    expect(both({ faceWidth: 280, gap: 0.5 }, wide)).toBeUndefined();
    expect(both({ gap: 0.7, module: 1 }, { fit: { gap: 0.7 }, module: 1 })).toBeUndefined();
  });

  it('of plan’s own are not those of a file for a reason, and no wish is left without any', () => {
    expect(figures.outerDiameter[1]).toBe(LARGEST);
    expect(figures.engagement[1]).toBe(guideAt(['limits', 'contactRatio'], spinner())!.maximum);
    const { minimum, maximum } = guideAt(['ring', 'mount', 'hole'], withValue('ring.mount', {}))!;
    expect(figures.hole).toEqual([minimum, maximum]);
    const own = [...Object.keys(figures), 'module', 'ratio', 'by', 'limit'];
    const wishes = Object.keys(readWanted({})).filter((key) => key !== 'largest');
    expect([...Object.keys(spans), ...Object.keys(stated), ...own].sort()).toEqual(wishes.sort());
  });
});

describe('defaults', () => {
  const full = readWanted({});
  const spec = resolveSpec(spinner() as { kind: 'planetary' });

  it('of plan are the file’s', () => {
    expect(full).toMatchObject({
      gap: spec.fit.gap,
      pressureAngle: spec.pressureAngle,
      rack: spec.rack,
      helixForm: spec.helix.form,
      helixAngle: spec.helix.angle,
      spacing: spec.planets.spacing,
      shifts: spec.profileShift,
      bed: spec.printer.bed.width,
    });
    for (const [form, angle] of [
      ['spur', 0],
      ['helical', 20],
      ['herringbone', 30],
    ] as const) {
      expect(readWanted({ helixForm: form }).helixAngle).toBe(angle);
      expect(resolveSpec(withValue('helix', { form })).helix.angle).toBe(angle);
    }
    for (const module of [0.5, 1.5, 4])
      expect(rimOf(module, full)).toBeCloseTo(
        (resolveSpec(withValue('module', module)) as typeof spec).ring.rim,
        12,
      );
  });

  it('that help and README state are those of an empty search', () => {
    const readme = readFileSync(join(import.meta.dirname, '..', '..', 'README.md'), 'utf8');
    const rows = readme.split('\n').filter((line) => line.startsWith('| `--'));
    const span = ({ least, most }: { least: number; most: number }) => `${least}-${most}`;
    for (const [flag, usual] of [
      ['bed', full.bed],
      ['planets', span(full.planets)],
      ['module', `${full.module[0]}-${full.module.at(-1)}`],
      ['sun-teeth', span(full.sunTeeth)],
      ['planet-teeth', span(full.planetTeeth)],
      ['ring-teeth', span(full.ringTeeth)],
      ['engagement', full.engagement],
      ['face-width', full.faceWidth],
      ['helix', `${full.helixForm}:${full.helixAngle}`],
      ['pressure-angle', full.pressureAngle],
      ['limit', full.limit],
      ['by', full.by],
    ] as const) {
      expect(planFlags[flag].describe, flag).toContain(`[${usual}]`);
      const row = rows.find((line) => line.includes(`\`--${flag}\``))!;
      expect(row.split('|').at(-2), flag).toMatch(new RegExp(`(^|[ ,])${usual}([ ,]|$)`));
    }
    expect(planFlags.gap.describe).toContain(`[${full.gap}]`);
  });
});

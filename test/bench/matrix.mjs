// Gaps, deviations, triangles and times of four sets over modules, helix angles and gaps: `npm run matrix`.
// Every line is one set, built and measured. `npm run matrix -- 0.002` sets the tolerance.
import { proveSet, Refusal, resolveSpec } from 'cogweave';

const tolerance = Number(process.argv[2] ?? 0.01);
const sets = [
  [15, 15, 45, 5],
  [18, 18, 54, 4],
  [30, 15, 60, 6],
  [12, 24, 60, 3],
];
console.log(
  'sun/planet/ring x count  module  form         angle  gap   rolling  sun gap  ring gap  deviation  triangles  s',
);
for (const [sun, planet, ring, count] of sets)
  for (const module of [0.8, 1.5, 3])
    for (const angle of [0, 15, 30, 45])
      for (const gap of [0.1, 0.25, 0.5]) {
        const form = angle ? 'herringbone' : 'spur';
        const label = [
          `${sun}/${planet}/${ring} x ${count}`.padEnd(23),
          String(module).padEnd(6),
          form.padEnd(11),
          String(angle).padStart(5),
          gap.toFixed(2),
        ].join('  ');
        try {
          const started = performance.now();
          const { sheet } = proveSet(
            resolveSpec({
              kind: 'planetary',
              module,
              faceWidth: 20,
              tolerance,
              helix: { form, angle },
              sun: { teeth: sun },
              planets: { teeth: planet, count },
              ring: { teeth: ring },
              fit: { gap },
            }),
          );
          const seconds = (performance.now() - started) / 1000;
          const failing = sheet.checks.filter(({ holds, level }) => !holds && level === 'must');
          if (failing.length) {
            console.log(`${label}  refused: ${failing.map(({ says }) => says).join('; ')}`);
            continue;
          }
          const value = (id) => sheet.checks.find((check) => check.id === id).value;
          const triangles = sheet.parts.reduce((sum, part) => sum + part.count * part.triangles, 0);
          const figures = [
            value('rolling').toFixed(4),
            ...sheet.meshes.map(({ gap: { bodies } }) => bodies.toFixed(4)),
            value('helix-accuracy').toFixed(5),
            String(triangles).padStart(9),
            seconds.toFixed(2),
          ];
          console.log(`${label}  ${figures.join('   ')}`);
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
          console.log(`${label}  refused: ${error.message}`);
        }
      }

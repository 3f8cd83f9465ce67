import * as z from 'zod';
import { fileRecordSchema } from '../write/digests.js';

const figure = z.number().nullable();

/** A row of the summary, its values such as `makeVariant` puts there. */
const row = {
  overrides: z.record(z.string(), z.unknown()),
  size: z.tuple([z.number(), z.number(), z.number()]).nullable(),
  gears: z.array(
    z.strictObject({ part: z.string(), teeth: z.number(), count: z.number(), module: z.number() }),
  ),
  gaps: z.array(z.strictObject({ between: z.string(), asked: z.number(), rolling: figure, bodies: figure })),
  checks: z.strictObject({ held: z.int().nonnegative(), failed: z.array(z.string()) }),
  triangles: figure,
  volume: figure,
};
const refusal = z.strictObject({
  code: z.string(),
  parameter: z.string(),
  // A parameter that is missing has none.
  value: z.unknown().optional(),
  rule: z.string(),
  nearest: z.array(z.unknown()),
  says: z.array(z.string()).min(1),
});

/**
 * A `VariantRecord`, as it must be to be believed: one that was made names every file, with digests; one that was
 * refused names none, and says why.
 * @param name of the variant
 * @param files names of all files that are made of it, in any order
 */
export function recordSchema(name: string, files: readonly string[]): z.ZodType {
  const all = z.strictObject({ ...row, name: z.literal(name) });
  const sameNames = (names: readonly string[]) => [...names].sort().join('/') === [...files].sort().join('/');
  const made = all.extend({
    status: z.literal('made'),
    fingerprint: z.string(),
    files: z.array(z.string()).refine(sameNames),
    written: z.array(fileRecordSchema).refine((written) => sameNames(written.map((file) => file.name))),
    refusal: z.null(),
  });
  const refused = all.extend({
    status: z.literal('refused'),
    fingerprint: z.string().nullable(),
    files: z.array(z.never()),
    written: z.array(z.never()),
    refusal,
  });
  return z.discriminatedUnion('status', [made, refused]);
}

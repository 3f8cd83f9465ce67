import * as z from 'zod';
import { fileSchema } from './kinds.js';

/**
 * JSON Schema (draft 2020-12) of the parameter file: every parameter with its description, default, range, `unit`
 * (mm, deg), `source` of default and limits, and `defaultRule` where the default follows from other parameters.
 */
export function specJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(fileSchema, { io: 'input' }) as Record<string, unknown>;
}

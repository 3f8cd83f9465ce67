/**
 * The rule that a problem breaks, by a name that stays the same when its words change: what a script goes by. In the
 * order in which a file, and then a set, goes through them.
 */
export const problemCodes = {
  'wrong-usage': 'Words on the command line that it cannot take.',
  unreadable: 'A file or folder that is not there, is of another sort, or is not given by the system.',
  empty: 'A file without any content.',
  'not-text': 'Bytes or characters that no text has.',
  'not-yaml': 'Neither YAML nor JSON, or not one document of it.',
  'too-large': 'More bytes, values, levels or references than are read or written.',
  'unknown-key': 'A key, flag, parameter or operation that does not exist here.',
  'given-twice': 'The same key, flag or value more than once.',
  missing: 'A value that is required and not given.',
  'wrong-type': 'A value of another type: a mapping, a list, a word or text was to stand there.',
  'not-a-number': 'No number where one was to stand.',
  'not-whole': 'A number that is to be whole, or whole steps.',
  'out-of-range': 'A number outside the range that its parameter has by itself.',
  'not-one-of': 'None of the words, or of the values, that are known here.',
  'wrong-form': 'Text that is not written as its parameter is.',
  'bad-name': 'Text that cannot be the name of files.',
  'wrong-count': 'Fewer or more of something than there may be.',
  reversed: 'A range whose end lies before its beginning.',
  'not-listed': 'Problems beyond the hundredth, which are only counted.',
  excluded: 'A value that another given one rules out.',
  'needs-another': 'A value that serves only together with another, which is not given.',
  differs: 'A value that is to be the same as another, and is not.',
  ambiguous: 'What could be meant is more than one thing.',
  'beyond-limit': 'A number outside the range that other values leave it.',
  'too-small': 'A size too small for what it holds, or for the lines it is printed with.',
  'too-big': 'A part larger than any that is made.',
  'too-much-work': 'More triangles than a set may have.',
  'too-coarse': 'A tolerance too coarse for the lines, the gaps or the bodies.',
  'thin-body': 'Hardly any body is left inside the teeth.',
  'no-hold': 'Retention that such teeth cannot give.',
  'no-room': 'A feature that finds no room on its part.',
  'no-line-of-action': 'Profile shifts or counts that leave the line of action no length.',
  'no-shifts': 'No profile shifts in range serve.',
  'no-common-centre-distance': 'Gears in mesh would stand at different centre distances.',
  'no-mesh': 'Two gears that cannot mesh.',
  'does-not-assemble': 'Planets at places where they do not mesh.',
  'pointed-tooth': 'Teeth that come to a point.',
  'no-involute': 'Teeth that would reach below the base circle, where there is no involute.',
  'no-fillet-room': 'Tooth spaces too narrow for the rounding at their roots.',
  'not-measurable': 'A size that pins or a caliper cannot read on these teeth.',
  'growth-too-great': 'Walls set back by the growth of the print cannot be drawn.',
  'lips-no-room': 'Lips find no room on these teeth.',
  'carrier-no-room': 'Pins, posts, boss or bolts find no room in the carrier.',
  'crossing-outlines': 'Outlines that touch or cross.',
  'not-meshable': 'No mesh follows these surfaces within the tolerance.',
  'bad-mesh': 'Arrays that are no mesh, or none that the format can hold.',
  'not-closed': 'A solid that is not closed, or holds nothing.',
  'not-one-body': 'A solid that leaves its part empty, hollow or in pieces.',
  'no-effect': 'A solid that changes nothing.',
  'check-failed': 'A check of the made set that stops the job.',
  'in-the-way': 'Something is in the place where files are to be written.',
  'not-writable': 'A place where the system does not let files be written.',
  locked: 'A file that another run is writing.',
  removed: 'Files that somebody removed meanwhile.',
  'out-of-memory': 'The memory did not do.',
  'internal-error': 'A fault of cogweave.',
} as const;

/** One of `problemCodes`. */
export type ProblemCode = keyof typeof problemCodes;

/** What is wrong with a value that is no number in range. */
export function codeOfNumber(value: unknown, whole = false): ProblemCode {
  if (typeof value !== 'number' || Number.isNaN(value)) return 'not-a-number';
  return whole && !Number.isInteger(value) ? 'not-whole' : 'out-of-range';
}

/**
 * The rule that a problem breaks, by a name that stays the same when its words change: what a script goes by. In the
 * order in which a file, and then a set, goes through them.
 */
export type ProblemCode =
  /** A flag that the command does not have. */
  | 'unknown-flag'
  /** No command, or one that does not exist. */
  | 'unknown-command'
  /** Words on the command line that it cannot take. */
  | 'wrong-usage'
  /** A file or folder that is not there, is of another sort, or is not given by the system. */
  | 'unreadable'
  /** A file without any content. */
  | 'empty'
  /** Bytes or characters that no text has. */
  | 'not-text'
  /** Neither YAML nor JSON, or not one document of it. */
  | 'not-yaml'
  /** More bytes, values, levels or references than are read or written. */
  | 'too-large'
  /** A key, parameter or operation that does not exist here. */
  | 'unknown-key'
  /** The same key, flag or value more than once. */
  | 'given-twice'
  /** A value that is required and not given. */
  | 'missing'
  /** A value of another type: a mapping, a list, a word or text was to stand there. */
  | 'wrong-type'
  /** No number where one was to stand. */
  | 'not-a-number'
  /** A number that is to be whole, or whole steps. */
  | 'not-whole'
  /** A number outside the range that its parameter has by itself. */
  | 'out-of-range'
  /** None of the words, or of the values, that are known here. */
  | 'not-one-of'
  /** Text that is not written as its parameter is. */
  | 'wrong-form'
  /** Text that cannot be the name of files. */
  | 'bad-name'
  /** Fewer or more of something than there may be. */
  | 'wrong-count'
  /** A range whose end lies before its beginning. */
  | 'reversed'
  /** Problems beyond the hundredth, which are only counted. */
  | 'not-listed'
  /** A value that another given one rules out. */
  | 'excluded'
  /** A value that serves only together with another, which is not given. */
  | 'needs-another'
  /** A value that is to be the same as another, and is not. */
  | 'differs'
  /** What could be meant is more than one thing. */
  | 'ambiguous'
  /** A size that is not in the sheet of the set. */
  | 'not-in-sheet'
  /** A number outside the range that other values leave it. */
  | 'beyond-limit'
  /** A size too small for what it holds, or for the lines it is printed with. */
  | 'too-small'
  /** A part larger than any that is made. */
  | 'too-big'
  /** More triangles than a set may have. */
  | 'too-much-work'
  /** A tolerance too coarse for the lines, the gaps or the bodies. */
  | 'too-coarse'
  /** A ring of so many teeth is not made. */
  | 'wrong-ring'
  /** Hardly any body is left inside the teeth. */
  | 'thin-body'
  /** Retention that such teeth cannot give. */
  | 'no-hold'
  /** A feature that finds no room on its part. */
  | 'no-room'
  /** Profile shifts or counts that leave the line of action no length. */
  | 'no-line-of-action'
  /** No profile shifts in range serve. */
  | 'no-shifts'
  /** The gears that mesh with one another would stand at different centre distances. */
  | 'no-common-centre-distance'
  /** Two gears that cannot mesh. */
  | 'no-mesh'
  /** Planets at places where they do not mesh. */
  | 'does-not-assemble'
  /** Teeth that come to a point. */
  | 'pointed-tooth'
  /** Teeth that would reach below the base circle, where there is no involute. */
  | 'no-involute'
  /** Tooth spaces too narrow for the rounding at their roots. */
  | 'no-fillet-room'
  /** A size that pins or a caliper cannot read on these teeth. */
  | 'not-measurable'
  /** Walls set back by the growth of the print cannot be drawn. */
  | 'growth-too-great'
  /** Lips find no room on these teeth. */
  | 'lips-no-room'
  /** Pins, posts, boss or bolts find no room in the carrier. */
  | 'carrier-no-room'
  /** Outlines that touch or cross. */
  | 'crossing-outlines'
  /** No mesh follows these surfaces within the tolerance. */
  | 'not-meshable'
  /** Arrays that are no mesh, or none that the format can hold. */
  | 'bad-mesh'
  /** A solid that is not closed, or holds nothing. */
  | 'not-closed'
  /** A part that the set does not have. */
  | 'no-such-part'
  /** A solid that leaves its part empty, hollow or in pieces. */
  | 'not-one-body'
  /** A solid that changes nothing. */
  | 'no-effect'
  /** A check of the made set that stops the job. */
  | 'check-failed'
  /** Something is in the place where files are to be written. */
  | 'in-the-way'
  /** A place where the system does not let files be written. */
  | 'not-writable'
  /** A file that another run is writing. */
  | 'locked'
  /** Files that somebody removed meanwhile. */
  | 'removed'
  /** The memory did not do. */
  | 'out-of-memory'
  /** A fault of cogweave. */
  | 'internal-error';

/** What is wrong with a value that is no number in range. */
export function codeOfNumber(value: unknown, whole = false): ProblemCode {
  if (typeof value !== 'number' || Number.isNaN(value)) return 'not-a-number';
  return whole && !Number.isInteger(value) ? 'not-whole' : 'out-of-range';
}

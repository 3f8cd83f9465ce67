import { resolveTried } from '../proof/nearest/workingOffers.js';
import { Refusal } from '../refusal.js';
import { isName } from '../spec/name.js';
import type { Plain } from '../spec/plainData.js';
import { type Profile, withProfile } from '../spec/profileFile.js';
import type { Spec } from '../spec/types.js';
import { withTolerance } from '../spec/withTolerance.js';
import type { Format } from '../write/formats.js';
import { makeSet } from '../write/makeSet.js';
import { fingerprint } from './fingerprint.js';
import { type Overrides, withOverrides } from './overrides.js';
import { emptyRow, refusalOf, sheetFigures, stoppedBy, type VariantRecord } from './record.js';
import { dropRecord, filesOf, notAsWritten, readRecord, writeRecord } from './records.js';

/** One variant to be made: plain data, so that it can be handed to a worker. */
export interface VariantTask {
  folder: string;
  name: string;
  /** The parameter file, its variants left out. */
  data: Plain;
  overrides: Overrides;
  profile: Profile;
  formats: Format[];
  strict: boolean;
  /** Size of a picture, pixels [none]. */
  picture?: { width: number; height: number };
  /** Mesh tolerance in place of the file's, as it was typed, mm. */
  tolerance?: string;
}

/** What came of it; small, however large the set. */
export interface VariantResult {
  status: 'made' | 'kept' | 'refused';
  record: VariantRecord;
  /** What was found that was not as it should be, a line each. */
  said: string[];
}

/**
 * Makes one variant, or leaves it as it is where the same was made before and its files are all there. Its record is
 * written last.
 * @throws Refusal for the parameter `out` where the file system does not allow it
 */
export async function makeVariant(task: VariantTask): Promise<VariantResult> {
  const { folder, name, overrides } = task;
  const said: string[] = [];
  const say = (words: string) => void said.push(words);
  const blank: VariantRecord = { ...emptyRow(name, overrides), fingerprint: null, written: [] };
  const refused = async (record: Partial<VariantRecord>): Promise<VariantResult> => {
    const whole: VariantRecord = { ...blank, ...record, status: 'refused' };
    await dropRecord(folder, name);
    await writeRecord(folder, whole);
    return { status: 'refused', record: whole, said };
  };
  let spec: Spec;
  try {
    spec = specOf(task);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return refused({ refusal: refusalOf(error.problems) });
  }
  const print = fingerprint(spec, task);
  const earlier = readRecord(folder, name, filesOf(task), say);
  if (earlier?.fingerprint === print) {
    // The same parameters may have been given in other words.
    const record = { ...earlier, overrides };
    if (earlier.status === 'refused') return { status: 'refused', record, said };
    const wrong = await notAsWritten(folder, earlier.written);
    if (!wrong.length) return { status: 'kept', record, said };
    say(`${name} is made again: ${wrong.join(', ')} gone, or not as written`);
  }
  await dropRecord(folder, name);
  try {
    const { sheet, written, blocking } = await makeSet(spec, {
      folder,
      formats: task.formats,
      force: false,
      strict: task.strict,
      picture: task.picture,
      say,
    });
    const figures = { ...sheetFigures(sheet), fingerprint: print };
    if (written.length === 0) return refused({ ...figures, refusal: stoppedBy(blocking) });
    const files = written.map((file) => file.name);
    const record: VariantRecord = { ...blank, ...figures, status: 'made', files, written };
    await writeRecord(folder, record);
    return { status: 'made', record, said };
  } catch (error) {
    if (!(error instanceof Refusal) || error.parameter === 'out') throw error;
    return refused({ fingerprint: print, refusal: refusalOf(error.problems) });
  }
}

/**
 * The parameters of a variant, checked and with every default.
 * @throws Refusal
 */
export function specOf({ data, overrides, name, profile, tolerance }: Omit<VariantTask, 'folder'>): Spec {
  const own = overrides.name;
  const merged = withOverrides(data, overrides);
  // A name that cannot be used stays, to be refused; any other makes way for the variant's own.
  if (own === undefined || (typeof own === 'string' && isName(own))) merged.name = name;
  const spec = resolveTried(withProfile(merged, profile));
  return tolerance === undefined ? spec : withTolerance(spec, tolerance);
}

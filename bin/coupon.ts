import { checkedGaps, readGaps, STATIONS, USUAL_GAPS } from '../lib/fit/coupon/readGaps.js';
import { advise } from '../lib/fit/trials/advise.js';
import { showConditions } from '../lib/fit/trials/conditions.js';
import { refuse } from '../lib/refusal.js';
import { isName, nameRule, nameWith, nearestName } from '../lib/spec/name.js';
import { clamp } from '../lib/spec/nearest.js';
import { fromTo, isWithin, MOST_GAP_PER_MODULE, type Range, ranges } from '../lib/spec/ranges.js';
import { readSpec } from '../lib/spec/readSpec.js';
import type { Spec } from '../lib/spec/types.js';
import { couponText } from '../lib/write/coupon/couponText.js';
import { makeCoupon } from '../lib/write/coupon/makeCoupon.js';
import { readFormats } from '../lib/write/formats.js';
import { readLogFile } from '../lib/write/trials/logFile.js';
import { paintFor } from './colours.js';
import { profileAt } from './dataFile.js';
import { complain, note, print, printMade, stopSignal, verdict } from './output.js';
import { pictureOf } from './picture.js';
import { number } from './planWishes.js';
import { readSpecFile } from './specFile.js';
import type { Arguments } from './usage.js';

/** Flags as they were typed. */
export interface CouponArguments extends Arguments {
  gaps?: string;
  log?: string;
  flow?: string;
  name?: string;
  out?: string;
  format?: string;
  profile?: string;
  force?: boolean;
  strict?: boolean;
  json?: boolean;
  picture?: boolean;
  'picture-size'?: string;
}

/**
 * Makes a coupon for the teeth of a file, or for usual ones.
 * @returns exit status as `make`
 * @throws Refusal for flags, file, log or teeth that are wrong
 */
export async function coupon(argv: CouponArguments): Promise<number> {
  const formats = readFormats(argv.format);
  if (argv.out === undefined) refuse('missing', 'out', undefined, 'is required: the folder for the files');
  const picture = pictureOf(argv);
  const flow = argv.flow === undefined ? undefined : flowOf(argv.flow);
  if (argv.name !== undefined && !isName(argv.name))
    refuse('bad-name', 'name', argv.name, `must be ${nameRule}`, [nearestName(argv.name, 'gap-coupon')]);
  const file = argv.FILE ?? argv._[1];
  const like = file === undefined ? usual(argv.profile) : readSpecFile(String(file), argv.profile);
  const gaps = gapsOf(argv, like);
  const name = argv.name ?? (file === undefined ? 'coupon' : nameWith(like.name, '-coupon'));
  note(`building and proving ${name} …`);
  const { files, sheet, blocking } = await makeCoupon(like, gaps, {
    name,
    folder: argv.out,
    formats,
    picture,
    flow,
    force: argv.force ?? false,
    strict: argv.strict ?? false,
    signal: stopSignal,
    say: complain,
  });
  if (argv.json) print(JSON.stringify({ files, sheet }));
  else printMade(couponText(sheet, paintFor(process.stdout)), files);
  return verdict(blocking, files.length > 0);
}

/** Teeth where no file says any: module 1.5, 30° herringbone, all else by default. */
function usual(profile?: string): Spec {
  const text = '{ kind: rack, module: 1.5, faceWidth: 20, pinion: { teeth: 12 } }';
  return readSpec(text, 'coupon', profile === undefined ? {} : profileAt(profile));
}

/** Flow of filament printers, mm³/s. Common practice: far beyond any at both ends. */
const FLOW: Range = [0.1, 100];

function flowOf(text: string): number {
  const flow = number('flow', text);
  if (!isWithin(flow, FLOW))
    refuse('out-of-range', 'flow', text, `must be ${fromTo(FLOW)} mm³/s`, [clamp(flow, ...FLOW)]);
  return flow;
}

/** How far from the likeliest gap stations are added where a log asks for fewer than a coupon has, mm. */
const BESIDE = [0, 0.05, -0.05, 0.1, -0.1];
/** Fewest stations of a coupon that a log asks for. */
const FROM_LOG = 3;
/** Least gap that is worth a station, mm. Common practice: all of these fuse. */
const LEAST = 0.05;

/** The gaps that are asked for, or those that the log's latest conditions make most telling. */
function gapsOf({ gaps, log }: CouponArguments, { module }: Spec): number[] {
  if (log === undefined) return readGaps(gaps ?? USUAL_GAPS);
  if (gaps !== undefined) refuse('excluded', 'gaps', gaps, 'is given by --log: leave one of them out');
  const trials = readLogFile(log);
  const [{ next, fit, conditions }] = advise(trials);
  const hundredths = (gap: number) => Math.round(gap * 100) / 100;
  // The log may be of larger teeth, which take larger gaps.
  const takes = (gap: number) => gap >= LEAST && gap <= Math.min(ranges.gap[1], MOST_GAP_PER_MODULE * module);
  const chosen = next.map(({ gap }) => hundredths(gap)).filter(takes);
  for (const gap of BESIDE.map((beside) => hundredths(fit.gap + beside)).filter(takes))
    if (chosen.length < FROM_LOG && !chosen.includes(gap)) chosen.push(gap);
  complain(`gaps most worth printing for ${showConditions(conditions)}: ${chosen.join(', ')} mm`);
  return checkedGaps([...new Set(chosen)].slice(0, STATIONS.most), log);
}

import type { Check } from '../../proof/check.js';
import type { CouponSheet } from '../../proof/coupon/couponSheet.js';
import { type CouponOptions, proveCoupon } from '../../proof/coupon/proveCoupon.js';
import type { Part } from '../../solid/mesh.js';
import type { CommonSpec } from '../../spec/types.js';
import { blockingChecks } from '../blocking.js';
import type { OutputFile } from '../files.js';
import { formats as allFormats } from '../formats.js';
import type { MakeOptions } from '../makeSet.js';
import { renderPicture } from '../picture.js';
import { stlChunks } from '../stl.js';
import { threemfChunks } from '../threemf.js';
import { couponDrawing } from './couponDrawing.js';
import { couponPage } from './couponPage.js';

/** What came of it, as `makeSet` says it. */
export interface MadeCoupon {
  files: string[];
  sheet: CouponSheet;
  blocking: Check[];
}

/** As for `makeSet`. */
export type MakeCouponOptions = CouponOptions &
  Pick<MakeOptions, 'folder' | 'formats' | 'picture' | 'strict' | 'signal' | 'say'>;

/** Pixels of the picture that stands for the file, either way. */
const THUMBNAIL = 256;

/**
 * Builds and proves a coupon and writes it: NAME.stl, NAME.3mf, NAME.svg, NAME.sheet.json, NAME.sheet.html and, where
 * asked for, NAME.png, all or none of them; nothing where a check stops the job, unless forced. Needs a file system.
 * @param like the file whose teeth, layer, printer and filament it shares
 * @param gaps ascending, whole hundredths (`readGaps`), mm
 * @throws Refusal where teeth cannot be made or the folder cannot be written
 * @example await makeCoupon(spec, [0.15, 0.2, 0.25, 0.3], { folder: 'out' })
 */
export async function makeCoupon(
  like: CommonSpec,
  gaps: readonly number[],
  options: MakeCouponOptions,
): Promise<MadeCoupon> {
  const { checkFolder } = await import('../files.js');
  const { writeSet } = await import('../writeSet.js');
  const { folder, force = false, strict = false, signal, say } = options;
  await checkFolder(folder);
  const { sheet, parts } = proveCoupon(like, gaps, options);
  const blocking = blockingChecks(sheet.checks, strict);
  if (blocking.length && !force) return { files: [], sheet, blocking };
  const written = await writeSet(folder, sheet, resultsOf(sheet, parts, options), {
    signal: signal?.(),
    say,
  });
  return { files: written.files, sheet: written.sheet, blocking };
}

function resultsOf(
  sheet: CouponSheet,
  parts: readonly Part[],
  { formats = allFormats, picture }: MakeCouponOptions,
): OutputFile[] {
  const { name } = sheet;
  const drawing = couponDrawing(sheet, parts);
  const file = (ending: string, chunks: () => Iterable<Uint8Array>) => ({
    name: `${name}.${ending}`,
    chunks,
  });
  const text = (ending: string, content: string) => file(ending, () => [new TextEncoder().encode(content)]);
  const bodies = {
    stl: file('stl', () => stlChunks(parts)),
    '3mf': file('3mf', () =>
      threemfChunks(parts, {
        title: name,
        thumbnail: renderPicture(parts, { width: THUMBNAIL, height: THUMBNAIL }),
      }),
    ),
  };
  return [
    ...formats.map((format) => bodies[format]),
    text('svg', drawing),
    text('sheet.html', couponPage(sheet, drawing)),
    ...(picture ? [file('png', () => [renderPicture(parts, picture)])] : []),
  ];
}

import { type Adjustment, sentences } from '../../fit/adjustment.js';
import { compensationOf, drawnGap } from '../../fit/compensation.js';
import { type CouponLayout, couponLayout, GAUGE } from '../../fit/coupon/layout.js';
import { shown } from '../../fit/coupon/readGaps.js';
import { type Station, type Stations, stationsLike } from '../../fit/coupon/stations.js';
import { drawnTrain } from '../../fit/train/drawnTrain.js';
import { trainNumbers } from '../../fit/train/trainNumbers.js';
import { sweepOf } from '../../solid/buildTrain.js';
import { buildCoupon, type CouponBodies } from '../../solid/coupon/buildCoupon.js';
import type { Part } from '../../solid/mesh.js';
import type { CommonSpec } from '../../spec/types.js';
import { version } from '../../version.js';
import { toothAdjustments } from '../adjustments.js';
import { type BodyFindings, measureBodies, toothedGear } from '../bodies.js';
import { cautions } from '../cautions.js';
import { type Check, mustFail } from '../check.js';
import { bed } from '../checks/bed.js';
import { helixAccuracy } from '../checks/helixAccuracy.js';
import { overhang } from '../checks/overhang.js';
import { selfIntersection } from '../checks/selfIntersection.js';
import { smallParts as smallPartsCheck } from '../checks/smallParts.js';
import { thinWalls } from '../checks/thinFeatures.js';
import { watertight } from '../checks/watertight.js';
import { planChecks, toothChecks } from '../checks.js';
import { gearRecords } from '../gearRecords.js';
import { leastDistance } from '../mesh/leastDistance.js';
import { type TriangleTree, triangleTree } from '../mesh/triangleTree.js';
import { partRecords } from '../partRecords.js';
import { wallsBelow } from '../printing/firstLayer.js';
import { rollTrain } from '../rolling/rollTrain.js';
import { type SmallPart, smallParts } from '../safety/smallParts.js';
import { stationGaps, stationsCaptured, stationsFirstLayer } from './couponChecks.js';
import type { CouponSheet, StationRecord } from './couponSheet.js';
import { frameDeviation } from './frameDeviation.js';
import { printTime, printTimeCheck } from './printTime.js';
import { stationPlay } from './stationPlay.js';
import { worstStation } from './worstStation.js';

/** What a coupon is made for. */
export interface CouponOptions {
  /** Base name of its files [the file's, with -coupon]. */
  name?: string;
  /** Flow that the print time is estimated with, mm³/s [line width × layer × 60 mm/s]. */
  flow?: number;
  /** Go on to the next stage even where a `must` fails [false]. */
  force?: boolean;
}

/** First layers farther apart than this beyond what they take are not looked at, mm. */
const FIRST_LAYER_REACH = 0.5;

/**
 * Builds a coupon and runs every check on it: small herringbone gears with the teeth of a file at stepped gaps, each on
 * a toothed wall of one frame, and a gauge for calipers. In the stages of `proveSet`.
 * @param like the file whose teeth, layer, printer and filament it shares
 * @param gaps ascending, whole hundredths (`readGaps`), mm
 * @throws Refusal where such teeth cannot be made
 */
export function proveCoupon(
  like: CommonSpec,
  gaps: readonly number[],
  { name = `${like.name}-coupon`, flow, force = false }: CouponOptions = {},
): { sheet: CouponSheet; parts: Part[] } {
  const made = stationsLike(like, gaps);
  const { stations } = made;
  const rolled = stations.map(({ drawn }) => rollTrain(drawn));
  const checks: Check[] = worstStation(
    stations.map(({ gap, spec, asked, drawn }, i) => {
      const numbers = trainNumbers(spec);
      const found = { spec, numbers, drawnNumbers: drawnTrain(numbers), asked, drawn, rolling: rolled[i] };
      return { gap, checks: [...planChecks(found), ...toothChecks({ ...found, adjustments: [] })] };
    }),
  );
  const records = stations.map(({ part, gap, spec }, i): StationRecord => {
    const rollingLeast = rolled[i][0].least;
    return {
      part,
      gap: { asked: gap, drawn: drawnGap(spec), rollingLeast, body: null },
      firstLayer: null,
      play: null,
    };
  });
  const sheet = sheetOf(name, made, records);
  if (!force && checks.some(mustFail)) return { sheet: { ...sheet, checks }, parts: [] };

  const layout = couponLayout(made);
  const built = buildCoupon(stations, layout);
  const { parts } = built;
  const bodies = measured(stations, layout, built);
  const measuredRecords = withMeasures(records, stations, built, bodies);
  const [{ spec }] = stations;
  const loose = [{ ...parts[1], name: 'pinion' }, parts[parts.length - 1]].map(({ name: part, mesh }) => ({
    name: part,
    mesh,
  }));
  const small = smallParts(loose);
  const time = printTime(parts, spec, flow);
  const { growth, firstLayerGrowth } = compensationOf(spec);
  const found = { spec, parts, bodies, smallParts: small, adjustments: stations.flatMap(adjustmentsOf) };
  const bodyChecks: Check[] = [
    stationGaps(stations, measuredRecords),
    watertight(found),
    selfIntersection(found),
    helixAccuracy(found),
    overhang(found),
    stationsFirstLayer(measuredRecords, growth + firstLayerGrowth),
    frameWalls(layout, spec),
    // What helps a set does not help a coupon.
    bed(found, () => '; fewer gaps would fit'),
    stationsCaptured(stations, measuredRecords, spec.limits.axialPlay),
    printTimeCheck(time, stations.length),
    smallPartsCheck(found),
  ];
  // One record an id: the frame's walls are looked at together with those of the pinions.
  const thin = [...checks, ...bodyChecks].filter(({ id }) => id === 'thin-features');
  const thinnest = thin.reduce((a, b) => ((b.value ?? 0) > (a.value ?? 0) ? b : a));
  const others = [...checks, ...bodyChecks].filter(({ id }) => id !== 'thin-features');
  return {
    sheet: {
      ...sheet,
      stations: measuredRecords,
      checks: [...others, thinnest],
      parts: partRecords(parts, bodies),
      printTime: time,
      cautions: cautionsOf(spec, small),
    },
    parts,
  };
}

function measured(
  stations: readonly Station[],
  layout: CouponLayout,
  { parts, slots }: CouponBodies,
): BodyFindings {
  const pinions = stations.map(({ part, drawn }, i) => {
    const [gear] = drawn.gears;
    const { profile, places } = gear;
    return toothedGear({
      first: part,
      profile,
      rotation: places[0].rotation,
      centre: layout.axes[i],
      sweep: sweepOf(drawn, gear),
      tolerance: drawn.spec.tolerance,
    });
  });
  const frame = {
    first: 'frame',
    deviation: (mesh: Part['mesh']) => frameDeviation(mesh, stations, layout, slots),
  };
  const pairs = stations.map(({ part }) => ({
    between: [part, 'frame'] as [string, string],
    as: 'mates' as const,
  }));
  const widest = drawnGap(stations[stations.length - 1].spec);
  return measureBodies(parts, [frame, ...pinions], pairs, widest);
}

/** What is measured on bodies: gaps as drawn, play as they come off the printer. */
function withMeasures(
  records: readonly StationRecord[],
  stations: readonly Station[],
  built: CouponBodies,
  bodies: BodyFindings,
): StationRecord[] {
  const [{ spec }] = stations;
  const { growth, firstLayerGrowth, scale } = compensationOf(spec);
  const taken = 2 * (growth + firstLayerGrowth);
  const asDrawn = growth === 0 && scale === 1;
  const printedStations = stations.map((station) => ({ ...station, drawn: station.asked }));
  const layout = couponLayout({ stations }, { growth: 0, scale: 1 });
  const trees = asDrawn ? bodies.trees : treesOf(buildCoupon(printedStations, layout).parts);
  const [frame, ...others] = built.parts;
  const first = firstLayerTree(frame.mesh, spec.printer.layer);
  const within = (Math.max(0, taken) + FIRST_LAYER_REACH) * scale;
  return records.map((record, i) => {
    const near = first && firstLayerDistance(first, others[i].mesh, spec.printer.layer, within);
    return {
      ...record,
      gap: { ...record.gap, body: bodies.gaps[i].distance },
      firstLayer: near === null ? null : near / scale - taken,
      play: stationPlay(stations[i], trees.get(record.part)!, trees.get('frame')!, layout.axes[i]),
    };
  });
}

function firstLayerTree(mesh: Part['mesh'], layer: number): TriangleTree | null {
  const walls = wallsBelow(mesh, layer);
  return walls.triangles.length ? triangleTree(walls) : null;
}

/** Least distance of a body within the first layer, null when it is more than `within`, mm. */
function firstLayerDistance(
  frame: TriangleTree,
  mesh: Part['mesh'],
  layer: number,
  within: number,
): number | null {
  const own = firstLayerTree(mesh, layer);
  return own && (leastDistance(own, frame, within)?.distance ?? null);
}

function treesOf(parts: readonly Part[]): BodyFindings['trees'] {
  return new Map(parts.map(({ name, mesh }) => [name, triangleTree(mesh)]));
}

function frameWalls({ walls, height }: CouponLayout, { limits }: CommonSpec): Check {
  return thinWalls(
    [
      { what: 'the wall between two slots', thickness: walls.side, mend: 'a wider printer.lineWidth' },
      { what: 'the wall behind the teeth', thickness: walls.backing, mend: 'a larger module' },
    ],
    height,
    limits.thinness,
  );
}

function cautionsOf({ filament }: CommonSpec, small?: SmallPart[]): string[] {
  return cautions({ smallParts: small }, { ...filament, name: filament.material });
}

function sheetOf(name: string, { stations, adjustments }: Stations, records: StationRecord[]): CouponSheet {
  const { name: _, kind: __, fit: ___, ...resolved } = stations[0].spec;
  const { gauge } = couponLayout({ stations });
  return {
    name,
    kind: 'coupon',
    resolved,
    stations: records,
    gears: stations.flatMap(({ part, asked }) => gearRecords(asked).map((record) => ({ ...record, part }))),
    checks: [],
    parts: [],
    printing: {
      ...compensationOf(stations[0].spec),
      sizes: [
        { part: 'length', feature: 'bar', drawn: gauge.length, expected: GAUGE.length },
        { part: 'width', feature: 'bar', drawn: gauge.width, expected: GAUGE.width },
        { part: 'gauge', feature: 'hole', drawn: gauge.hole, expected: GAUGE.hole },
      ],
    },
    printTime: null,
    cautions: cautionsOf(stations[0].spec),
    adjustments: [
      ...adjustments,
      ...stations.flatMap((station) =>
        sentences(adjustmentsOf(station)).map((text) => `at ${shown(station.gap)}: ${text}`),
      ),
    ],
    cogweave: version,
  };
}

function adjustmentsOf({ asked, drawn }: Station): Adjustment[] {
  return [...asked.adjustments, ...toothAdjustments(asked, drawn)];
}

import type { ChosenGuide } from '../engine/flow/choices.ts';
import { guideKindOf, guideName } from '../engine/kinds/guides.ts';
import {
  type FootWraps,
  type GuideFeet,
  type GuideToWrap,
  type ThreadColour,
  type WrapChoices,
  wrapDefaults,
} from '../engine/wraps/wrap-choices.ts';
import type { DocumentState } from './operation.ts';
import { type RowReader, readRows, readSingle } from './read-values.ts';

/** How this rod is wrapped. A width of one turn of 0 or infinity was typed so, and is the plan's to refuse. */
export function readWrapChoices(state: DocumentState): WrapChoices {
  const row = readSingle(state, 'wraps');
  const counted = row.number('turnsCounted');
  const [signatureFromM, signatureM] = [row.si('signatureFrom'), row.si('signatureLength')];
  return {
    laidWidthM: counted === undefined ? wrapDefaults.laidWidthM : row.orUsual('turnsOver') / counted,
    startBeforeFootM: row.orUsual('startBeforeFoot'),
    lockTurns: row.orUsual('lockTurns'),
    underwrap: row.flag('underwrap'),
    underwrapBeyondM: row.orUsual('underwrapBeyond'),
    trimTurns: row.orUsual('trimTurns'),
    ferruleWraps: row.text('ferruleWraps') !== 'no',
    ferruleDiameters: row.orUsual('ferruleDiameters'),
    ferruleEdgeM: row.orUsual('ferruleEdge'),
    checkWrapM: row.orUsual('checkWrap'),
    tipWrapM: row.orUsual('tipWrap'),
    signature:
      signatureFromM === undefined || signatureM === undefined
        ? undefined
        : { fromButtM: signatureFromM, lengthM: signatureM },
    footWraps: readFootWraps(state, row),
    tagPerWrapM: row.orUsual('tagPerWrap'),
    thread: readThread(row, 'thread', wrapDefaults.thread),
    trim: readThread(row, 'trim', wrapDefaults.trim),
    under: readThread(row, 'underwrap', readThread(row, 'thread', wrapDefaults.thread)),
    spoolM: row.orUsual('spoolLength'),
    reservePercent: row.orUsual('reservePercent'),
  };
}

function readFootWraps(state: DocumentState, row: RowReader): FootWraps {
  return {
    tipM: row.orUsual('wrapTip'),
    middleM: row.orUsual('wrapMiddle'),
    buttM: row.orUsual('wrapButt'),
    strippingM: row.orUsual('wrapStripping'),
    ownM: readRows(state, 'sections').map((section) => section.si('wrapLength')),
  };
}

function readThread(
  row: RowReader,
  part: 'thread' | 'trim' | 'underwrap',
  common: ThreadColour,
): ThreadColour {
  return {
    colour: colour(row.text(`${part}Colour`)) ?? common.colour,
    name: row.text(`${part}Name`) ?? common.name,
    lot: row.text(`${part}Lot`) ?? common.lot,
  };
}

/** The hook keeper where it stands; undefined until it is said how far ahead of the grip. */
export function readKeeper(
  state: DocumentState,
  rod: { lengthM: number; gripFrontFromButtM: number },
): GuideToWrap | undefined {
  const row = readSingle(state, 'handle');
  const aheadM = row.si('keeperAhead');
  if (aheadM === undefined) return undefined;
  return {
    name: 'keeper',
    stationM: rod.lengthM - rod.gripFrontFromButtM - aheadM,
    lengthM: row.orUsual('keeperLength'),
    feet: row.orUsual('keeperFeet') === 1 ? 1 : 2,
    stripping: false,
  };
}

/** The chosen guides that have a mark, with their feet. */
export function readGuidesToWrap(state: DocumentState, guides: readonly ChosenGuide[]): GuideToWrap[] {
  const feet = readGuideFeet(state, guides);
  return guides.flatMap(({ stationM }, index) =>
    stationM === undefined ? [] : [{ ...feet[index], stationM }],
  );
}

export function readGuideFeet(state: DocumentState, guides: readonly ChosenGuide[]): GuideFeet[] {
  const rows = new Map(readRows(state, 'guides').map((row) => [row.id, row]));
  return guides.map(({ id, kind, size, lengthM }) => {
    const row = id === undefined ? undefined : rows.get(id);
    const declared = guideKindOf(kind);
    return {
      id,
      name: guideName({ kind, size }),
      lengthM,
      feet: (row?.number('feet') ?? declared.feet(lengthM)) === 1 ? 1 : 2,
      oneFootM: row?.si('oneFoot'),
      wrapM: row?.si('wrapLength'),
      stripping: declared.single,
    };
  });
}

function colour(text: string | undefined): string | undefined {
  return text !== undefined && /^#[0-9a-f]{6}$/i.test(text) ? text : undefined;
}

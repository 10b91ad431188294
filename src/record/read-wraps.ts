import type { ChosenGuide } from '../engine/flow/choices.ts';
import {
  type GuideFeet,
  type GuideToWrap,
  type WrapChoices,
  wrapDefaults,
} from '../engine/wraps/wrap-choices.ts';
import type { DocumentState } from './operation.ts';
import { readRows, readSingle } from './read-values.ts';

/** How this rod is wrapped. A width of one turn of 0 or infinity was typed so, and is the plan's to refuse. */
export function readWrapChoices(state: DocumentState): WrapChoices {
  const row = readSingle(state, 'wraps');
  const counted = row.number('turnsCounted');
  const [signatureFromM, signatureM] = [row.si('signatureFrom'), row.si('signatureLength')];
  return {
    laidWidthM:
      counted === undefined ? wrapDefaults.laidWidthM : (row.si('turnsOver') ?? countedOverM) / counted,
    startBeforeFootM: row.si('startBeforeFoot') ?? wrapDefaults.startBeforeFootM,
    lockTurns: row.number('lockTurns') ?? wrapDefaults.lockTurns,
    underwrap: row.flag('underwrap'),
    underwrapBeyondM: row.si('underwrapBeyond') ?? wrapDefaults.underwrapBeyondM,
    trimTurns: row.number('trimTurns') ?? wrapDefaults.trimTurns,
    ferruleWraps: row.text('ferruleWraps') !== 'no',
    checkWrapM: row.si('checkWrap') ?? wrapDefaults.checkWrapM,
    tipWrapM: row.si('tipWrap') ?? wrapDefaults.tipWrapM,
    signature:
      signatureFromM === undefined || signatureM === undefined
        ? undefined
        : { fromButtM: signatureFromM, lengthM: signatureM },
    threadColour: colour(row.text('threadColour')) ?? wrapDefaults.threadColour,
    trimColour: colour(row.text('trimColour')) ?? wrapDefaults.trimColour,
    spoolM: row.si('spoolLength') ?? wrapDefaults.spoolM,
    reservePercent: row.number('reservePercent') ?? wrapDefaults.reservePercent,
  };
}

/** Turns without the width they were counted over: over an inch, as the trade says them. */
const countedOverM = 0.0254;

/** The chosen guides that have a mark, with their feet. */
export function readGuidesToWrap(state: DocumentState, guides: readonly ChosenGuide[]): GuideToWrap[] {
  const feet = readGuideFeet(state, guides);
  return guides.flatMap(({ stationM }, index) =>
    stationM === undefined ? [] : [{ ...feet[index], stationM }],
  );
}

/** A short ringed guide stands on one foot. */
export function readGuideFeet(state: DocumentState, guides: readonly ChosenGuide[]): GuideFeet[] {
  const rows = new Map(readRows(state, 'guides').map((row) => [row.id, row]));
  return guides.map(({ id, kind, size, lengthM }) => {
    const row = id === undefined ? undefined : rows.get(id);
    const single = kind === 'single-foot' || (kind === 'ringed' && lengthM < 0.018);
    return {
      id,
      name: `${kind} ${size}`.trim(),
      lengthM,
      feet: (row?.number('feet') ?? (single ? 1 : 2)) === 1 ? 1 : 2,
      oneFootM: row?.si('oneFoot'),
      wrapM: row?.si('wrapLength'),
      stripping: kind === 'stripping',
    };
  });
}

function colour(text: string | undefined): string | undefined {
  return text !== undefined && /^#[0-9a-f]{6}$/i.test(text) ? text : undefined;
}

/** The builder's guides, what he left open filled with what is typical of their size. */
import type { BenchFinding } from '../engine/bench/bench-finding.ts';
import { findingsOf } from '../engine/finding.ts';
import type { Assumption, ChosenGuide } from '../engine/flow/choices.ts';
import { guideKindIds } from '../engine/kinds/guide-kinds.ts';
import {
  type Guide,
  guideKindOf,
  guideNumbers,
  typicalByHeight,
  typicalGuide,
} from '../engine/kinds/guides.ts';
import type { SizeKinds } from '../engine/kinds/size-kinds.ts';
import { oneOf, type RowReader } from './read-values.ts';

export interface GuideReading {
  findings: BenchFinding[];
  assumed: Assumption[];
}

/** `common`: what a rod of this kind has there, for a place that says nothing. */
export function readGuide(row: RowReader | undefined, common: Guide, read: GuideReading): ChosenGuide {
  if (!row) return { ...common, insideM: guideNumbers(common.kind, common.size)?.insideM, pinned: false };
  const kind = oneOf(row.text('kind'), guideKindIds) ?? common.kind;
  const size = row.text('size') ?? (kind === common.kind ? common.size : '');
  const own = {
    ringHeightM: row.si('ringHeight') || undefined,
    lengthM: row.si('foot'),
    massKg: row.si('mass'),
  };
  const typical = typicalGuide(kind, size) ?? unknownSize({ ...common, kind, size }, own, row.id, read);
  return {
    id: row.id,
    kind,
    size,
    ringHeightM: own.ringHeightM ?? typical.ringHeightM,
    lengthM: own.lengthM ?? typical.lengthM,
    massKg: own.massKg ?? typical.massKg,
    insideM: row.si('opening') ?? guideNumbers(kind, size)?.insideM,
    stationM: row.si('station'),
    pinned: row.flag('pinned'),
    fromTopRad: row.si('around'),
    ringBesideM: row.si('ringBeside'),
  };
}

const found = findingsOf<SizeKinds>();

type OwnNumbers = { [key in 'ringHeightM' | 'lengthM' | 'massKg']: number | undefined };

/** Asks for the numbers of a size that its kind does not know; a tip-top's are those of the rod's kind. */
function unknownSize(common: Guide, own: OwnNumbers, id: string, read: GuideReading): Guide {
  const { kind, size } = common;
  if (kind === 'tip-top') return common;
  const { example } = guideKindOf(kind);
  const path = `guides/${id}/size`;
  if (own.ringHeightM === undefined) {
    const finding = found(path, 'kinds/size-unknown', { kind, size, example });
    read.findings.push({ ...finding, severity: 'stop' });
    return { ...(typicalGuide(kind, example) as Guide), size };
  }
  const like = typicalByHeight(kind, own.ringHeightM);
  if (own.lengthM === undefined || own.massKg === undefined) {
    const finding = found(path, 'kinds/size-by-height', { kind, size, like: like.size });
    read.findings.push({ ...finding, severity: 'doubt' });
  }
  return { ...like, size };
}

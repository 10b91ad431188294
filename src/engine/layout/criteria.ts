/**
 * What a layout is judged by, each criterion said once: its id and the name its quantity has in requests, answers and
 * limits, where it is read, the usual limit. How it is said: src/words/criteria.ts; where its limit is kept:
 * src/record/fields/limit-fields.ts; its formula: bend/reading.ts. Limits are calibrated to common practice, not
 * derived (docs/theory-layout.md).
 */
import type { RingReading, SpanReading } from '../bend/reading.ts';

interface Common {
  id: string;
  /** With its unit: the key of its value, limit and score. */
  quantity: string;
  /** `lengthM`: in front of the clamp. */
  usualLimit(lengthM: number): number;
  /** A limit beyond this makes no sense in arithmetic. */
  mostLimit: number;
  /** Power of the interval that it grows with. */
  growsAs: 1 | 2;
  /** Counted only with guides on top and the blank's diameters known; a fly rod's line never meets its blank. */
  onTop?: true;
}
/** Counted at every guide but the stripping guide (reel and hand set that one), and not at the tip-top. */
interface AtRing extends Common {
  at: 'ring';
  of(ring: RingReading): number;
}
/** Counted in every span between two rings, not the one to the reel. */
interface InSpan extends Common {
  at: 'span';
  of(span: SpanReading): number;
}
export type Criterion = AtRing | InSpan;

const declared = [
  {
    id: 'lineAngle',
    quantity: 'lineAngleRad',
    at: 'ring',
    of: ({ lineAngleRad }) => lineAngleRad,
    usualLimit: () => Math.PI / 12,
    mostLimit: 10,
    growsAs: 1,
  },
  {
    id: 'gap',
    quantity: 'gapM',
    at: 'span',
    of: ({ gapM }) => gapM,
    usualLimit: (lengthM) => lengthM / 250,
    mostLimit: 10,
    growsAs: 2,
  },
  {
    id: 'extraBend',
    quantity: 'extraBendPerM',
    at: 'span',
    of: ({ extraBendPerM }) => extraBendPerM,
    usualLimit: (lengthM) => 0.125 / lengthM,
    mostLimit: 1000,
    growsAs: 2,
  },
  {
    id: 'intoBlank',
    quantity: 'intoBlankM',
    at: 'span',
    of: ({ intoBlankM = 0 }) => intoBlankM,
    usualLimit: () => 0.001,
    mostLimit: 10,
    growsAs: 2,
    onTop: true,
  },
] as const satisfies readonly Criterion[];

type Declared = (typeof declared)[number];
export type Metric = Declared['id'];
type OnTop = Extract<Declared, { onTop: true }>['quantity'];
type Always = Exclude<Declared['quantity'], OnTop>;
/** What counts with guides on top only may be missing. */
export type ByQuantity<T> = Record<Always, T> & Partial<Record<OnTop, T>>;
/** One for each criterion that counts. */
export interface LayoutLimits extends ByQuantity<number> {
  /** Of the first guide from the reel, where that one's line angle counts too; left out: reel and hand set it. */
  firstLineAngleRad?: number;
}
export type DeclaredCriterion = Criterion & { id: Metric; quantity: Declared['quantity'] };

export const criteria: readonly DeclaredCriterion[] = declared;
export const metrics = declared.map(({ id }) => id);

export function criterionOf(metric: Metric): DeclaredCriterion {
  return criteria.find(({ id }) => id === metric) as DeclaredCriterion;
}

/** Those that a layout is judged by: each that has a limit. */
export function criteriaIn(limits: ByQuantity<unknown>): readonly DeclaredCriterion[] {
  return criteria.filter(({ quantity }) => limits[quantity] !== undefined);
}

export function byQuantity<T>(value: (criterion: DeclaredCriterion) => T, of = criteria): ByQuantity<T> {
  return Object.fromEntries(of.map((one) => [one.quantity, value(one)])) as unknown as ByQuantity<T>;
}

/** What counts on top only told apart: a request's shape lets it be left out. */
export function byEachQuantity<A, T>(
  always: (criterion: DeclaredCriterion) => A,
  onTop: (criterion: DeclaredCriterion) => T,
): Record<Always, A> & Record<OnTop, T> {
  const values = criteria.map((one) => [one.quantity, one.onTop ? onTop(one) : always(one)]);
  return Object.fromEntries(values) as Record<Always, A> & Record<OnTop, T>;
}

export function byMetric<T>(value: (criterion: DeclaredCriterion) => T): Record<Metric, T> {
  return Object.fromEntries(criteria.map((one) => [one.id, value(one)])) as Record<Metric, T>;
}

export interface Readings {
  rings: readonly RingReading[];
  spans: readonly SpanReading[];
}

/** Values that count, with the ring or span of the first of them. */
export function countedValues(
  criterion: Criterion,
  { rings, spans }: Readings,
): { first: number; values: number[] } {
  return criterion.at === 'ring'
    ? { first: 1, values: rings.slice(1, -1).map(criterion.of) }
    : { first: 0, values: spans.map(criterion.of) };
}

/** What is read at a guide: in its ring, or in the span before it; undefined in a ring that does not count. */
export function valueAtGuide(
  criterion: Criterion,
  { rings, spans }: Readings,
  guide: number,
  limits?: LayoutLimits,
): number | undefined {
  if (criterion.at === 'span') return criterion.of(spans[guide]);
  const counts = guide + 2 < rings.length || limits?.firstLineAngleRad !== undefined;
  return counts ? criterion.of(rings[guide + 1]) : undefined;
}

/** Of the line angle in a ring, `last` the first guide from the reel; undefined where it does not count. */
export function ringLimitRad(
  limits: Pick<LayoutLimits, 'lineAngleRad' | 'firstLineAngleRad'>,
  ring: number,
  last: number,
): number | undefined {
  if (ring === 0) return undefined;
  return ring === last ? limits.firstLineAngleRad : limits.lineAngleRad;
}

/** The limit of what is read there; the first guide from the reel may have one of its own. */
export function limitAtGuide(
  { at, quantity }: DeclaredCriterion,
  limits: LayoutLimits,
  guide: number,
  { rings }: Readings,
): number {
  const first = at === 'ring' && guide + 2 === rings.length;
  return (first ? limits.firstLineAngleRad : undefined) ?? limits[quantity] ?? Number.POSITIVE_INFINITY;
}

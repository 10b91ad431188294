import { useMemo } from 'react';
import { Link } from 'wouter';
import { freeRod } from '../../../engine/bench/free-rod.ts';
import { massForThirdKg } from '../../../engine/layout/tip-load.ts';
import { compareBlanks } from '../../../engine/series/compare-blanks.ts';
import { formatGrams, formatLength } from '../../../engine/units/format-quantity.ts';
import { thirdLoadInWords } from '../../../words/line-load.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { BenchProvider, type BenchReading, useBench } from '../../read/bench.tsx';
import { BuildContext, useBuild } from '../../read/build-context.ts';
import { useDocumentOf } from '../../read/document-of.ts';
import { useOpenStore } from '../../read/open-store.ts';
import { useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';
import type { DocumentStore } from '../../store/document-store.ts';

/** Beside the rod that this one repeats; nothing where it repeats none. */
export function AgainPart() {
  const { single } = useBuild();
  const from = textOf(single('about'), 'againFrom');
  return from === undefined ? null : <Beside id={from} />;
}

function Beside({ id }: { id: string }) {
  const now = useBench();
  const opening = useOpenStore(id);
  return (
    <Part title="The rod it repeats" anchor="again" aside="how this blank differs, and what moves">
      {opening.kind === 'open' && <Opened store={opening.store} now={now} />}
      {opening.kind === 'opening' && <p className="aside">Looking it up …</p>}
      {opening.kind === 'failed' && (
        <p className="attention">
          It cannot be opened: {opening.reason}. What was carried over stands all the same.
        </p>
      )}
    </Part>
  );
}

function Opened({ store, now }: { store: DocumentStore; now: BenchReading }) {
  const old = useDocumentOf(store);
  return (
    <BuildContext value={old}>
      <BenchProvider>
        <p>
          <Link href={`/builds/${old.id}/blank`}>{old.title}</Link>: its guides, handle, wraps, finish, limits
          and prices were carried over, its marks are the start of this layout. Lengths, diameters and every
          reading are this blank’s own and have to be taken again.
        </p>
        <Ratios now={now} />
        <Marks now={now} />
      </BenchProvider>
    </BuildContext>
  );
}

const shares = [0.05, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9];

function Ratios({ now }: { now: BenchReading }) {
  const before = useBench();
  const [a, b] = [before.stiffness.solved, now.stiffness.solved];
  const rows = useMemo(() => (a && b ? compareBlanks(a.stiffness, b.stiffness, shares) : undefined), [a, b]);
  const [thirdBefore, thirdNow] = [useThird(before), useThird(now)];
  if (!rows)
    return (
      <p className="quiet">
        {b
          ? 'The old rod has no readings to compare with.'
          : 'As soon as this blank is read, it stands beside the old one here.'}
      </p>
    );
  const sure = rows.some(({ low, high }) => low > 1 || high < 1);
  return (
    <>
      <p>
        {sure
          ? 'This blank differs from the old one by more than the readings leave open.'
          : 'At no single place do the readings tell this blank from the old one yet.'}
        {thirdBefore && thirdNow && (
          <>
            {' '}
            {thirdLoadInWords(formatGrams(thirdNow, 0), 'at the grip')}; on the old rod{' '}
            {formatGrams(thirdBefore, 0)}.
          </>
        )}
      </p>
      <Table
        label="Stiffness against the old blank"
        heads={['From the tip', 'Stiffness against the old one', '95 of 100 times between']}
        rows={rows.map(({ shareOfLength, ratio, low, high }) => [
          `${Math.round(shareOfLength * 100)} % of the length`,
          { of: percent(ratio), className: low > 1 || high < 1 ? undefined : 'quiet' },
          { of: `${percent(low)} and ${percent(high)}`, className: 'quiet' },
        ])}
      />
    </>
  );
}

/** Weight for a third of the free length, kg. */
function useThird({ stiffness: { solved }, blank, bench }: BenchReading): number | undefined {
  return useMemo(() => {
    if (!solved || !blank || !bench) return undefined;
    const freeM = blank.lengthM - bench.handle.gripFrontFromButtM;
    if (!(freeM > 0.3)) return undefined;
    const { stiffness, massPerLength } = freeRod(solved, freeM);
    return massForThirdKg({ lengthM: freeM, stiffness, massPerLength });
  }, [solved, blank, bench]);
}

function Marks({ now }: { now: BenchReading }) {
  const before = useBench();
  const { system } = useShop();
  const length = (lengthM: number) => formatLength(lengthM, { system, denominator: 16, decimals: 0 });
  const old = before.choices?.guides.map(({ stationM }) => stationM) ?? [];
  const mine = now.choices?.guides.map(({ stationM }) => stationM) ?? [];
  if (!old.some((mark) => mark !== undefined)) return null;
  const placed = mine.some((mark) => mark !== undefined);
  return (
    <>
      <Table
        label="Marks side by side"
        heads={['Guide', 'Old rod', 'This rod', 'Moves']}
        rows={Array.from({ length: Math.max(old.length, mine.length) }, (_, i) => {
          const [a, b] = [old[i], mine[i]];
          return [
            i + 1,
            a === undefined ? '–' : length(a),
            b === undefined ? '–' : length(b),
            a === undefined || b === undefined ? '–' : moved(b - a, length),
          ];
        })}
      />
      {!placed && (
        <p className="quiet">Place the guides for this blank under Layout, and what moves stands here.</p>
      )}
    </>
  );
}

function moved(byM: number, length: (lengthM: number) => string): string {
  if (Math.abs(byM) < 0.0005) return 'stays';
  return `${length(Math.abs(byM))} towards the ${byM < 0 ? 'tip' : 'butt'}`;
}

function percent(ratio: number): string {
  const value = 100 * (ratio - 1);
  return `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(0)} %`;
}

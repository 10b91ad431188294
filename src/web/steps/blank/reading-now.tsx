import { useMemo, useSyncExternalStore } from 'react';
import { type ShapePoint, shapeAt } from '../../../engine/flow/expected-reading.ts';
import { expectedInWords } from '../../../words/expected-drop.ts';
import { Figure } from '../../fields/figure.tsx';
import { narrowFigureBox, SetupFigure } from '../../parts/drawing/setup-figure.tsx';
import { useShop } from '../../read/shop.tsx';
import { quantityOf, siOf, textOf } from '../../read/values.ts';
import type { SetupRows, TestRows } from './reading-rows.ts';
import { flagsOf } from './reading-rows.ts';
import { useExpected } from './use-expected.ts';

const edgeNames = { upper: 'upper edge', axis: 'middle', lower: 'lower edge' };

/** The reading at hand, large: how the blank lies, from where to where, and what to expect. */
export function ReadingNow({ rows, at }: { rows: SetupRows; at: string | undefined }) {
  const { writer } = useShop();
  const isNarrow = useNarrow();
  const now = useMemo(() => readingAt(rows, at), [rows, at]);
  const hungKg = siOf(now?.test.test ?? rows.setup, 'hung') ?? 0;
  const shape = useExpected(rows.setup, hungKg);
  if (!shape || !now) return null;
  const flagM = now.flagM;
  const point = flagM === undefined ? shape.at(-1) : shapeAt(shape, flagM);
  const edge = (textOf(rows.setup, 'edge') ?? 'axis') as keyof typeof edgeNames;
  const upwards = flagM === undefined && edge === 'upper';
  const place = flagM === 0 ? 'the tip' : `the flag ${writer.length(flagM ?? 0)} from the tip`;
  const clampM = siOf(rows.setup, 'clampFromTip');
  const weight = hungKg > 0 ? (quantityOf(now.test.test.fields.hung)?.text ?? '') : '';
  return (
    <div className="reading-now">
      <SetupFigure
        box={isNarrow ? narrowFigureBox : undefined}
        shape={shape}
        flagsM={flagsOf(rows)}
        flagM={flagM}
        atClamp={flagM === undefined}
        clampPlace={clampM === undefined ? undefined : `${writer.length(clampM)} from the tip`}
        weight={weight}
        flagName={flagM === undefined ? '' : place}
        label={`The blank held in the clamp, ${weight === '' ? 'nothing hung' : `${weight} at its tip`}; ${flagM === undefined ? 'read at the clamp' : `read at ${place}`}, from the level line down`}
      />
      <div className="reading-question">
        <p className="reading-ask">
          <Figure text={question(now, place, edgeNames[edge], hungKg > 0 ? writer.mass(hungKg) : '')} />
        </p>
        {point && <Expected point={point} read={siOf(now.row, 'drop')} upwards={upwards} />}
      </div>
    </div>
  );
}

interface ExpectedProps {
  point: ShapePoint;
  /** As it is kept: downwards. */
  read: number | undefined;
  /** It is measured, and told, the other way. */
  upwards: boolean;
}

function Expected({ point, read, upwards }: ExpectedProps) {
  const { writer } = useShop();
  const told = (lengthM: number) => writer.length(upwards ? -lengthM : lengthM);
  const off = read === undefined ? undefined : read - point.readM;
  const far = off !== undefined && Math.abs(off) > Math.max(0.02, 0.15 * Math.abs(point.readM));
  return (
    <p className={far ? 'attention' : undefined}>
      {read !== undefined && (
        <>
          read <Figure text={told(read)} />,{' '}
        </>
      )}
      expected about{' '}
      <Figure text={expectedInWords(upwards ? -point.readM : point.readM, upwards ? 'up' : 'down', writer)} />
      {far && off !== undefined && (
        <>
          : <Figure text={writer.length(Math.abs(off))} /> {off > 0 ? 'more' : 'less'}. Look once more
        </>
      )}
    </p>
  );
}

interface ReadingAt {
  test: TestRows;
  row: TestRows['readings'][number];
  /** Undefined at the clamp, where nothing bends. */
  flagM: number | undefined;
}

/** The reading whose field has the focus; before that the first that is still open, or the last. */
function readingAt({ tests }: SetupRows, at: string | undefined): ReadingAt | undefined {
  const all = tests.flatMap((test) => test.readings.map((row) => ({ test, row })));
  const found =
    all.find(({ row }) => at?.startsWith(`readings/${row.id}/`)) ??
    all.find(({ row }) => siOf(row, 'drop') === undefined) ??
    all.at(-1);
  if (!found) return undefined;
  return {
    ...found,
    flagM: found.row.fields.atClamp === true ? undefined : (siOf(found.row, 'fromTip') ?? 0),
  };
}

function question({ flagM }: ReadingAt, place: string, edge: string, weight: string): string {
  const hang = weight === '' ? 'Nothing hung.' : `Hang ${weight} and wait until it is still.`;
  if (flagM === undefined) {
    const way = edge === edgeNames.upper ? 'up' : 'down';
    return `${hang} Right where the blank leaves the clamp: from the level line ${way} to the ${edge}.`;
  }
  return `${hang} At ${place}: from the level line down to the ${edge}, how far?`;
}

/** As wide as a telephone held upright, as the style sheets have it. */
const narrow = () => matchMedia('(max-width: 40rem)');

function useNarrow(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const query = narrow();
      query.addEventListener('change', changed);
      return () => query.removeEventListener('change', changed);
    },
    () => narrow().matches,
  );
}

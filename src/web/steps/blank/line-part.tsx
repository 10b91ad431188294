import { rodKindOf } from '../../../engine/kinds/rod-kinds.ts';
import { linesNear } from '../../../engine/line/line-beside-load.ts';
import { fixedDecimals } from '../../../engine/units/format-decimal.ts';
import { formatGrams } from '../../../engine/units/format-quantity.ts';
import { loadAmbiguityWords, thirdLoadInWords } from '../../../words/line-load.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBench } from '../../read/bench.tsx';
import type { PowerOnBench } from './use-power.ts';

/** A fly blank's tip load for a third of the length beside the line-mass standard; never which line to choose. */
export function LinePart({ power }: { power: PowerOnBench | undefined }) {
  const { choices } = useBench();
  if (!power || !choices || !rodKindOf(choices.rodKind).flyLine) return null;
  const { state, measured } = power;
  const load = state.answer?.thirdLoad;
  return (
    <Part title="Line beside the blank" anchor="line" aside="two weights side by side; not a choice of line">
      {!measured && <p className="quiet">Shown as soon as a weight is hung: a guess tells nothing here.</p>}
      {measured && !load && (
        <p className="quiet" role="status">
          {state.working ? 'Working out the tip load …' : `${thirdLoadInWords('no weight', 'at the grip')}.`}
        </p>
      )}
      {measured && load && (
        <>
          <p role="status" className={state.working ? 'stale' : undefined}>
            {thirdLoadInWords(formatGrams(load.kg, 0), 'at the grip')}
            {load.range &&
              `; ${formatGrams(load.range.low, 0)} to ${formatGrams(load.range.high, 0)} on 95 of 100 blanks that fit your readings`}
            . This is not a line weight. Choose the line by casting.
          </p>
          <LinesTable loadKg={load.kg} />
          <ul className="ambiguities quiet small">
            {loadAmbiguityWords.map((words) => (
              <li key={words}>{words}</li>
            ))}
            <li>
              Table: mass of the first 30 ft, from several reproductions of the standard that agree; its own
              sheet was not seen.
            </li>
          </ul>
        </>
      )}
    </Part>
  );
}

function LinesTable({ loadKg }: { loadKg: number }) {
  return (
    <Table
      label="Lines beside the tip load"
      spoken="Fly lines by number beside the tip load"
      heads={['line number', 'first 30 ft', 'in grams', 'tip load, times that']}
      rows={linesNear(loadKg).map(({ number, lowGrains, highGrains, targetGrains, targetKg, ratio }) => [
        number,
        `${targetGrains} grains (${lowGrains} to ${highGrains})`,
        formatGrams(targetKg, 1),
        fixedDecimals(ratio, 1),
      ])}
    />
  );
}

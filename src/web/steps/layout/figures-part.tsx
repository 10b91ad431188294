import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { LoadTestCaution } from '../../parts/cautions/load-test-caution.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import type { PlaceDoubt } from '../../read/use-mark-spread.ts';
import { GuideTable } from './guide-table.tsx';
import type { LiveSheet } from './live-sheet.ts';
import { LoadTable } from './load-table.tsx';
import { MarkCell } from './mark-cell.tsx';
import { PlaceDoubts } from './place-doubts.tsx';
import type { RulerModel } from './ruler-model.ts';
import type { SheetFrame } from './sheet-frame.ts';
import type { Marks } from './use-marks.ts';

interface FiguresPartProps {
  sheet: LiveSheet;
  model: SheetModel;
  ruler: RulerModel;
  writer: LadderWriter;
  marks: Marks;
  drawn: number;
  settled: SheetFrame;
  ferrulesBound: boolean;
  doubt: PlaceDoubt;
}

/** Both drawings in figures: every guide under the load drawn, every load at the tip; and what to mind. */
export function FiguresPart(props: FiguresPartProps) {
  const { sheet, model, ruler, writer, marks, drawn, settled, ferrulesBound, doubt } = props;
  const { guides } = model.choices;
  const loads = settled.ours?.reading.loads;
  return (
    <div className="layout-figures">
      {loads && loads.length === writer.loads.length && (
        <LoadTestCaution
          names={writer.loads}
          loads={loads}
          strain={model.strain}
          ferrulesBound={ferrulesBound}
        />
      )}
      <Part
        folded
        title="All figures"
        aside={`every guide at ${writer.loads[drawn] ?? 'no load'}, every load at the tip`}
        holds={['guides/']}
      >
        <GuideTable
          sheet={sheet}
          writer={writer}
          limits={model.limits}
          slack={ruler.slack}
          loadName={writer.loads[drawn] ?? 'no load'}
          pinned={model.field.pinned}
          mark={(guide) => <MarkCell guide={guide} row={guides[guide].id} onTakeUp={marks.takeUp} />}
        />
        <PlaceDoubts doubt={doubt} writer={writer} />
        {loads && loads.length === writer.loads.length && (
          <section className="loads-figures" aria-label="Loads">
            <LoadTable
              names={writer.loads}
              loads={loads}
              rest={settled.beside.rest?.reading.loads[0]}
              strain={model.strain}
              system={writer.units}
            />
          </section>
        )}
      </Part>
    </div>
  );
}

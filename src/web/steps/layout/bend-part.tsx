import { useMemo } from 'react';
import type { Wording } from '../../../words/bench.ts';
import { flagInWords } from '../../../words/wording.ts';
import { BentRod } from '../../parts/drawing/bent-rod.tsx';
import { LoadSwitch } from '../../parts/drawing/load-switch.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import { paintFigure } from './fraction-text.ts';
import type { LiveSheet } from './live-sheet.ts';
import { bendView, drawnRod, gridWords } from './sheet-drawings.ts';

export interface BendPartProps {
  sheet: LiveSheet;
  model: SheetModel;
  wording: Wording;
  drawn: number;
  onDraw(load: number): void;
}

/** The bent rod under the load picked, and how that load hangs. */
export function BendPart({ sheet, model, wording, drawn, onDraw }: BendPartProps) {
  const { system } = wording;
  const rod = useMemo(() => drawnRod(model, wording), [model, wording]);
  return (
    <section className="bend-part" aria-label="The bend">
      <div className="bend-head">
        <LoadSwitch label="Load drawn" names={wording.loads} drawn={drawn} onChange={onDraw} />
        <p className="aside bend-scale">to scale, {gridWords[system]}</p>
      </div>
      <BentRod
        moving={sheet}
        viewOf={(frame) => bendView(frame, rod)}
        label={`The rod bent under ${wording.loads[drawn] ?? 'no load'}, with the line through its guides; the other loads as ghosts`}
        lengthM={model.rod.lengthM}
        stepM={system === 'mm' ? 0.005 : 0.0254 / 4}
        describe={(flag) => flagInWords(flag, system)}
        write={paintFigure}
      />
      {model.choices.side === 'over' && (
        <p className="small quiet">
          Guides on top: drawn is the straight line from ring to ring. Where it would lie on the blank instead
          is said under <q>The line as it runs</q>.
        </p>
      )}
    </section>
  );
}

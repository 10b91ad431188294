import { useMemo } from 'react';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { BentRod } from '../../parts/drawing/bent-rod.tsx';
import { drawnRod, gridWords } from '../../parts/drawing/drawn-rod.ts';
import { LoadSwitch } from '../../parts/drawing/load-switch.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import type { LiveSheet } from './live-sheet.ts';
import { bendView } from './sheet-drawings.ts';

interface BendPartProps {
  sheet: LiveSheet;
  model: SheetModel;
  writer: LadderWriter;
  drawn: number;
  onDraw(load: number): void;
}

/** The bent rod under the load picked, and how that load hangs. */
export function BendPart({ sheet, model, writer, drawn, onDraw }: BendPartProps) {
  const rod = useMemo(() => drawnRod(model, writer), [model, writer]);
  return (
    <section className="bend-part" aria-label="The bend">
      <div className="bend-head">
        <LoadSwitch label="Load drawn" names={writer.loads} drawn={drawn} onChange={onDraw} />
        <p className="aside bend-scale">to scale, {gridWords[writer.units]}</p>
      </div>
      <BentRod
        moving={sheet}
        viewOf={(frame) => bendView(frame, rod)}
        label={`The rod bent under ${writer.loads[drawn] ?? 'no load'}, with the line through its guides; the other loads as ghosts`}
        lengthM={model.rod.lengthM}
        writer={writer}
      />
      {rod.reelSide === 'over' && (
        <p className="small quiet">The line is drawn thick where it lies on the blank.</p>
      )}
    </section>
  );
}

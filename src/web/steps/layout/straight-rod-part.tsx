import { useMemo, useState } from 'react';
import { capital } from '../../../words/capital.ts';
import { guideAngleInWords } from '../../../words/guide-reading.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { placeInFull, stopInWords } from '../../../words/places.ts';
import { dragTape } from '../../../words/tape.ts';
import { ringsAt } from '../../parts/drawing/attention.ts';
import { Part } from '../../parts/sheet/part.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import { HandBar } from './hand-bar.tsx';
import type { LiveSheet } from './live-sheet.ts';
import { ReadingTable } from './reading-tables.tsx';
import { Ruler } from './ruler.tsx';
import type { RulerModel } from './ruler-model.ts';
import { stripsModel } from './sheet-drawings.ts';
import type { SheetFrame } from './sheet-frame.ts';
import { Strips } from './strips.tsx';
import type { Marks } from './use-marks.ts';

interface StraightRodPartProps {
  sheet: LiveSheet;
  model: SheetModel;
  ruler: RulerModel;
  writer: LadderWriter;
  marks: Marks;
  settled: SheetFrame;
}

/** The straight rod with its guides to drag, and under it, on the same scale, every reading against its limit. */
export function StraightRodPart({ sheet, model, ruler, writer, marks, settled }: StraightRodPartProps) {
  const tape = useMemo(() => dragTape(writer.units), [writer.units]);
  const strips = useMemo(() => stripsModel(model, writer), [model, writer]);
  const [active, setActive] = useState<number>();
  const { guides } = model.choices;
  const { start } = settled.beside;
  return (
    <section className="ruler-part" aria-label="The straight rod">
      <HandBar
        sheet={sheet}
        tape={tape}
        tick={writer.length(tape.stepM)}
        active={active}
        pinned={active !== undefined && guides[active]?.pinned === true}
        describe={(frame) => handWords(frame, model, writer)}
        onStep={(guide, byM) => marks.step(guide, byM, tape)}
        onPin={marks.pin}
      />
      <Ruler
        sheet={sheet}
        model={ruler}
        tape={tape}
        attentionOf={guidesAtWorst}
        onMoved={marks.moved}
        onActive={setActive}
        onPin={(guide) => marks.pin(guide, !guides[guide].pinned)}
        stopWords={({ stop }) => (stop ? stopInWords(stop, writer, jointNames(model)) : '')}
      />
      <Part
        folded
        title="Every reading"
        aside="line angle, gap and extra bend along the rod, against their limits"
      >
        <Strips
          sheet={sheet}
          model={strips}
          label="Line angle, gap and extra bend along the rod against their limits; the tables below have every figure"
        />
        {settled.ours && (
          <ReadingTable layout={settled.ours} limits={model.limits} name="these marks" writer={writer} />
        )}
        {start && <ReadingTable layout={start} limits={model.limits} name="the start" writer={writer} />}
      </Part>
    </section>
  );
}

function guidesAtWorst({ ours }: SheetFrame): ReadonlySet<number> {
  return ours ? new Set([...ringsAt(ours.reading.worstAt)].map((ring) => ring - 1)) : noGuides;
}
const noGuides: ReadonlySet<number> = new Set();

function jointNames({ blank: { joints, sections } }: SheetModel): string[] {
  return joints.map(({ upper }) => `between ${sections[upper].name} and ${sections[upper + 1].name}`);
}

function handWords(frame: SheetFrame, model: SheetModel, writer: LadderWriter): string {
  if (frame.active === undefined || frame.active >= frame.fromTipM.length) {
    return 'Drag a guide along the rod. Or pick it and step it, by the buttons or the arrow keys.';
  }
  const place = capital(placeInFull(model.blank, frame.fromTipM, frame.active, writer));
  const angle = frame.ours && guideAngleInWords(frame.ours.reading, frame.active, model.limits, writer);
  return angle ? `${place}. ${angle}` : place;
}

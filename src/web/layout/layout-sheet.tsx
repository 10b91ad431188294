import { useMemo, useState } from 'react';
import { checkStations } from '../../engine/bench/check-stations.ts';
import { defaultLimits } from '../../engine/layout/layout-defaults.ts';
import { BentRod } from '../bend/bent-rod.tsx';
import { LoadSwitch } from '../bend/load-switch.tsx';
import { LoadTable } from '../bend/load-table.tsx';
import { LoadTestCaution } from '../bend/load-test-caution.tsx';
import { usePainted } from '../bend/use-painted.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { useShop } from '../read/shop.tsx';
import { ringsAt } from './attention.ts';
import { stopInWords } from './bench-words.ts';
import { paintFigure } from './fraction-text.ts';
import { placeGuide } from './guide-moves.ts';
import { GuideTable } from './guide-table.tsx';
import { GuidesPart } from './guides-part.tsx';
import { HandBar } from './hand-bar.tsx';
import { Headline } from './headline.tsx';
import { LimitsPart } from './limits-part.tsx';
import type { LiveSheet } from './live-sheet.ts';
import { LoadsPart } from './loads-part.tsx';
import { MarkCell } from './mark-cell.tsx';
import { PlaceButton } from './place-button.tsx';
import { ReadingTable } from './reading-tables.tsx';
import { Ruler } from './ruler.tsx';
import { bendView, drawnRod, gridWords, rulerModel, stripsModel } from './sheet-drawings.ts';
import type { SheetFrame } from './sheet-frame.ts';
import type { SheetModel } from './sheet-model.ts';
import { StartPart } from './start-part.tsx';
import { Strips } from './strips.tsx';
import { useSettledFrame } from './use-live-sheet.ts';
import { useMarks } from './use-marks.ts';
import { useSheetInput } from './use-sheet-input.ts';
import { dragTape, flagInWords, placeInFull, wordingOf } from './wording.ts';
import './layout.css';

/** The bend above, the straight rod below it, and everything that they are made from. */
export function LayoutSheet({
  sheet,
  model,
  ferrulesBound,
}: {
  sheet: LiveSheet;
  model: SheetModel;
  ferrulesBound: boolean;
}) {
  const { system } = useShop();
  const wording = useMemo(() => wordingOf(system, model.loads.kg), [system, model.loads.kg]);
  const tape = useMemo(() => dragTape(system), [system]);
  const [picked, setPicked] = useState<number>();
  const [active, setActive] = useState<number>();
  const drawn = useDrawnLoad(sheet, picked, model.loads.kg.length);
  const { best, slackZones, bestMarks } = useSheetInput(sheet, model, { drawn, system });
  const marks = useMarks(sheet, model, system);
  const settled = useSettledFrame(sheet);
  const rod = useMemo(() => drawnRod(model, wording), [model, wording]);
  const ruler = useMemo(() => rulerModel(model, slackZones, wording), [model, slackZones, wording]);
  const strips = useMemo(() => stripsModel(model, wording), [model, wording]);
  const loadName = wording.loads[drawn] ?? '';
  const joints = model.blank.joints.map(
    ({ upper }) => `between ${model.blank.sections[upper].name} and ${model.blank.sections[upper + 1].name}`,
  );
  const attention = (frame: SheetFrame) =>
    frame.ours ? new Set([...ringsAt(frame.ours.reading.worstAt)].map((ring) => ring - 1)) : noGuides;
  const placed =
    bestMarks !== undefined && model.marksAre === 'own' && sameMarks(bestMarks, model.field.fromTipM);
  const { guides } = model.choices;
  const oursRead = settled.ours?.reading.loads;
  return (
    <div className="layout-sheet">
      <Headline
        sheet={sheet}
        wording={wording}
        startName={startName(model)}
        startBroken={breaksRules(model)}
        intervals={model.choices.intervals}
        marksAre={model.marksAre}
        unreadable={model.unreadable}
      >
        <PlaceButton best={best} marks={bestMarks} placed={placed} onPlace={marks.place} />
      </Headline>
      <div className="layout-drawings">
        <section className="bend-part" aria-label="The bend">
          <div className="bend-head">
            <LoadSwitch names={wording.loads} drawn={drawn} onChange={setPicked} />
            <ChoiceField
              label="The weight hangs"
              path={['layout', '-', 'loadBy']}
              unset="line"
              options={[
                { value: 'line', name: 'on the line' },
                { value: 'tied', name: 'tied to the tip' },
              ]}
            />
            <p className="aside bend-scale">to scale, {gridWords[system]}</p>
          </div>
          <BentRod
            moving={sheet}
            viewOf={(frame) => bendView(frame, rod)}
            label={`The rod bent under ${loadName}, with the line through its guides; the other loads as ghosts`}
            lengthM={model.rod.lengthM}
            stepM={system === 'mm' ? 0.005 : 0.0254 / 4}
            describe={(flag) => flagInWords(flag, system)}
            write={paintFigure}
          />
        </section>
        <section className="ruler-part" aria-label="The straight rod">
          <HandBar
            sheet={sheet}
            tape={tape}
            tick={wording.length(tape.stepM)}
            active={active}
            pinned={active !== undefined && guides[active]?.pinned === true}
            describe={(frame) => handWords(frame, model, wording)}
            onStep={(guide, byM) => marks.step(guide, byM, tape)}
            onPin={marks.pin}
          />
          <Ruler
            sheet={sheet}
            model={ruler}
            tape={tape}
            attentionOf={attention}
            onMoved={marks.moved}
            onActive={setActive}
            onPin={(guide) => marks.pin(guide, !guides[guide].pinned)}
            stopWords={({ stop }) => (stop ? stopInWords(stop, wording, joints) : '')}
          />
          <Strips
            sheet={sheet}
            model={strips}
            label="Line angle, gap and extra bend along the rod against their limits; the tables below have every figure"
          />
          {settled.ours && <ReadingTable layout={settled.ours} name="these marks" wording={wording} />}
          {settled.beside.start && (
            <ReadingTable layout={settled.beside.start} name="the start" wording={wording} />
          )}
        </section>
      </div>
      <div className="layout-figures">
        {' '}
        <GuideTable
          sheet={sheet}
          wording={wording}
          limits={model.limits}
          slack={ruler.slack}
          loadName={loadName}
          pinned={model.field.pinned}
          mark={(guide) => <MarkCell guide={guide} row={guides[guide].id} onTakeUp={marks.takeUp} />}
        />
        {oursRead && (
          <section className="loads-figures" aria-label="Loads">
            <LoadTable
              names={wording.loads}
              loads={oursRead}
              rest={settled.beside.rest?.reading.loads[0]}
              strain={model.strain}
              system={system}
            />
            <LoadTestCaution
              names={wording.loads}
              loads={oursRead}
              strain={model.strain}
              ferrulesBound={ferrulesBound}
            />
          </section>
        )}
      </div>
      <div className="layout-parts screen-only">
        <StartPart
          choices={model.choices}
          blankLengthM={model.blank.lengthM}
          findings={startFindings(model)}
          onTake={canTakeStart(model) ? marks.useStart : undefined}
        />
        <LoadsPart loads={model.loads} />
        <LimitsPart usual={defaultLimits(model.rod.lengthM)} />
        <GuidesPart choices={model.choices} onTakeUp={marks.takeUp} />
      </div>
    </div>
  );
}

const noGuides: ReadonlySet<number> = new Set();

/** The load the builder picked; before that, the one at which the worst reading stands. */
function useDrawnLoad(sheet: LiveSheet, picked: number | undefined, count: number): number {
  const [worst, setWorst] = useState<number>();
  usePainted(sheet, ({ ours }) => {
    if (worst === undefined && ours && ours.reading.worstAt.load >= 0) setWorst(ours.reading.worstAt.load);
  });
  return Math.min(picked ?? worst ?? count - 1, count - 1);
}

function handWords(frame: SheetFrame, model: SheetModel, wording: Parameters<typeof placeInFull>[3]): string {
  if (frame.active === undefined || frame.active >= frame.fromTipM.length) {
    return 'Drag a guide along the rod, or step it with the arrow keys.';
  }
  const words = placeInFull(model.blank, frame.fromTipM, frame.active, wording);
  return `${words[0].toUpperCase()}${words.slice(1)}`;
}

function startName({ choices: { start } }: SheetModel): string {
  if (start.kind === 'rule') return 'arithmetic rule';
  return start.words === 'chart' ? 'chart' : 'own list';
}

/** Whether the start's own marks stand where no guide may. */
function breaksRules({ startFromTipM, field }: SheetModel): boolean {
  if (startFromTipM.length !== field.fromTipM.length) return false;
  const start = { ...field, fromTipM: startFromTipM, pinned: startFromTipM.map(() => false) };
  return startFromTipM.some((at, guide) => placeGuide(start, guide, at).stop !== undefined);
}

/** What is odd about a typed list: its order, a mark off the blank or on a ferrule, a likely slip. */
function startFindings({ blank, rod, keepOut, startFromTipM, choices }: SheetModel): string[] {
  if (choices.start.kind === 'rule') return [];
  const question = { blank, freeLengthM: rod.lengthM, zones: keepOut, fromTipM: startFromTipM };
  return checkStations({ ...question, path: 'layout/-/startText' }).map(({ message }) => message);
}

function canTakeStart({ startFromTipM, field, marksAre }: SheetModel): boolean {
  return (
    marksAre === 'own' &&
    startFromTipM.length === field.fromTipM.length &&
    !sameMarks(startFromTipM, field.fromTipM)
  );
}

/** To the tick of any tape. */
function sameMarks(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((at, i) => Math.abs(at - b[i]) < 8e-4);
}

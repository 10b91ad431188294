import { Button } from 'react-aria-components';
import type { ReelLineAnswer } from '../../../engine/flow/reel-line.ts';
import type { ReelLineQuestion } from '../../../engine/flow/reel-line-question.ts';
import { guideName } from '../../../engine/kinds/guides.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { fanInWords, meetingInWords } from '../../../words/reel-line.ts';
import { Field, FieldsRow } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { Fold } from '../../parts/sheet/fold.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import { FanLoads } from './fan-loads.tsx';
import { FirstRingTable } from './first-ring-table.tsx';
import { ReelLineDrawing } from './reel-line-drawing.tsx';
import { SteppedRings } from './stepped-rings.tsx';
import { type ReelLine, useReelLine } from './use-reel-line.ts';
import './reel-line.css';

export interface ReelLinePartProps {
  model: SheetModel;
  writer: LadderWriter;
}

/** The line from the reel to the first guide; not there for a fly rod. */
export function ReelLinePart({ model, writer }: ReelLinePartProps) {
  const line = useReelLine(model);
  const { choices } = model;
  if (!choices.line) return null;
  const { reel } = choices.line;
  return (
    <Part
      title="The line off the reel"
      aside="straight lines on the straight rod; your own cast decides"
      className="reel-line"
    >
      <Shown line={line} writer={writer} loadsBent={model.loads.kg.length > 0} />
      {reel.kind === 'fixed spool' ? (
        <>
          <FieldsRow
            of="line"
            names={reel.tiltIs === 'sighted' ? ['lipDiameter'] : ['lipDiameter', 'tilt']}
          />
          <Fold
            title="Two sightings along the spindle"
            aside="they give place and tilt of the spool"
            holds={['line/-/near', 'line/-/far']}
          >
            <FieldsRow of="line" names={['nearAt', 'nearHeight', 'farAt', 'farHeight']} />
          </Fold>
        </>
      ) : (
        <FieldsRow of="line" names={['windWidth']} />
      )}
      <Fold title="Limits of the line off the reel" holds={['line/-/limitFan', 'line/-/limitClear']}>
        <div className="fields-row">
          <Field path={['line', '-', 'limitFan']} />
          <Field path={['line', '-', 'limitClear']} />
        </div>
      </Fold>
    </Part>
  );
}

interface ShownProps {
  line: ReelLine;
  writer: LadderWriter;
  loadsBent: boolean;
}

function Shown({ line, writer, loadsBent }: ShownProps) {
  const { question, gap, answer, failure, working } = line;
  if (gap) {
    const what = gap === 'line/-/lipDiameter' ? 'across the spool’s lip' : 'how far the level-wind moves';
    return <p>Measure {what}. Then the fan of lines to the first guide is drawn here.</p>;
  }
  if (failure) return <p role="alert">This could not be worked out: {failure}.</p>;
  if (!question) {
    return <p className="quiet">Shown once the first guide stands in front of the reel.</p>;
  }
  if (!answer) return <p className="quiet">Working it out …</p>;
  return (
    <div className={working ? 'reel-line-shown quiet' : 'reel-line-shown'}>
      <Deed line={line} question={question} answer={answer} writer={writer} />
      <ReelLineDrawing question={question} answer={answer} writer={writer} onTake={line.takeFirst} />
      <FirstRingTable line={line} question={question} answer={answer} writer={writer} />
      {answer.steps.length > 0 && (
        <SteppedRings line={line} question={question} answer={answer} writer={writer} />
      )}
      {loadsBent && <FanLoads answer={answer} writer={writer} />}
    </div>
  );
}

interface DeedProps {
  line: ReelLine;
  question: ReelLineQuestion;
  answer: ReelLineAnswer;
  writer: LadderWriter;
}

function Deed({ line, question, answer, writer }: DeedProps) {
  const { deed, why } = fanInWords(question, answer, writer);
  const meeting = meetingInWords(question, answer, writer);
  const { better } = answer;
  return (
    <div role="status" className="reel-line-deed">
      <p className={answer.keeps ? 'reel-line-head' : 'reel-line-head attention'}>
        <Figure text={deed} />
      </p>
      <p>
        <Figure text={why} />
      </p>
      {meeting && (
        <p className="quiet">
          <Figure text={meeting} />
        </p>
      )}
      {better && (
        <Button
          className="button button-main screen-only"
          onPress={() => line.takeFirst(better.fromTipM, better.ring)}
        >
          {guideName(better.ring) === guideName(question.guides[question.guides.length - 1])
            ? 'Move it there'
            : 'Use that ring there'}
        </Button>
      )}
    </div>
  );
}

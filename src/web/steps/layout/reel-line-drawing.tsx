import type { PointerEvent } from 'react';
import { firstRingQuestion, guidePlace, ringsOffered } from '../../../engine/flow/first-guide.ts';
import type { ReelLineAnswer } from '../../../engine/flow/reel-line.ts';
import type { ReelLineQuestion, RingOnHand } from '../../../engine/flow/reel-line-question.ts';
import { ringUnderM } from '../../../engine/spool/first-ring.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { SvgFigure } from '../../fields/svg-figure.tsx';
import { useWidth } from '../../read/use-width.ts';
import { type FanFrame, fanFrame } from './fan-frame.ts';
import { FanLines, Ring } from './fan-lines.tsx';

export interface ReelLineDrawingProps {
  question: ReelLineQuestion;
  answer: ReelLineAnswer;
  writer: LadderWriter;
  onTake(fromTipM: number, ring: RingOnHand): void;
}

/** Side view from grip to the next guide, tip left: reel, fan, first ring, and the bars where each ring keeps the limits. */
export function ReelLineDrawing({ question, answer, writer, onTake }: ReelLineDrawingProps) {
  const { ref, widthPx } = useWidth();
  const frame = widthPx > 0 ? fanFrame(question, answer, Math.min(widthPx, 1180)) : undefined;
  const { first, keeps } = answer;
  const spoken = `Side view of the line from the reel to the first guide. It turns ${writer.angle(first.lineAngleRad.least)} to ${writer.angle(first.lineAngleRad.largest)} there and clears the ${first.over} by ${writer.fine(first.clearance.clearanceM)}.`;
  return (
    <figure ref={ref} className="drawing reel-line-drawing">
      {frame && (
        <svg width={frame.widthPx} height={frame.heightPx} role="img" aria-label={spoken}>
          <Region frame={frame} answer={answer} question={question} onTake={onTake} />
          <Handle frame={frame} question={question} />
          <FanLines frame={frame} question={question} />
          {question.guides.slice(-2).map((guide, i) => (
            <Ring
              key={guide.fromTipM}
              frame={frame}
              question={question}
              guide={guide}
              over={i === 1 && !keeps}
            />
          ))}
          <BarNames frame={frame} question={question} answer={answer} />
          <Labels frame={frame} question={question} answer={answer} writer={writer} />
        </svg>
      )}
      {frame && (
        <figcaption className="small quiet">
          Shaded: where a first guide may stand. Each bar is one ring size in mm; press a place on it to take
          it.
          {frame.taller > 1 && ' Heights are drawn double.'}
          {frame.abovePx !== undefined && ' Below: the level-wind and the first guide from above.'}
        </figcaption>
      )}
    </figure>
  );
}

interface RegionProps {
  frame: FanFrame;
  question: ReelLineQuestion;
  answer: ReelLineAnswer;
  onTake: ReelLineDrawingProps['onTake'];
}

/** Shaded: some height keeps the limits there. A bar: the ring that stands at that height. */
function Region({ frame, question, answer, onTake }: RegionProps) {
  const { x, y, freeM } = frame;
  const { region } = answer;
  const stepPx = Math.abs(x(frame.stepM) - x(0));
  const columns = region.heights.map(({ fromTipM, lowestM, highestM }) => {
    const [left, top, bottom] = [x(freeM - fromTipM) - stepPx / 2, y(lowestM), y(highestM)];
    return `M${left} ${top}h${stepPx}V${bottom}h${-stepPx}z`;
  });
  const press = (event: PointerEvent<SVGPathElement>, ring: RingOnHand) => {
    const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect();
    if (box) onTake(freeM - frame.alongAt(event.clientX - box.left), ring);
  };
  return (
    <g>
      <path d={columns.join('')} className="fan-region" />
      {barsOf({ frame, question, answer }).map(({ ring, fromTipM, toTipM, atY }) => {
        const line = `M${x(freeM - toTipM)} ${atY}H${x(freeM - fromTipM)}`;
        return (
          <g key={`${ring.kind}${ring.size}${fromTipM}`}>
            <path d={line} className="fan-bar" />
            <path d={line} className="fan-press" onPointerUp={(event) => press(event, ring)} />
          </g>
        );
      })}
    </g>
  );
}

type Bars = Omit<RegionProps, 'onTake'>;

/** A bar for every stretch on which a ring keeps the limits. */
function barsOf({ frame: { y, freeM }, question, answer: { region } }: Bars) {
  const asked = firstRingQuestion(question);
  return ringsOffered(question).flatMap((ring, i) =>
    (region.rings[i]?.stretches ?? []).map((stretch) => ({
      ...stretch,
      ring,
      atY: y(ringUnderM(asked, freeM - (stretch.fromTipM + stretch.toTipM) / 2, asked.rings[i])),
    })),
  );
}

/** Drawn last: read across the lines of the fan. */
function BarNames({ frame, question, answer }: Bars) {
  const bars = barsOf({ frame, question, answer });
  const names = apart(bars.map(({ fromTipM }) => frame.x(frame.freeM - fromTipM) + 4));
  return (
    <g>
      {bars.map(({ ring, fromTipM, atY }, i) => (
        <text key={`${ring.kind}${ring.size}${fromTipM}`} x={names[i]} y={atY - 4} className="fan-bar-name">
          {ring.size.replace(/ mm$/, '')}
        </text>
      ))}
    </g>
  );
}

/** Numbers that would stand in each other's place, one behind the other. */
function apart(wantedPx: readonly number[]): number[] {
  const placed: number[] = [];
  for (const wanted of wantedPx) {
    let at = wanted;
    while (placed.some((other) => Math.abs(other - at) < nameWidthPx)) at += 4;
    placed.push(at);
  }
  return placed;
}
const nameWidthPx = 22;

function Handle({ frame, question }: { frame: FanFrame; question: ReelLineQuestion }) {
  const { x, y } = frame;
  const inView = question.surface.findIndex(({ fromTipM }) => frame.freeM - fromTipM < frame.farM);
  // one row beyond the sheet's edge: between two measured places the blank goes on
  const rows = question.surface.slice(Math.max(0, inView - 1));
  const front = rows.slice(0, -1);
  const edge = (sign: 1 | -1) =>
    front.map(({ fromTipM, radiusM }) => `${x(frame.freeM - fromTipM)} ${y(sign * radiusM)}`);
  const grip = rows[rows.length - 1].radiusM;
  const behindPx = x(frame.nearM);
  return (
    <g>
      <path d={`M${edge(1).join('L')}L${edge(-1).reverse().join('L')}z`} className="fan-blank" />
      <path d={`M0 ${y(0)}H${behindPx}`} className="fan-axis" />
      <rect
        x={x(0)}
        y={Math.min(y(grip), y(-grip))}
        width={behindPx - x(0)}
        height={Math.abs(y(grip) - y(-grip))}
        rx={4}
        className="fan-grip"
      />
    </g>
  );
}

interface LabelsProps {
  frame: FanFrame;
  question: ReelLineQuestion;
  answer: ReelLineAnswer;
  writer: LadderWriter;
}

/** The turn beside its limit at the ring, how far the ring is from the reel, and what the reel is. */
function Labels({ frame, question, answer, writer }: LabelsProps) {
  const { x, y, freeM, down } = frame;
  const { source, guides, limits } = question;
  const ring = guides[guides.length - 1];
  const ringX = x(freeM - ring.fromTipM);
  const reelX = x(source.alongM);
  const { largest } = answer.first.lineAngleRad;
  const dimY = down > 0 ? 16 : frame.sidePx - 8;
  const far = writer.tick(freeM - source.alongM - ring.fromTipM);
  const { underM } = guidePlace(question, ring);
  const lowest = y(underM + (ring.insideM ?? 0) / 2);
  const over = largest > limits.lineAngleRad;
  return (
    <g>
      <g className="dimension">
        <path d={`M${ringX} ${dimY + 6}H${reelX}`} />
        <path d={`M${ringX} ${dimY + 6}l7 -2.4v4.8zM${reelX} ${dimY + 6}l-7 -2.4v4.8z`} className="arrow" />
        <SvgFigure text={far} x={(ringX + reelX) / 2} y={dimY + 1} textAnchor="middle" />
      </g>
      <text
        x={ringX}
        y={lowest + (down > 0 ? 34 : -22)}
        textAnchor="middle"
        className={over ? 'over' : undefined}
      >
        {`${writer.angle(largest)} of ${writer.angle(limits.lineAngleRad)}`}
      </text>
      <text x={4} y={y(0) + (down > 0 ? -16 : 28)} className="quiet">
        tip
      </text>
    </g>
  );
}

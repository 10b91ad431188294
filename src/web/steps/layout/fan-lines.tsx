import { guidePlace } from '../../../engine/flow/first-guide.ts';
import type { GuideOnLine, ReelLineQuestion } from '../../../engine/flow/reel-line-question.ts';
import { type NextPlace, onLip } from '../../../engine/spool/fan.ts';
import type { FanFrame } from './fan-frame.ts';

export interface FanLinesProps {
  frame: FanFrame;
  question: ReelLineQuestion;
}

/** Lines from round the lip to the first ring and on to the next; the spool itself, and its spindle's line. */
export function FanLines({ frame, question }: FanLinesProps) {
  const { x, y } = frame;
  const { source, guides } = question;
  const [next, ring] = guides.slice(-2).map((guide) => guidePlace(question, guide));
  const at = ({ alongM, underM }: { alongM: number; underM: number }) => `${x(alongM)} ${y(underM)}`;
  if (!('lipDiameterM' in source)) {
    return (
      <g>
        <circle cx={x(source.alongM)} cy={y(source.offsetM * 0.75)} r={14} className="fan-reel" />
        <path
          d={`M${at({ alongM: source.alongM, underM: source.offsetM })}L${at(ring)}L${at(next)}`}
          className="fan-edges"
        />
        <FromAbove frame={frame} question={question} widthM={source.widthM} />
      </g>
    );
  }
  const round = Array.from({ length: 9 }, (_, i) => onLip(source, (Math.PI * i) / 8));
  const [low, high] = [round[0], round[8]];
  const back = (place: { alongM: number; underM: number }, byM: number) => ({
    alongM: place.alongM - byM * Math.cos(source.tiltRad),
    underM: place.underM + byM * Math.sin(source.tiltRad),
  });
  const deepM = source.lipDiameterM * 0.7;
  const spindleM = Math.min(
    frame.farM - source.alongM,
    source.offsetM / Math.max(1e-6, Math.tan(source.tiltRad)),
  );
  const middle = { alongM: source.alongM, underM: source.offsetM };
  return (
    <g>
      <path
        d={round
          .slice(1, -1)
          .map((place) => `M${at(place)}L${at(ring)}`)
          .join('')}
        className="fan-lines"
      />
      <path d={`M${at(low)}L${at(ring)}M${at(high)}L${at(ring)}L${at(next)}`} className="fan-edges" />
      {spindleM > 0 && <path d={`M${at(middle)}L${at(back(middle, -spindleM))}`} className="fan-axis" />}
      <path
        d={`M${at(low)}L${at(back(low, deepM))}M${at(high)}L${at(back(high, deepM))}M${at(back(low, deepM))}L${at(back(high, deepM))}`}
        className="fan-reel"
      />
      <path
        d={`M${at(back(middle, deepM))}L${x(source.alongM - 2.2 * deepM)} ${y(0)}`}
        className="fan-reel"
      />
      <path d={`M${at(low)}L${at(high)}`} className="fan-lip" />
    </g>
  );
}

/** The level-wind's width, and the line from both of its ends through the first guide. */
function FromAbove({ frame, question, widthM }: FanLinesProps & { widthM: number }) {
  const { x, abovePx: middlePx } = frame;
  if (middlePx === undefined) return null;
  const [next, ring] = question.guides.slice(-2).map((guide) => guidePlace(question, guide));
  const half = frame.acrossPx(widthM) / 2;
  const reelPx = x(question.source.alongM);
  const at = ({ alongM, asideM = 0 }: NextPlace) => `${x(alongM)} ${middlePx + frame.acrossPx(asideM)}`;
  return (
    <g>
      <path d={`M0 ${middlePx}H${reelPx}`} className="fan-axis" />
      <path
        d={`M${reelPx} ${middlePx - half}L${at(ring)}L${at(next)}M${reelPx} ${middlePx + half}L${at(ring)}`}
        className="fan-edges"
      />
      <path d={`M${reelPx} ${middlePx - half}v${2 * half}`} className="fan-lip" />
      <circle cx={x(ring.alongM)} cy={middlePx + frame.acrossPx(ring.asideM)} r={4} className="fan-ring" />
    </g>
  );
}

export interface RingProps extends FanLinesProps {
  guide: GuideOnLine;
  over: boolean;
}

/** A ring seen nearly from the side, on its foot. */
export function Ring({ frame, question, guide, over }: RingProps) {
  const { x, y } = frame;
  const { alongM, underM } = guidePlace(question, guide);
  const radiusM = (guide.insideM ?? 0.006) / 2;
  const [left, top] = [x(alongM), y(0)];
  return (
    <g>
      <path
        d={`M${left - 8} ${top}L${left} ${y(underM - radiusM)}L${left + 8} ${top}`}
        className="fan-reel"
      />
      <ellipse
        cx={left}
        cy={y(underM)}
        rx={3.5}
        ry={Math.max(3, Math.abs(y(radiusM) - y(0)))}
        className={over ? 'fan-ring over' : 'fan-ring'}
      />
    </g>
  );
}

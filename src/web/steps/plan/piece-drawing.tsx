import { scaleLinear } from 'd3-scale';
import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import { type DiameterRow, diameterAt } from '../../../engine/bench/diameter-profile.ts';
import type { BenchPiece } from '../../../words/bench-piece.ts';
import { useBench } from '../../read/bench.tsx';
import { useWidth } from '../../read/use-width.ts';

const box = { side: 12, axis: 48, height: 116 };

/** The piece of work on its section or its grip: where it is, from which end it is measured. */
export function PieceDrawing({ piece, figure }: { piece: BenchPiece; figure: string }) {
  const { blank, profile } = useBench();
  const { ref, widthPx } = useWidth();
  if (!blank) return null;
  return (
    <figure ref={ref} className="drawing bench-drawing">
      {widthPx > 0 && (
        <svg
          width="100%"
          viewBox={`0 0 ${widthPx} ${box.height}`}
          role="img"
          aria-label={spoken(piece, blank, figure)}
        >
          <Piece piece={piece} blank={blank} profile={profile} widthPx={widthPx} />
        </svg>
      )}
    </figure>
  );
}

interface PieceProps {
  piece: BenchPiece;
  blank: AssembledBlank;
  profile: readonly DiameterRow[];
  widthPx: number;
}

function Piece({ piece, blank, profile, widthPx }: PieceProps) {
  const across: [number, number] = [box.side, widthPx - box.side];
  if (piece.kind === 'bore') return <Bore piece={piece} across={across} />;
  if (piece.kind === 'arbor') return <ArborOnButt piece={piece} across={across} />;
  return <PlaceOnSection piece={piece} blank={blank} profile={profile} across={across} />;
}

type Of<Kind extends BenchPiece['kind']> = {
  piece: Extract<BenchPiece, { kind: Kind }>;
  /** Left and right edge, in px. */
  across: [number, number];
};

/** Tip end left, as on every other sheet; the place strong, measured from the tip end. */
function PlaceOnSection({ piece, blank, profile, across }: Of<'place'> & Omit<PieceProps, 'widthPx'>) {
  const { lengthM, ends } = blank.sections[piece.section];
  const x = scaleLinear([0, lengthM], across);
  const widestM = diameterAt(profile, ends.toTipM) ?? 0.01;
  const half = (fromOwnTipM: number) =>
    Math.max(1.5, (10 * (diameterAt(profile, ends.fromTipM + fromOwnTipM) ?? widestM)) / widestM);
  const [a, b] = [x(piece.fromOwnTipM), x(piece.toOwnTipM)];
  const reach = Math.max(14, half(piece.toOwnTipM) + 8);
  return (
    <>
      <path
        d={`M${across[0]} ${box.axis - half(0)}L${across[1]} ${box.axis - half(lengthM)}V${box.axis + half(lengthM)}L${across[0]} ${box.axis + half(0)}Z`}
        className="section-bar"
      />
      <rect
        x={a - 1.5}
        y={box.axis - reach}
        width={Math.max(3, b - a)}
        height={2 * reach}
        className="piece-now"
      />
      <Ends across={across} words={['tip end', 'butt end']} />
      <Measured from={across[0]} to={a} y={box.axis + 30} />
    </>
  );
}

/** The grip lies with its butt face right; the reamer comes from there. */
function Bore({ piece: { depthM, deepestM }, across }: Of<'bore'>) {
  const x = scaleLinear([0, 1.15 * deepestM], [across[1] - 8, across[0]]);
  const depth = x(Math.max(0.05 * deepestM, depthM));
  return (
    <>
      <rect
        x={across[0]}
        y={box.axis - 22}
        width={across[1] - across[0] - 8}
        height={44}
        rx={10}
        className="piece-grip"
      />
      <rect x={depth} y={box.axis - 8} width={across[1] - 8 - depth} height={16} className="piece-now" />
      <Ends across={across} words={['', 'butt face']} />
      <Measured from={depth} to={across[1] - 8} y={box.axis + 40} />
    </>
  );
}

function ArborOnButt({ piece: { fromM, toM, reachM }, across }: Of<'arbor'>) {
  const x = scaleLinear([0, 1.3 * reachM], [across[1], across[0]]);
  return (
    <>
      <path
        d={`M${across[0]} ${box.axis - 6}L${across[1]} ${box.axis - 8}V${box.axis + 8}L${across[0]} ${box.axis + 6}Z`}
        className="section-bar"
      />
      <rect x={x(toM)} y={box.axis - 15} width={x(fromM) - x(toM)} height={30} className="piece-now" />
      <Ends across={across} words={['', 'butt end']} />
      <Measured from={x(fromM)} to={across[1]} y={box.axis + 30} />
    </>
  );
}

function Ends({
  across: [left, right],
  words: [atLeft, atRight],
}: {
  across: [number, number];
  words: [string, string];
}) {
  return (
    <>
      <text x={left} y={14} className="piece-word">
        {atLeft}
      </text>
      <text x={right} y={14} textAnchor="end" className="piece-word">
        {atRight}
      </text>
    </>
  );
}

/** A dimension without its figure, which stands large above the drawing. */
function Measured({ from, to, y }: { from: number; to: number; y: number }) {
  if (to - from < 16) return null;
  return (
    <g className="dimension dimension-strong">
      <path d={`M${from} ${box.axis}V${y + 4}M${to} ${box.axis}V${y + 4}`} className="extension" />
      <path d={`M${from} ${y}H${to}`} />
      <path d={`M${from} ${y}l9 -3v6zM${to} ${y}l-9 -3v6z`} className="arrow" />
    </g>
  );
}

function spoken(piece: BenchPiece, blank: AssembledBlank, figure: string): string {
  if (piece.kind === 'bore') return `The grip, reamed from its butt face: ${figure}`;
  if (piece.kind === 'arbor') return `The butt of the blank with the arbor from ${figure}`;
  return `${blank.sections[piece.section].name}, tip end left, with the place at ${figure}`;
}

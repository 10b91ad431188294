export type DrawnReel = 'fly' | 'fixed spool' | 'multiplier';

export interface ReelPlace {
  /** Where the line leaves it. */
  x: number;
  y: number;
  axis: number;
  /** 1 where the reel hangs under the blank. */
  down: 1 | -1;
  pxPerM: number;
}

const flyRadiusM = 0.042;
const drumRadiusM = 0.022;
const usualLipM = 0.045;

/** From the axis to the reel's far side. */
export function reelRoomM(reel: DrawnReel, offsetM: number, lipDiameterM = usualLipM): number {
  if (reel === 'fixed spool') return offsetM + lipDiameterM * 0.75;
  return offsetM + (reel === 'fly' ? flyRadiusM : drumRadiusM) * 1.3;
}

export interface HandleReelProps {
  reel: DrawnReel;
  at: ReelPlace;
  lipDiameterM?: number;
}

/** A reel of its kind, drawn at a common size where it was not measured; the line leaves it at its place. */
export function HandleReel({ reel, at, lipDiameterM = usualLipM }: HandleReelProps) {
  const { x, y, axis, down, pxPerM } = at;
  if (reel === 'fixed spool') return <FixedSpool at={at} lipDiameterM={lipDiameterM} />;
  const radius = Math.max(8, (reel === 'fly' ? flyRadiusM : drumRadiusM) * pxPerM);
  return (
    <>
      <path d={`M16 ${axis + down * 9}L${x} ${y}`} className="handle-line" />
      <circle cx={x} cy={y + down * radius * 0.3} r={radius} className="handle-reel" />
    </>
  );
}

/** Lip, spool and body along the blank, on a stem from the seat. */
function FixedSpool({ at, lipDiameterM }: { at: ReelPlace; lipDiameterM: number }) {
  const { x, y, axis, pxPerM } = at;
  const half = (lipDiameterM / 2) * pxPerM;
  const deep = 0.8 * half;
  return (
    <>
      <path d={`M16 ${axis + 9}L${x} ${y - half}M16 ${axis + 9}L${x} ${y + half}`} className="handle-line" />
      <path
        d={`M${x} ${y - half}V${y + half}M${x} ${y - deep}h${half * 1.1}M${x} ${y + deep}h${half * 1.1}M${x + half * 1.1} ${y - half}V${y + half}`}
        className="handle-reel"
      />
      <path
        d={`M${x + half * 1.1} ${y - half * 0.8}h${half * 0.9}q${half * 0.8} ${half * 0.8} 0 ${half * 1.6}h${-half * 0.9}zM${x + half * 1.5} ${y - half * 0.8}L${x + half * 1.1} ${axis}`}
        className="handle-reel"
      />
    </>
  );
}

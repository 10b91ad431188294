import type { ScanRead } from './scan-messages.ts';

/** The scan with every guide that was found ringed and numbered. */
export function ScanPicture({ address, read }: { address: string; read: ScanRead }) {
  const { widthPx, heightPx, dpi, scanned } = read;
  const perM = dpi / 0.0254;
  const wordPx = 0.004 * perM;
  return (
    <figure className="scan-picture">
      <img src={address} alt="" />
      <svg
        viewBox={`0 0 ${widthPx} ${heightPx}`}
        role="img"
        aria-label={`${scanned.guides.length} guides found; the table says how straight each is.`}
      >
        {scanned.guides.map(({ centrePx: [x, y], lengthM }, index) => {
          const radius = (lengthM / 2) * perM * 1.08;
          return (
            <g key={`${x} ${y}`}>
              <circle cx={x} cy={y} r={radius} className="scan-ring-back" strokeWidth={wordPx / 4} />
              <circle cx={x} cy={y} r={radius} className="scan-ring" strokeWidth={wordPx / 9} />
              <text x={x} y={y - radius - wordPx / 3} fontSize={wordPx} className="scan-number">
                {index + 1}
              </text>
            </g>
          );
        })}
      </svg>
    </figure>
  );
}

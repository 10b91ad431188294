import { demoBend } from './demo-bend.ts';

const { ringXmm, ringYmm, startDegrees, ourDegrees, limitDegrees, loadGrams } = demoBend;
/** Drawing units: 4 mm each. */
const scale = 0.25;
const hangMm = 150;

/** The guide that turns the line most, of ours and of the start's. */
export const worstGuide = {
  ours: ourDegrees.indexOf(Math.max(...ourDegrees)),
  start: startDegrees.indexOf(Math.max(...startDegrees)),
};

/** The demo bent, its line through the guides, and below it the line angle at every guide beside the limit. */
export function DemoFigure() {
  return (
    <figure className="drawing demo-figure">
      <svg viewBox="-505 -165 590 480" role="img" aria-label={label}>
        <BentDemo />
        <AngleStrip />
      </svg>
      <details className="figures-twin">
        <summary>The drawing in figures</summary>
        <table className="figures-table">
          <caption className="visually-hidden">Line angle at every guide under {loadGrams} g</caption>
          <thead>
            <tr>
              <th scope="col">guide</th>
              <th scope="col">start</th>
              <th scope="col">placed</th>
            </tr>
          </thead>
          <tbody>
            {ourDegrees.map((ours, guide) => (
              <tr key={guide}>
                <th scope="row">{guide + 1}</th>
                <td className={startDegrees[guide] > limitDegrees ? 'attention' : undefined}>
                  {startDegrees[guide].toFixed(1)}°
                </td>
                <td>{ours.toFixed(1)}°</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}

const label = `The demo blank bent under ${loadGrams} g with the line through ${ringXmm.length - 1} guides, and the line angle at each: placed for the blank at most ${ourDegrees[worstGuide.ours].toFixed(1)}°, as the start has them up to ${startDegrees[worstGuide.start].toFixed(1)}°, limit ${limitDegrees}°`;

function BentDemo() {
  const [tipX, tipY] = [ringXmm[0], ringYmm[0]];
  return (
    <>
      <g transform={`scale(${scale})`} className="demo-bent">
        <path className="demo-grip" d={demoBend.grip} />
        <path className="demo-line" d={`M${tipX} ${tipY + hangMm}V${tipY}`} />
        <path className="demo-line" d={demoBend.line} />
        <path className="demo-rod" d={demoBend.rod} />
        <path className="demo-weight" d={`M${tipX - 14} ${tipY + hangMm}h28l14 50h-56z`} />
        {ringXmm.map((x, ring) => (
          <circle key={ring} className="demo-ring" cx={x} cy={ringYmm[ring]} r={13} />
        ))}
        <circle className="demo-ring" cx={demoBend.reelXmm} cy={demoBend.reelYmm + 36} r={42} />
      </g>
      {ringXmm.slice(1).map((x, guide) => {
        const [outX, outY] = outward(guide + 1);
        return (
          <text
            key={guide}
            x={x * scale + 17 * outX}
            y={ringYmm[guide + 1] * scale + 17 * outY + 5}
            textAnchor="middle"
            className={guide === worstGuide.ours ? 'demo-worst' : undefined}
          >
            {guide + 1}
          </text>
        );
      })}
      <text x={tipX * scale + 16} y={(tipY + hangMm) * scale + 10} className="demo-worst">
        {loadGrams} g
      </text>
    </>
  );
}

/** Away from the line, square to the run between the neighbouring rings. */
function outward(ring: number): [number, number] {
  const next = Math.min(ring + 1, ringXmm.length - 1);
  const [dx, dy] = [ringXmm[next] - ringXmm[ring - 1], ringYmm[next] - ringYmm[ring - 1]];
  const along = Math.hypot(dx, dy);
  return [dy / along, -dx / along];
}

function AngleStrip() {
  const base = 270;
  const at = (guide: number) => -480 + guide * 52;
  const high = (degrees: number) => base - degrees * 5.2;
  return (
    <>
      <text x={-500} y={high(limitDegrees) - 26}>
        line angle at each guide
      </text>
      <text x={80} y={high(limitDegrees) - 7} textAnchor="end" className="demo-limit-name">
        limit {limitDegrees}°
      </text>
      <path className="demo-base" d={`M-500 ${base}H80`} />
      <path className="demo-limit" d={`M-500 ${high(limitDegrees)}H80`} />
      {ourDegrees.map((ours, guide) => (
        <g key={guide}>
          <circle
            className={startDegrees[guide] > limitDegrees ? 'demo-start demo-beyond' : 'demo-start'}
            cx={at(guide)}
            cy={high(startDegrees[guide])}
            r={5}
          />
          <circle className="demo-ours" cx={at(guide)} cy={high(ours)} r={5.5} />
          <text x={at(guide)} y={base + 20} textAnchor="middle">
            {guide + 1}
          </text>
        </g>
      ))}
      <circle className="demo-ours" cx={-492} cy={base + 36} r={5.5} />
      <text x={-480} y={base + 41}>
        placed for this blank
      </text>
      <circle className="demo-start" cx={-240} cy={base + 36} r={5} />
      <text x={-228} y={base + 41}>
        the start (arithmetic rule)
      </text>
    </>
  );
}

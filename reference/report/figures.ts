/** Figures of the verification page, drawn as plain SVG with numbers rounded to 0.1 px. */
import { bend } from '../../src/engine/bend/bend.ts';
import { passes } from '../cases/check.ts';
import { realisticRods } from '../cases/realistic-rods.ts';
import type { LiveGroup } from '../live/groups.ts';
import { shareOfAllowance } from './report-text.ts';

const style = `<style>text{font:12px system-ui,sans-serif;fill:#333}.small{font-size:11px}.axis{stroke:#999;stroke-width:1;fill:none}.rod{stroke:#1f4e79;stroke-width:2;fill:none}.rest{stroke:#1f4e79;stroke-width:1;fill:none;stroke-dasharray:4 3}.line{stroke:#c1440e;stroke-width:1;fill:none}.ring{fill:none;stroke:#333}.dot{fill:#1f4e79}.fail{fill:#c1440e}</style>`;

/** The six rods without load (dashed) and bent, each to the same scale, with the line through its rings. */
export function shapesFigure(): string {
  const cell = { width: 300, height: 290 };
  const parts = realisticRods.map(({ name, request }, i) => {
    const bent = bend(request);
    const still = bend({ ...request, load: { tip: { xN: 0, yN: 0 } }, guides: [], masses: [] });
    const scale = 58;
    const at = { x: 30 + (i % 3) * cell.width, y: 205 + Math.floor(i / 3) * cell.height };
    const place = (p: { xM: number; yM: number }) =>
      `${(at.x + scale * p.xM).toFixed(1)},${(at.y - scale * p.yM).toFixed(1)}`;
    const path = (points: readonly { xM: number; yM: number }[]) => `M${points.map(place).join('L')}`;
    const pull = request.load.line!.pullAngleRad;
    const far = {
      xM: bent.rings[0].xM + 0.5 * Math.cos(pull),
      yM: bent.rings[0].yM + 0.5 * Math.sin(pull),
    };
    return [
      `<text x="${at.x - 10}" y="${at.y - 185}">${name}</text>`,
      `<path class="rest" d="${path(thin(still.points))}"/>`,
      `<path class="rod" d="${path(thin(bent.points))}"/>`,
      `<path class="line" d="${path([far, ...bent.rings])}"/>`,
      ...bent.rings.map((ring) => {
        const [x, y] = place(ring).split(',');
        return `<circle class="ring" cx="${x}" cy="${y}" r="2"/>`;
      }),
    ].join('');
  });
  return svg(
    3 * cell.width,
    2 * cell.height,
    'Six invented rods, unloaded and bent with the line through their rings',
    parts,
  );
}

function thin<T>(points: readonly T[]): T[] {
  return points.filter((_, i) => i % 6 === 0 || i === points.length - 1);
}

/** One dot a row: its error as a share of its allowance, on a logarithmic axis; right of 1 fails. */
export function errorFigure(groups: readonly LiveGroup[]): string {
  const left = 330;
  const x = (share: number) => left + 60 * (Math.log10(Math.min(Math.max(share, 1e-6), 10)) + 6);
  const top = 40;
  const rowHeight = 20;
  const height = top + rowHeight * groups.length + 20;
  const ticks = [-6, -5, -4, -3, -2, -1, 0].map((power) => {
    const at = x(10 ** power).toFixed(1);
    return `<path class="axis" d="M${at},${top - 12}V${height - 14}"${power === 0 ? ' style="stroke:#c1440e"' : ''}/><text class="small" x="${at}" y="${top - 18}" text-anchor="middle">${power === 0 ? '1' : `1e${power}`}</text>`;
  });
  const rows = groups.map((group, i) => {
    const y = top + rowHeight * i + 8;
    const label = `<text class="small" x="${left - 12}" y="${y + 4}" text-anchor="end">${group.title}</text>`;
    if ('notRun' in group) return `${label}<text class="small" x="${left + 6}" y="${y + 4}">not run</text>`;
    const dots = group.checks.map(
      (check) =>
        `<circle class="${passes(check) ? 'dot' : 'fail'}" cx="${x(shareOfAllowance(check)).toFixed(1)}" cy="${y}" r="2.2" fill-opacity="0.5"/>`,
    );
    return label + dots.join('');
  });
  return svg(left + 440, height, 'Error of every row as a share of its allowance', [...ticks, ...rows]);
}

function svg(width: number, height: number, title: string, parts: readonly string[]): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img"><title>${title}</title>${style}<rect width="${width}" height="${height}" fill="#fff"/>\n${parts.join('\n')}\n</svg>\n`;
}

import type { RuledLoad } from '../engine/layout/rule-reading.ts';
import { escapeXml } from './svg.ts';

export interface CustomerBend {
  /** From the lightest load on; with their names. */
  loads: readonly Pick<RuledLoad, 'xM' | 'yM' | 'rings'>[];
  names: readonly string[];
  handleM: number;
  /** A square of the grid behind it, and its words: `12 in`. */
  squareM: number;
  squareWords: string;
  /** Whether this very blank was measured, or its bend is worked out from its diameters. */
  measured: boolean;
}

interface Place {
  xM: number;
  yM: number;
}
const widthPx = 560;
const roomPx = { side: 16, words: 70, top: 22 } as const;

/** The rod under each load, one behind the other, the heaviest with its guides and line; heights point up. */
export function bendFigure({ loads, names, handleM, squareM }: CustomerBend): string {
  const curves = loads.map((load) => placesOf(load));
  const butt = handleEnd(curves[curves.length - 1], handleM);
  const all = [...curves.flat(), butt];
  const [left, right] = [Math.min(...all.map(({ xM }) => xM)), Math.max(...all.map(({ xM }) => xM))];
  const [low, high] = [Math.min(...all.map(({ yM }) => yM)), Math.max(...all.map(({ yM }) => yM))];
  const pxPerM = (widthPx - 2 * roomPx.side - roomPx.words) / (right - left);
  const heightPx = (high - low) * pxPerM + 2 * roomPx.top;
  const at = ({ xM, yM }: Place): [number, number] => [
    roomPx.side + (xM - left) * pxPerM,
    roomPx.top + (high - yM) * pxPerM,
  ];
  const heaviest = loads[loads.length - 1];
  const words = `The rod bent under ${names.join(', ')}`;
  return [
    `<svg viewBox="0 0 ${widthPx} ${px(heightPx)}" role="img" aria-label="${escapeXml(words)}">`,
    grid(squareM * pxPerM, heightPx, at({ xM: 0, yM: 0 })),
    ...curves.map((curve, k) => rodLine([...curve, butt].map(at), k === curves.length - 1)),
    path(heaviest.rings.map(at), 'stroke="#23607f" stroke-width="1"'),
    ...heaviest.rings.map((ring) => {
      const [x, y] = at(ring);
      return `<circle cx="${px(x)}" cy="${px(y)}" r="2.6" fill="#fff" stroke="#23607f" stroke-width="1.4"/>`;
    }),
    ...curves.map((curve, k) => loadName(at(curve[0]), names[k])),
    '</svg>',
  ].join('');
}

function placesOf({ xM, yM }: CustomerBend['loads'][number]): Place[] {
  return Array.from(xM, (x, i) => ({ xM: x, yM: yM[i] }));
}

/** The handle goes straight on from the last stretch of the bent rod. */
function handleEnd(curve: readonly Place[], handleM: number): Place {
  const [before, last] = [curve[curve.length - 2], curve[curve.length - 1]];
  const along = Math.hypot(last.xM - before.xM, last.yM - before.yM);
  return {
    xM: last.xM + ((last.xM - before.xM) / along) * handleM,
    yM: last.yM + ((last.yM - before.yM) / along) * handleM,
  };
}

function grid(squarePx: number, heightPx: number, [x0, y0]: [number, number]): string {
  const from = (origin: number, end: number) => {
    const first = origin % squarePx;
    return Array.from({ length: Math.floor((end - first) / squarePx) + 1 }, (_, k) =>
      px(first + k * squarePx),
    );
  };
  const d = [
    ...from(x0, widthPx).map((x) => `M${x} 0V${px(heightPx)}`),
    ...from(y0, heightPx).map((y) => `M0 ${y}H${widthPx}`),
  ];
  return `<path d="${d.join('')}" fill="none" stroke="#e2e7e9"/>`;
}

function rodLine(places: [number, number][], heaviest: boolean): string {
  return path(
    places,
    heaviest ? 'stroke="#14212a" stroke-width="2.6"' : 'stroke="#98a4a9" stroke-width="1.6"',
  );
}

function path(places: [number, number][], stroke: string): string {
  return `<path d="M${places.map(([x, y]) => `${px(x)} ${px(y)}`).join('L')}" fill="none" ${stroke}/>`;
}

function loadName([x, y]: [number, number], name: string): string {
  return `<text x="${px(x + 9)}" y="${px(y + 4)}" font-size="14" fill="#14212a">${escapeXml(name)}</text>`;
}

function px(value: number): string {
  return value.toFixed(1);
}

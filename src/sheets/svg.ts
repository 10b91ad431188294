import {
  type Area,
  type Ink,
  type Line,
  type Mark,
  type Page,
  plainText,
  type Shape,
  type Text,
} from './drawing.ts';
import { fractionSetting } from './text-width.ts';

/** A page as an SVG document in millimetres, for the screen. Colours come from classes `ink-...` with a default. */
export function pageSvg(page: Page): string {
  const { widthMm, heightMm, marks } = page;
  const body = marks.map(markSvg).join('\n');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}" font-family="Helvetica, Arial, sans-serif">\n${body}\n</svg>\n`;
}

export const inkColours: Record<Ink, string> = { black: '#000000', grey: '#6b6b6b', attention: '#c8321e' };

function markSvg(mark: Mark): string {
  if (mark.kind === 'line') return lineSvg(mark);
  if (mark.kind === 'shape') return shapeSvg(mark);
  return mark.kind === 'area' ? areaSvg(mark) : textSvg(mark);
}

function lineSvg(mark: Line): string {
  const dash = mark.dashMm ? ` stroke-dasharray="${mark.dashMm.join(' ')}"` : '';
  const title = mark.name ? `<title>${escapeXml(mark.name)}</title>` : '';
  return `<line class="ink-${mark.ink}" x1="${num(mark.x1Mm)}" y1="${num(mark.y1Mm)}" x2="${num(mark.x2Mm)}" y2="${num(mark.y2Mm)}" stroke="${inkColours[mark.ink]}" stroke-width="${num(mark.widthMm)}"${dash}>${title}</line>`;
}

function areaSvg(mark: Area): string {
  if (mark.fill) {
    return `<rect x="${num(mark.xMm)}" y="${num(mark.yMm)}" width="${num(mark.widthMm)}" height="${num(mark.heightMm)}" fill="${escapeXml(mark.fill)}" stroke="${inkColours[mark.ink]}" stroke-width="0.15"/>`;
  }
  return `<rect class="ink-${mark.ink}" x="${num(mark.xMm)}" y="${num(mark.yMm)}" width="${num(mark.widthMm)}" height="${num(mark.heightMm)}" fill="${inkColours[mark.ink]}"/>`;
}

function shapeSvg(mark: Shape): string {
  const ring = (places: Shape['rings'][number]): string =>
    `M${places.map(({ xMm, yMm }) => `${num(xMm)} ${num(yMm)}`).join('L')}Z`;
  const title = mark.name ? `<title>${escapeXml(mark.name)}</title>` : '';
  return `<path class="ink-${mark.ink}" d="${mark.rings.map(ring).join('')}" fill="${inkColours[mark.ink]}">${title}</path>`;
}

function textSvg(mark: Text): string {
  const turn = mark.upwards ? ` transform="rotate(-90 ${num(mark.xMm)} ${num(mark.yMm)})"` : '';
  const weight = mark.bold ? ' font-weight="bold"' : '';
  const spoken = mark.pieces.some((piece) => typeof piece !== 'string')
    ? ` aria-label="${escapeXml(plainText(mark.pieces))}"`
    : '';
  const body = mark.pieces
    .map((piece) => (typeof piece === 'string' ? escapeXml(piece) : fractionSvg(piece)))
    .join('');
  return `<text class="ink-${mark.ink}" x="${num(mark.xMm)}" y="${num(mark.yMm)}" font-size="${num(mark.sizeMm)}" text-anchor="${mark.align}" fill="${inkColours[mark.ink]}" xml:space="preserve"${weight}${turn}${spoken}>${body}</text>`;
}

/** Numerator raised, stroke, denominator on the line, all in em so that they follow the text's size. */
function fractionSvg({ numerator, denominator }: { numerator: number; denominator: number }): string {
  const { size, raise } = fractionSetting;
  const smallRaise = num(raise / size);
  return `<tspan font-size="${size}em" dy="-${smallRaise}em">${numerator}</tspan><tspan dy="${raise}em">⁄</tspan><tspan font-size="${size}em">${denominator}</tspan>`;
}

/** Rounded, so that drawings compare equal across JavaScript engines. */
function num(value: number): string {
  return String(Number(value.toFixed(4)));
}

/** For what stands between tags, and in attributes between double quotes. */
export function escapeXml(words: string): string {
  return words.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}

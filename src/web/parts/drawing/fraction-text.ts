import { figuresWithUnits } from '../../../words/figures-with-units.ts';

/**
 * Lengths written while a guide moves, outside of React: `22 1⁄8 in` with a true fraction. In HTML as the
 * fields show it (fields/figure.tsx); in a drawing with raised and lowered figures.
 */
const pattern = /(?:(?<=\d)\s)?(\d+)[/⁄]([1-9]\d*)(?![\d.])/g;

/** For SVG text: `22 1⁄8 in` becomes `22¹⁄₈ in`. */
export function raisedFractions(text: string): string {
  return text.replace(pattern, (_, above: string, below: string) => `${raised(above)}⁄${lowered(below)}`);
}

/** Sets an element's text with its fractions as small figures and each figure beside its unit; the same again is free. */
export function paintFigure(element: Element, text: string): void {
  const plain = text.replaceAll('⁄', '/');
  if (element.getAttribute('data-text') === plain) return;
  element.setAttribute('data-text', plain);
  const pieces = figuresWithUnits(text).map((piece, index) =>
    index % 2 === 0 ? nodesOf(piece) : [made('span', nodesOf(piece), 'together')],
  );
  element.replaceChildren(...pieces.flat());
}

function nodesOf(text: string): Node[] {
  const nodes: Node[] = [];
  let done = 0;
  for (const match of text.matchAll(pattern)) {
    nodes.push(document.createTextNode(text.slice(done, match.index)));
    nodes.push(...fractionNodes(match[1], match[2]));
    done = match.index + match[0].length;
  }
  nodes.push(document.createTextNode(text.slice(done)));
  return nodes;
}

/** Seen as a fraction, read aloud as "1/8". */
function fractionNodes(above: string, below: string): Node[] {
  const spoken = made('span', [` ${above}/${below}`], 'visually-hidden');
  const seen = made('span', [made('sup', [above]), '⁄', made('sub', [below])], 'fraction');
  seen.setAttribute('aria-hidden', 'true');
  return [spoken, seen];
}

function made(tag: string, content: readonly (Node | string)[], className = ''): HTMLElement {
  const element = document.createElement(tag);
  element.append(...content);
  if (className) element.className = className;
  return element;
}

function raised(digits: string): string {
  return [...digits].map((digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)]).join('');
}

function lowered(digits: string): string {
  return [...digits].map((digit) => '₀₁₂₃₄₅₆₇₈₉'[Number(digit)]).join('');
}

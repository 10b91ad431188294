/**
 * Lengths written while a guide moves, outside of React: `22 1⁄8 in` with a true fraction. In HTML as the
 * fields show it (fields/figure.tsx); in a drawing with raised and lowered figures.
 */
const pattern = /(?:(?<=\d)\s)?(\d+)[/⁄]([1-9]\d*)(?![\d.])/g;

/** For SVG text: `22 1⁄8 in` becomes `22¹⁄₈ in`. */
export function raisedFractions(text: string): string {
  return text.replace(pattern, (_, above: string, below: string) => `${raised(above)}⁄${lowered(below)}`);
}

/** Sets an element's text with its fractions as small figures; the same text again costs nothing. */
export function paintFigure(element: Element, text: string): void {
  const plain = text.replaceAll('⁄', '/');
  if (element.getAttribute('data-text') === plain) return;
  element.setAttribute('data-text', plain);
  element.replaceChildren(...nodesOf(text));
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
  const spoken = made('span', ` ${above}/${below}`, 'visually-hidden');
  const seen = made('span', '', 'fraction');
  seen.setAttribute('aria-hidden', 'true');
  seen.append(made('sup', above), '⁄', made('sub', below));
  return [spoken, seen];
}

function made(tag: string, text: string, className = ''): HTMLElement {
  const element = document.createElement(tag);
  element.textContent = text;
  if (className) element.className = className;
  return element;
}

function raised(digits: string): string {
  return [...digits].map((digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)]).join('');
}

function lowered(digits: string): string {
  return [...digits].map((digit) => '₀₁₂₃₄₅₆₇₈₉'[Number(digit)]).join('');
}

/**
 * Drawings that answer while a guide is dragged are made of these, outside of React: nodes are made once and
 * only their attributes change from frame to frame.
 */
const namespace = 'http://www.w3.org/2000/svg';
type Tags = SVGElementTagNameMap;
type Attributes = Record<string, string | number>;

export function svgNode<T extends keyof Tags>(parent: Element, tag: T, attributes: Attributes = {}): Tags[T] {
  const node = document.createElementNS(namespace, tag);
  setAll(node, attributes);
  parent.append(node);
  return node;
}

export function setAll(node: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) node.setAttribute(name, String(value));
}

export function setText(node: Element, text: string): void {
  if (node.textContent !== text) node.textContent = text;
}

/** As many nodes of one kind as are needed just now; those left over are hidden, not removed. */
export class NodePool<T extends keyof Tags> {
  private readonly nodes: Tags[T][] = [];
  private readonly parent: Element;
  private readonly tag: T;
  private readonly attributes: Attributes;

  constructor(parent: Element, tag: T, attributes: Attributes = {}) {
    this.parent = parent;
    this.tag = tag;
    this.attributes = attributes;
  }

  take(count: number): readonly Tags[T][] {
    while (this.nodes.length < count) this.nodes.push(svgNode(this.parent, this.tag, this.attributes));
    this.nodes.forEach((node, index) => {
      const display = index < count ? '' : 'none';
      if (node.style.display !== display) node.style.display = display;
    });
    return this.nodes.slice(0, count);
  }
}

/** `M1 2L3 4`, tenths of a pixel; every `stride`-th point and the last. */
export function polyline(xPx: ArrayLike<number>, yPx: ArrayLike<number>, stride = 1): string {
  const last = xPx.length - 1;
  let path = '';
  for (let i = 0; i <= last; i += stride) path += `${i === 0 ? 'M' : 'L'}${tenth(xPx[i])} ${tenth(yPx[i])}`;
  return last % stride === 0 ? path : `${path}L${tenth(xPx[last])} ${tenth(yPx[last])}`;
}

/** Round dots as one path: segments of no length under a round line cap. */
export function dots(places: Iterable<{ xPx: number; yPx: number }>): string {
  let path = '';
  for (const { xPx, yPx } of places) path += `M${tenth(xPx)} ${tenth(yPx)}h0`;
  return path;
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}

import type { WindingCheck } from '../engine/handle/winding-check.ts';
import type { Writer } from './writer.ts';

/** `18/64 in, or 7.5 mm (0.2 mm wide)`: both ways they are sold; one past the bore sought says by how much. */
export function checkSizesInWords({ mostBoreM, size64, halfMillimetres }: WindingCheck, w: Writer): string {
  const wide = (boreM: number) => {
    const beyondM = boreM - mostBoreM;
    return beyondM > 5e-5 ? ` (${w.calliper(beyondM)} wide)` : '';
  };
  return `${size64}/64 in${wide((size64 / 64) * 0.0254)}, or ${halfMillimetres} mm${wide(halfMillimetres / 1000)}`;
}

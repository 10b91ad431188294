import { handleDefaults, type Room } from './handle-parts.ts';

/** Winding check: bore = blank at the grip's face + 0.1 to 0.3 mm. Common practice, no source; looks only. */
export interface WindingCheck {
  outsideM: number;
  leastBoreM: number;
  mostBoreM: number;
  /** Smallest size in 64ths of an inch, and in half millimetres, that goes on with the least room to spare. */
  size64: number;
  halfMillimetres: number;
}

/** `outsideM`: diameter of the blank at the grip's front, positive. */
export function chooseWindingCheck(outsideM: number, room: Room = handleDefaults.checkRoomM): WindingCheck {
  const leastBoreM = outsideM + room.least;
  return {
    outsideM,
    leastBoreM,
    mostBoreM: outsideM + Math.max(room.least, room.most),
    size64: Math.ceil(leastBoreM / (0.0254 / 64) - 1e-6),
    halfMillimetres: Math.ceil(leastBoreM / 0.0005 - 1e-6) / 2,
  };
}

/** `18/64 in, or 7.5 mm (0.2 mm wide)`: a size past the bore sought says by how much. */
export function checkSizesInWords({ mostBoreM, size64, halfMillimetres }: WindingCheck): string {
  const wide = (boreM: number) => {
    const beyondMm = (boreM - mostBoreM) * 1000;
    return beyondMm > 0.05 ? ` (${beyondMm.toFixed(1)} mm wide)` : '';
  };
  return `${size64}/64 in${wide((size64 / 64) * 0.0254)}, or ${halfMillimetres} mm${wide(halfMillimetres / 1000)}`;
}

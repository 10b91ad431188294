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

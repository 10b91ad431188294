/** What a line of some strength is fished with. Common practice, no source: a drag slips at a quarter to a third. */

export const dragShare = { least: 0.25, usual: 0.3, most: 0.33 };

export function usualDragKg(lineTestKg: number): number {
  return dragShare.usual * lineTestKg;
}

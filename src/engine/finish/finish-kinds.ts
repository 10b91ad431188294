/** What can be odd about a mix, its times and its coats. */
export interface FinishKinds {
  'finish/nothing-given': {
    what: 'partA' | 'partB' | 'measureStep' | 'potLife' | 'minutesPerWrap';
    value: number;
  };
  'finish/ratio-by-what': Record<string, never>;
  'finish/densities-needed': Record<string, never>;
  'finish/recoat-window': { fromS: number; untilS: number };
  'finish/turning-short': { turnForS: number };
  'finish/fish-before-flex': { fishAfterS: number; flexAfterS: number };
  'finish/coat-in-future': { coat: number };
  'finish/coat-order': { coat: number };
  'finish/coat-too-early': { coat: number };
  'finish/coat-too-late': { coat: number };
  'finish/room-outside-rule': { roomC: number };
  'finish/room-off-sheet': { roomC: number; sheetC: number };
}

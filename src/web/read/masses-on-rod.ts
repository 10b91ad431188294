import type { SheetModel } from './sheet-model.ts';

/** The tip-top and the guides as weights on the rod; those without a mass are left out. */
export function massesOnRod({ ladder: { ladder }, field }: SheetModel) {
  const guides = field.fromTipM.map((fromTipM, i) => ({
    fromTipM,
    massKg: ladder.guides.massesKg?.[i] ?? 0,
  }));
  return [{ fromTipM: 0, massKg: ladder.tipTop.massKg ?? 0 }, ...guides].filter(({ massKg }) => massKg > 0);
}

/** The stiffness answer's tables, for the whole blank: linear between rows, constant outside. */
export interface BlankTables {
  stiffness: readonly { fromTipM: number; EINm2: number }[];
  massPerLength: readonly { fromTipM: number; kgPerM: number }[];
  restCurvature?: readonly { fromTipM: number; perM: number }[];
}
export interface FreeRod {
  lengthM: number;
  stiffness: { fromTipM: number; EINm2: number }[];
  massPerLength: { fromTipM: number; kgPerM: number }[];
  restCurvature?: { fromTipM: number; perM: number }[];
}

/**
 * The rod in front of the grip, where the bend begins. Station 0 stays the tip; rows behind the grip's front
 * are dropped and one is put exactly there.
 */
export function freeRod(tables: BlankTables, freeLengthM: number): FreeRod {
  const { restCurvature } = tables;
  return {
    lengthM: freeLengthM,
    stiffness: cutRows(tables.stiffness, freeLengthM, 'EINm2'),
    massPerLength: cutRows(tables.massPerLength, freeLengthM, 'kgPerM'),
    ...(restCurvature && restCurvature.length > 0
      ? { restCurvature: cutRows(restCurvature, freeLengthM, 'perM') }
      : {}),
  };
}

function cutRows<K extends string>(
  rows: readonly ({ fromTipM: number } & Record<K, number>)[],
  atM: number,
  column: K,
): ({ fromTipM: number } & Record<K, number>)[] {
  const kept = rows.filter(({ fromTipM }) => fromTipM < atM).map((row) => ({ ...row }));
  const next = rows.find(({ fromTipM }) => fromTipM >= atM);
  const last = kept.at(-1);
  if (!next) return kept;
  const share = last ? (atM - last.fromTipM) / (next.fromTipM - last.fromTipM) : 1;
  const value = last ? last[column] + share * (next[column] - last[column]) : next[column];
  return [...kept, { ...next, fromTipM: atM, [column]: value }];
}

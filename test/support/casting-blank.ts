/** An invented 7 ft casting blank, for guides on top. */
export const castingBlank = {
  lengthM: 1.75,
  stiffness: [
    { fromTipM: 0, EINm2: 0.3 },
    { fromTipM: 0.8, EINm2: 3 },
    { fromTipM: 1.75, EINm2: 20 },
  ],
};
export const castingDiameters = [
  { fromTipM: 0, outsideM: 0.002 },
  { fromTipM: 1.75, outsideM: 0.012 },
];

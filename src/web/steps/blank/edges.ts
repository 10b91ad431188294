/** Which line of the blank a drop is read at. */
export const edges = [
  { value: 'upper', name: 'upper edge' },
  { value: 'axis', name: 'middle' },
  { value: 'lower', name: 'lower edge' },
];

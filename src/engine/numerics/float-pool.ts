/** Many arrays in one piece of memory: one allocation instead of one each. `total` is the sum of their lengths. */
export function floatPool(total: number): (length: number) => Float64Array {
  const buffer = new ArrayBuffer(8 * total);
  let taken = 0;
  return (length) => {
    const array = new Float64Array(buffer, 8 * taken, length);
    taken += length;
    return array;
  };
}

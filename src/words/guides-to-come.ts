/** Which guides the bag still owes: `4 of size 1/0, 1 of size 2`. */
export function guidesToCome(order: readonly { size: string; count: number }[]): string {
  return order.map(({ size, count }) => `${count} of size ${size}`).join(', ');
}

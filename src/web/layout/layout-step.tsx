/** The place of the layout's drawings. */
export function LayoutStep() {
  return <h2>Layout</h2>;
}

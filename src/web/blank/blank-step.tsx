export function BlankStep() {
  return <h2>Blank</h2>;
}

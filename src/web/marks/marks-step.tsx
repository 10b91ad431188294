export function MarksStep() {
  return <h2>Marks</h2>;
}

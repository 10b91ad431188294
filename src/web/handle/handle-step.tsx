export function HandleStep() {
  return <h2>Handle</h2>;
}

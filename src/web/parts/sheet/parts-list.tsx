/** The parts of a long sheet, to go to at once. */
export function PartsList({ parts }: { parts: readonly { anchor: string; name: string }[] }) {
  return (
    <nav className="parts-list screen-only" aria-label="Parts of this sheet">
      {parts.map(({ anchor, name }) => (
        <a key={anchor} href={`#${anchor}`}>
          {name}
        </a>
      ))}
    </nav>
  );
}

import { Button } from 'react-aria-components';

/** The tags of a card, each a press away from all that carry it. */
export function TagLine({ tags, find }: { tags: readonly string[]; find(text: string): void }) {
  if (tags.length === 0) return null;
  return (
    <>
      {tags.map((tag) => (
        <Button key={tag} className="plain" onPress={() => find(tag)}>
          <span className="visually-hidden">find all with the tag </span>
          {tag}
        </Button>
      ))}
    </>
  );
}

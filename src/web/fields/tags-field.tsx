import { useId, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Row } from '../../record/document.ts';
import type { Change, Objection } from '../../record/operation.ts';
import type { DeedId } from '../../words/deeds.ts';
import { FieldFrame } from './field-frame.tsx';
import './tags-field.css';

interface TagsFieldProps {
  rows: readonly Row[];
  newRowId(): string;
  write(deed: DeedId, changes: readonly Change[]): Objection[];
}

/** The builder's own words to find this by; Enter or a comma keeps one, a press takes it off. */
export function TagsField({ rows, newRowId, write }: TagsFieldProps) {
  const id = useId();
  const [draft, setDraft] = useState('');
  const [trouble, setTrouble] = useState<string>();
  const tags = rows.map((row) => ({ id: row.id, text: String(row.fields.text ?? '') }));
  const keep = () => {
    const fresh = wordsOf(draft).filter((word) => !tags.some(({ text }) => same(text, word)));
    const changes = fresh.map((value): Change => ({ path: ['tags', newRowId(), 'text'], value }));
    const findings = changes.length > 0 ? write('tag', changes) : [];
    setTrouble(findings[0]?.message);
    if (findings.length === 0) setDraft('');
  };
  return (
    <div className="tags">
      <FieldFrame id={id} label="Tags" trouble={trouble} folds>
        <input
          id={id}
          className="field-input"
          type="text"
          data-field=""
          data-draft={draft !== ''}
          autoComplete="off"
          enterKeyHint="done"
          value={draft}
          placeholder="club, gift, bamboo seat"
          aria-describedby={`${id}-line`}
          onChange={(event) => setDraft(event.target.value)}
          onBlur={keep}
          onKeyDown={(event) => {
            if (event.key === 'Escape') setDraft('');
            if (event.key !== 'Enter' && event.key !== ',') return;
            event.preventDefault();
            keep();
          }}
        />
      </FieldFrame>
      {tags.length > 0 && (
        <ul className="tag-list" aria-label="Tags of this one">
          {tags.map((tag) => (
            <li key={tag.id}>
              <Button
                className="tag"
                aria-label={`${tag.text}, take this tag off`}
                onPress={() => write('untag', [{ path: ['tags', tag.id, 'gone'], value: true }])}
              >
                {tag.text} <span aria-hidden="true">×</span>
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function wordsOf(typed: string): string[] {
  const words = typed.split(',').map((word) => word.trim().replace(/\s+/g, ' '));
  return words.filter(
    (word, index) => word !== '' && words.findIndex((other) => same(other, word)) === index,
  );
}

function same(a: string, b: string): boolean {
  return a.toLocaleLowerCase() === b.toLocaleLowerCase();
}

import { Button } from 'react-aria-components';
import type { Conflict } from '../../../record/conflicts.ts';
import { deviceFamily, type Operation } from '../../../record/operation.ts';
import { fieldName, shownValue } from '../../../words/history.ts';
import { instantWords } from '../../../words/intl.ts';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';

/** Where two devices changed one field apart: both values with their times, until somebody chooses. */
export function ConflictNotices() {
  const { conflicts } = useBuild();
  return conflicts.map((conflict) => (
    <ConflictNotice key={`${conflict.standing.id} ${conflict.other.id}`} conflict={conflict} />
  ));
}

function ConflictNotice({ conflict }: { conflict: Conflict }) {
  const { document } = useBuild();
  const { path, standing, other } = conflict;
  const name = fieldName(path, document);
  return (
    <fieldset aria-label={`Two values of ${name}`}>
      <p>Two devices changed “{name}”, neither knowing of the other. Both are kept. Choose one:</p>
      {[standing, other].map((operation) => (
        <Choice key={operation.id} conflict={conflict} operation={operation} />
      ))}
    </fieldset>
  );
}

function Choice({ conflict, operation }: { conflict: Conflict; operation: Operation }) {
  const { document, store } = useBuild();
  const { reader } = useShop();
  const { path, value, device, at } = operation;
  const here = deviceFamily(device) === deviceFamily(store.device);
  return (
    <p>
      <Button className="button" onPress={() => store.choose(conflict, value)}>
        {shownValue(path, value, { document, ...reader })}
      </Button>{' '}
      <span className="quiet">
        {here ? 'written here' : 'written on another device'}, {instantWords(at)} by its own clock
      </span>
    </p>
  );
}

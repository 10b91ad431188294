import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import { useBuild } from '../../read/build-context.ts';

/** Undo and redo of this device's own changes, by button and by Ctrl+Z, Ctrl+Shift+Z, Ctrl+Y. */
export function UndoButtons() {
  const { undo, redo, undoLabel, redoLabel } = useBuild();
  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      const verb = undoKey(event);
      if (!verb || isTyping(event.target)) return;
      event.preventDefault();
      (verb === 'undo' ? undo : redo)();
    };
    addEventListener('keydown', listen);
    return () => removeEventListener('keydown', listen);
  }, [undo, redo]);
  return (
    <fieldset className="undo-buttons">
      <legend className="visually-hidden">Undo and redo</legend>
      <Button className="button" isDisabled={undoLabel === null} onPress={undo}>
        Undo<span className="visually-hidden">: {undoLabel ?? 'nothing to undo'}</span>
      </Button>
      <Button className="button" isDisabled={redoLabel === null} onPress={redo}>
        Redo<span className="visually-hidden">: {redoLabel ?? 'nothing to redo'}</span>
      </Button>
    </fieldset>
  );
}

function undoKey(event: KeyboardEvent): 'undo' | 'redo' | undefined {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return undefined;
  const key = event.key.toLowerCase();
  if (key === 'y') return 'redo';
  if (key !== 'z') return undefined;
  return event.shiftKey ? 'redo' : 'undo';
}

/** Inside a field with something typed the keys belong to the typing. */
function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest('[data-draft="true"], textarea') !== null;
}

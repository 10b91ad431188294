import { Button } from 'react-aria-components';
import { english } from '../../words/intl.ts';
import { draftInput, draftKeys } from './draft-input.ts';
import { FieldFrame } from './field-frame.tsx';
import { dayOrderOf, momentText, readMoment, typable } from './read-moment.ts';
import type { Typed } from './read-typed.ts';
import { useDraft } from './use-draft.ts';
import { type FieldProps, useField } from './use-field.ts';

/** A day of the calendar, kept as noon of it in UTC, or a moment by the device's own clock; emptied, it is none. */
export function MomentField(props: FieldProps) {
  const { id, field, label, own, trouble, write } = useField(props);
  const isDay = field.kind === 'instant' && field.day === true;
  const at = typeof own === 'string' && own !== '' ? localOf(own, isDay) : undefined;
  const draft = useDraft({
    shown: at ? momentText(at, !isDay) : '',
    read: (text) => typedMoment(text, isDay),
    write,
  });
  const understood = draft.typed?.ok ? draft.typed.understood : at && inFull(at, isDay);
  const now = () => write(kept(new Date(), isDay));
  return (
    <FieldFrame
      id={id}
      label={label}
      labelHidden={props.labelHidden}
      trouble={draft.trouble ?? trouble}
      echo={understood}
      folds
    >
      <span className="field-with-unit">
        <input
          id={id}
          type="text"
          className="field-input moment-input"
          data-field={isDay ? '' : undefined}
          data-path={props.path.join('/')}
          {...draftInput(draft)}
          autoComplete="off"
          placeholder={`such as ${pattern(isDay)}`}
          aria-describedby={`${id}-line`}
          onKeyDown={draftKeys(draft)}
        />
        {isDay && !at && draft.draft === undefined && (
          <Button className="plain" onPress={now}>
            Today<span className="visually-hidden">: {label}</span>
          </Button>
        )}
      </span>
    </FieldFrame>
  );
}

function typedMoment(text: string, isDay: boolean): Typed {
  if (text.trim() === '') return { ok: true, value: null, understood: '' };
  const at = readMoment(text, dayOrderOf(), new Date());
  if (!at)
    return {
      ok: false,
      trouble: `“${text}” is no ${isDay ? 'day' : 'time'}. Write it like ${pattern(isDay)}.`,
    };
  return { ok: true, value: kept(at, isDay), understood: inFull(at, isDay) };
}

function kept(at: Date, isDay: boolean): string {
  return isDay
    ? new Date(Date.UTC(at.getFullYear(), at.getMonth(), at.getDate(), 12)).toISOString()
    : at.toISOString();
}

/** A day is kept apart from the device's clock. */
function localOf(stored: string, isDay: boolean): Date {
  const at = new Date(stored);
  return isDay ? new Date(at.getUTCFullYear(), at.getUTCMonth(), at.getUTCDate()) : at;
}

/** How this device writes it: `12/31/2026`. */
function pattern(isDay: boolean): string {
  return momentText(new Date(new Date().getFullYear(), 11, 31, 14, 30), !isDay);
}

function inFull(at: Date, isDay: boolean): string {
  return at.toLocaleString(english, {
    ...typable,
    dateStyle: 'full',
    ...(isDay ? {} : { timeStyle: 'short' }),
  });
}

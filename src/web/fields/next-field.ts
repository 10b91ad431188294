import { leadOn } from './lead-on.ts';

/**
 * Moves the focus from a field to the next one of the same group (`data-group`, else the sheet), so that
 * value, Enter, value, Enter fills a column of readings without a pointer. Behind the last one of a group that
 * leads (`data-group="leads"`) it goes where the line “Next” points.
 */
export function focusNextField(from: HTMLElement): void {
  const group = from.closest<HTMLElement>('[data-group], main') ?? document.body;
  const fields = [
    // the tick that opens shut fields comes before what lies behind them
    ...group.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>(
      '[data-field]:not(:disabled), .gate input:not(:checked)',
    ),
    // in a shut fold a field takes no focus
  ].filter((field) => field.checkVisibility());
  const next = fields.find((field) => from.compareDocumentPosition(field) & Node.DOCUMENT_POSITION_FOLLOWING);
  if (!next) {
    if (group.dataset.group === 'leads') leadOn(from.dataset.path);
    return;
  }
  next.focus();
  next.select();
}

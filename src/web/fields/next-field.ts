/**
 * Moves the focus from a field to the next one of the same group (`data-group`, else the sheet), so that
 * value, Enter, value, Enter fills a column of readings without a pointer.
 */
export function focusNextField(from: HTMLElement): void {
  const group = from.closest('[data-group]') ?? from.closest('main') ?? document.body;
  const fields = [
    ...group.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>('[data-field]:not(:disabled)'),
  ];
  const next = fields.find((field) => from.compareDocumentPosition(field) & Node.DOCUMENT_POSITION_FOLLOWING);
  if (!next) return;
  next.focus();
  next.select();
}

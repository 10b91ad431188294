/**
 * A file let go beside the field meant for it would replace the page by itself in the browser. What a drop field has
 * taken in hand is left to it.
 */
export function refuseStrayDrops(): void {
  const refuse = (event: DragEvent) => {
    if (event.defaultPrevented || !event.dataTransfer?.types.includes('Files')) return;
    if (event.target instanceof HTMLInputElement && event.target.type === 'file') return;
    event.preventDefault();
    event.dataTransfer.dropEffect = 'none';
  };
  addEventListener('dragover', refuse);
  addEventListener('drop', refuse);
}

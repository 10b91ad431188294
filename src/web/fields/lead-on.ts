/** The record takes in what was just written before Next names another field; longer nobody waits for it. */
const waitMs = 3000;

/**
 * Goes to the field that the line “Next” names, as soon as it names another than the one that is left; to the step
 * where it names that instead, so that on a telephone the last Enter shows where the work goes on. Where it names
 * neither, or somebody has gone elsewhere meanwhile, the focus stays.
 */
export function leadOn(leaving: string | undefined): void {
  const [from, until] = [document.activeElement, performance.now() + waitMs];
  const look = () => {
    const focus = document.activeElement;
    if (performance.now() > until || (focus !== from && focus !== document.body)) return;
    const lead = document.querySelector<HTMLElement>('[data-leads-to]');
    if (lead && lead.dataset.leadsTo !== leaving) return lead.click();
    const onward = lead ? null : document.querySelector<HTMLElement>('.next-line a.button');
    if (onward) return bringIntoSight(onward);
    requestAnimationFrame(look);
  };
  look();
}

function bringIntoSight(onward: HTMLElement): void {
  onward.scrollIntoView({ block: 'nearest' });
  onward.focus({ preventScroll: true });
}

/** The record takes in what was just written before Next names another field; longer nobody waits for it. */
const waitMs = 3000;

/**
 * Goes to the field that the line “Next” names, as soon as it names another than the one that is left. Where it names
 * none, or somebody has gone elsewhere meanwhile, the focus stays.
 */
export function leadOn(leaving: string | undefined): void {
  const [from, until] = [document.activeElement, performance.now() + waitMs];
  const look = () => {
    const focus = document.activeElement;
    if (performance.now() > until || (focus !== from && focus !== document.body)) return;
    const lead = document.querySelector<HTMLElement>('[data-leads-to]');
    if (lead && lead.dataset.leadsTo !== leaving) lead.click();
    else requestAnimationFrame(look);
  };
  look();
}

/**
 * Goes to the field that the line “Next” names, as soon as it names another than the one that is left: the record has
 * to take in what was just written first. Where it names none, the focus stays.
 */
export function leadOn(leaving: string | undefined, framesLeft = 30): void {
  const lead = document.querySelector<HTMLElement>('[data-leads-to]');
  if (lead && lead.dataset.leadsTo !== leaving) lead.click();
  else if (framesLeft > 0) requestAnimationFrame(() => leadOn(leaving, framesLeft - 1));
}

/** The drawing-office sheet: a frame, one lettering, the rod as the drawing, a title block at the foot. */
export const customerPageStyle = `
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0; background: #e2e7e9; color: #14212a; font: 16px/1.45 "Bahnschrift", "DIN Alternate", "DejaVu Sans", "Segoe UI", Roboto, Arial, sans-serif; overflow-wrap: anywhere; }
main { background: #fff; border: 2px solid #14212a; margin: 1.5rem auto; max-width: 60rem; padding: 1.5rem 1.5rem 0; }
h1 { font-size: 1.75rem; line-height: 1.2; margin: 0; }
h2 { border-top: 1px solid #14212a; font-size: 1.1rem; margin: 1.75rem 0 0.75rem; padding-top: 0.5rem; }
header p { margin: 0.25rem 0 0; }
figure { margin: 0; }
svg { display: block; height: auto; width: 100%; }
figcaption, .sources { color: #526066; font-size: 0.8125rem; }
.made { display: grid; gap: 1rem 2rem; grid-template-columns: repeat(auto-fit, minmax(min(100%, 18rem), 1fr)); align-items: start; }
ul { margin: 0; padding-left: 1.2rem; }
table { border-collapse: collapse; width: 100%; }
th, td { border-bottom: 1px solid #c6cfd2; padding: 0.2rem 0.5rem 0.2rem 0; text-align: left; }
thead th { color: #526066; font-size: 0.8125rem; font-weight: 400; }
dt { font-weight: 700; }
dd { margin: 0 0 0.75rem; }
footer { border-top: 2px solid #14212a; margin: 1.5rem -1.5rem 0; }
footer dl { display: flex; flex-wrap: wrap; margin: 0; }
footer div { border-right: 1px solid #c6cfd2; flex: 1 1 auto; padding: 0.4rem 1rem; }
footer dt { color: #526066; font-size: 0.75rem; font-weight: 400; }
footer dd { margin: 0; }
@media (min-width: 48rem), print {
  section dl { columns: 2; column-gap: 2rem; }
}
dt { break-after: avoid; }
dd { break-inside: avoid; }
@page { margin: 12mm; }
@media print {
  body { background: none; font-size: 10.5pt; }
  main { border: 0; margin: 0; max-width: none; padding: 0; }
  footer { margin: 1rem 0 0; }
  h2 { break-after: avoid; }
  figure, tr, footer { break-inside: avoid; }
  svg { max-height: 100mm; }
  h2 { margin-top: 1rem; }
}
`;

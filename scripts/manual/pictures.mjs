/** What each picture of the manual shows: an address of the demo, and what is brought into sight there. */
const demo = (step) => `/builds/demo/${step}`;
const toPart = (name) => async (page) => {
  const part = page.getByRole('region', { name, exact: true }).first();
  await part.evaluate((element) => element.scrollIntoView({ block: 'start' }));
  // what stays in sight at the top of the window would lie over its heading
  await page.mouse.wheel(0, -90);
};

export const pictures = [
  { name: 'shelf', at: '/' },
  { name: 'sections', at: demo('blank/sections'), before: toPart('Sections') },
  { name: 'readings', at: demo('blank/readings'), before: toPart('Readings') },
  { name: 'stiffness', at: demo('blank/stiffness') },
  { name: 'spine', at: demo('blank/spine') },
  { name: 'swing', at: demo('blank/swing') },
  { name: 'handle', at: demo('handle'), before: toPart('Handle') },
  { name: 'layout', at: demo('layout'), height: 760 },
  { name: 'marks', at: demo('marks') },
  { name: 'load-test', at: demo('load-test') },
  { name: 'guides', at: demo('guides') },
  { name: 'wraps', at: demo('wraps') },
  { name: 'finish', at: demo('finish') },
  { name: 'bench', at: demo('bench'), width: 390, height: 760 },
  { name: 'papers', at: demo('papers') },
];

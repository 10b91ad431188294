/**
 * What goes with every rod. Each caution has its source; the words are ours. Product data sheets, local rules and
 * qualified people come before this sheet.
 */
interface CareLine {
  title: string;
  words: string;
  source: string;
}

export const cautions: readonly CareLine[] = [
  {
    title: 'Power lines',
    words:
      'Carbon conducts, and electricity can jump to the rod without a touch. Never fish or carry the rod upright near overhead lines: keep at least 30 m (100 ft) away along the ground, carry it down and level, look up before every cast and when you pick a new place.',
    source:
      'Energy Networks Association, safety advice to anglers (30 m); Tukes, Finnish Safety and Chemicals Agency, carbon fibre fishing rods',
  },
  {
    title: 'Lightning',
    words:
      'Stop fishing when 30 seconds or less pass between flash and thunder, or as soon as line or rod tingles. Lay the rod down, do not hold it, and get into a building or a car. Wait 30 minutes after the last thunder.',
    source: 'the 30-30 rule as public weather services publish it; Tukes, carbon fibre fishing rods',
  },
  {
    title: 'High-sticking',
    words:
      'A rod bends over its whole length only while line and butt stand within about a right angle. Lifted past upright under load, or held above the grip, all of the bend goes into the tip, and the tip breaks. Land heavy fish with the butt low; never lift one by the rod.',
    source: 'common practice, no source',
  },
  {
    title: 'Joints',
    words:
      'Line the sections up before pushing; push straight, never twist them together to align. Feel that they still sit after an hour of casting: a loose joint cracks. Take them apart by a straight pull, hands close to the joint, never by the guides. Wax spigots; keep sleeves dry and clean.',
    source: 'common practice, no source',
  },
  {
    title: 'Knocks',
    words:
      'A weighted fly or lure that hits the blank leaves a bruise that breaks on another day. Doors, car boots and fans break more rods than fish do.',
    source: 'common practice, no source',
  },
  {
    title: 'After fishing',
    words:
      'Rinse with fresh water after salt; dry it before it goes into its tube, and leave the cap off until it is dry. Keep it out of hot cars: heat softens finish and glue.',
    source: 'common practice, no source',
  },
  {
    title: 'If it breaks',
    words:
      'Stop at once, mind the splinters, keep every piece and bring them all. The record of this rod is kept.',
    source: 'common practice, no source',
  },
];

/** Each source once, with the cautions it stands behind. */
export function careSources(): { titles: string[]; source: string }[] {
  const found: { titles: string[]; source: string }[] = [];
  for (const { title, source } of cautions) {
    const known = found.find((one) => one.source === source);
    if (known) known.titles.push(title);
    else found.push({ titles: [title], source });
  }
  return found;
}

export interface NextOnHandle {
  words: string;
  /** Path key of the field to go to. */
  at?: string;
  /** The step, or a screen of it, to go on to. */
  goOn?: 'layout' | 'blank/spine' | 'wraps';
}

export interface HandleState {
  /** What its parts cannot be planned for. */
  stopped: string | undefined;
  /** Written in the shop's units where it is only assumed. */
  assumedGripFront: string | undefined;
  /** Every section has its line side. */
  sided: boolean;
  /** What is still to be looked at before glue: names of fields. */
  open: readonly string[];
  glued: boolean;
  tipTopGlued: boolean;
  /** A weight was predicted, or a load test begun: the marks are settled. */
  tested: boolean;
}

/** First where the bend begins; once the rod was loaded, the glue, in the order in which it cannot be undone. */
export function nextOnHandle(state: HandleState): NextOnHandle {
  const { stopped, assumedGripFront, tested } = state;
  const bare = assumedGripFront !== undefined;
  const at = bare ? 'handle/-/gripFront' : undefined;
  if (stopped) return { words: stopped, at, goOn: 'layout' };
  if (bare) {
    const words = `Measure from the butt end to where the front of the grip will be; ${assumedGripFront} is assumed meanwhile.`;
    return { words, at, goOn: 'layout' };
  }
  return tested ? nextOfGlue(state) : { words: setWords(state), goOn: 'layout' };
}

function setWords({ glued, sided }: HandleState): string {
  if (glued) return 'The handle is glued; go on to the layout.';
  const first = sided ? '' : ' and choose the line side under Blank, Sweep and spine';
  return `The handle is set; go on to the layout. Before glue, look at the four points below${first}.`;
}

function nextOfGlue({ glued, tipTopGlued, sided, open }: HandleState): NextOnHandle {
  if (glued) {
    const tip = tipTopGlued ? 'Go on to the wraps.' : 'Glue the tip-top on the same line, then wrap.';
    return { words: `The handle is glued. ${tip}`, goOn: 'wraps' };
  }
  if (!sided) {
    return { words: 'Choose the line side before glue: the reel seat is glued on it.', goOn: 'blank/spine' };
  }
  if (open.length > 0) {
    return { words: 'Look at the four points below, then mix the glue.', at: `handle/-/${open[0]}` };
  }
  return { words: 'Mix the glue, and set seat and grip on the line.', at: 'handle/-/gluedAt' };
}

/** What the rod is and what was measured of it. */
import { rodKindIds } from '../../engine/kinds/rod-kinds.ts';
import {
  angle,
  choice,
  type DocumentSchema,
  flag,
  instant,
  length,
  mass,
  order,
  real,
  row,
  text,
} from './field-kinds.ts';

export const measuredCollections: DocumentSchema = {
  about: {
    single: true,
    fields: {
      title: text(200),
      customer: text(200),
      rodKind: choice(...rodKindIds),
      lineWeight: text(60),
      note: text(20_000),
      /** Invented demonstration data; never the builder's own. */
      demo: flag,
      createdAt: instant,
      /** The build this one was begun from. */
      againFrom: text(60),
    },
  },
  blank: {
    single: true,
    fields: {
      label: text(200),
      /** What the builder calls the series this blank is one of; blanks of one name are learnt from together. */
      series: text(120),
      /** The builder's word: the others of its series are heard in its stiffness. */
      withSeries: flag,
      material: choice('carbon', 'glass', 'unknown'),
      /** Surface strain in percent at which the bend warns and stops; empty: the documented default of the material. */
      strainCautionPercent: real(0.01, 5),
      strainStopPercent: real(0.01, 5),
      /** Whole-blank mass where sections were not weighed singly. */
      mass: mass(),
      /** Builder's word that ferrules are wrapped or tightly bound; gates the heavy loads. */
      ferrulesBound: flag,
    },
  },
  /** Sections from the tip down. */
  sections: {
    single: false,
    fields: {
      order,
      name: text(60),
      length: length(),
      mass: mass(),
      /** Balance point from this section's own tip-side end. */
      balanceFromOwnTip: length(),
      /** The joint at this section's butt end, to the next section down. */
      joint: choice('sleeve', 'spigot', 'put-in', 'put-over'),
      /** How deep the two sections overlap when seated (sleeve, put-in, put-over). */
      overlap: length(),
      /** Visible gap of a seated spigot, and the length of its plug. */
      spigotGap: length(),
      spigotLength: length(),
      /** How many times stiffer the joint's zone is than the blank beside it; empty: not stated. */
      jointStiffness: real(0.1, 20),
      /** Line side chosen by the builder: angle from the reference mark, how it was found, what it refers to. */
      lineSideAngle: angle(),
      lineSideReference: text(200),
      lineSideMethod: text(200),
      /** Of every wrap over a foot on this section, where the builder wants his own. */
      wrapLength: length(0, 0.1),
      gone: flag,
    },
  },
  diameters: {
    single: false,
    fields: { section: row('sections'), fromOwnTip: length(), outside: length(0, 0.1), gone: flag },
  },
  setups: {
    single: false,
    fields: {
      order,
      name: text(120),
      /** The day it was read, in the builder's words; empty: the first day. */
      day: text(40),
      kind: choice('clamp', 'span'),
      /** Nominal angle of the axis at the clamp above the horizontal. */
      nominalAngle: angle(),
      clampFromTip: length(),
      /** Height of the clamp over the floor, for the floor check. */
      clampHeight: length(),
      /** The blank's rotation about its own axis. */
      turned: angle(),
      /** Which line of the blank was read. */
      edge: choice('axis', 'upper', 'lower'),
      supportTipSide: length(),
      supportButtSide: length(),
      loadFromTip: length(),
      /** Standard deviation of the readings, and of the clamp's tilt. */
      sigma: length(0, 0.1),
      tiltSigma: angle(),
      gone: flag,
    },
  },
  /** One hung weight (or none) of a set-up. */
  tests: {
    single: false,
    fields: {
      order,
      setup: row('setups'),
      hung: mass(),
      hungFromTip: length(),
      /** Span set-ups: sag at the load. */
      sag: length(-1, 2),
      gone: flag,
    },
  },
  readings: {
    single: false,
    fields: {
      order,
      test: row('tests'),
      fromTip: length(),
      /** Right at the clamp, wherever that stands; then without `fromTip`. */
      atClamp: flag,
      drop: length(-10, 10),
      /** Left out of the fit by the builder. */
      setAside: flag,
      gone: flag,
    },
  },
  /** Flags of a set-up measured once more, from the clamp along the blank. */
  flagChecks: {
    single: false,
    fields: {
      order,
      setup: row('setups'),
      /** The flag's station as its readings state it. */
      fromTip: length(),
      fromClamp: length(),
      gone: flag,
    },
  },
  /** A section turned about its own axis in steps: held in a clamp or on two supports, read under two loads. */
  turnings: {
    single: false,
    fields: {
      order,
      section: row('sections'),
      held: choice('span', 'clamp'),
      /** The lighter load; empty: nothing is hung. */
      loadA: mass(),
      loadB: mass(),
      /** Standard deviation of one reading. */
      sigma: length(0, 0.1),
      gone: flag,
    },
  },
  /** One step of a turning: which angle round the section faces down, and what was read under each load. */
  turnReadings: {
    single: false,
    fields: {
      order,
      turning: row('turnings'),
      turn: angle(),
      dropA: length(-5, 5),
      dropB: length(-5, 5),
      setAside: flag,
      gone: flag,
    },
  },
  /** Swings counted by hand, to be set beside what is predicted. */
  swings: {
    single: false,
    fields: {
      order,
      /** The bare blank, or the rod with its guides, wraps and finish. */
      rod: choice('bare', 'finished'),
      /** Where the clamp's edge or the hand held it; empty: the front of the grip. */
      clampFromTip: length(),
      counted: real(1, 1000),
      seconds: real(0.1, 3600),
      gone: flag,
    },
  },
};

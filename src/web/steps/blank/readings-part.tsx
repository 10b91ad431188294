import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Stand } from '../../../record/read-load-tests.ts';
import { setupName } from '../../../record/row-names.ts';
import { boughtByNext, boughtInWords } from '../../../words/next-reading.ts';
import { Figure } from '../../fields/figure.tsx';
import { Caution } from '../../parts/cautions/caution.tsx';
import { LeadCaution } from '../../parts/cautions/lead-caution.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useOpenParts } from '../../read/open-parts.ts';
import { useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';
import { ChooseProtocol } from './choose-protocol.tsx';
import { NextReadingPart } from './next-reading-part.tsx';
import { PicturesCard } from './pictures-card.tsx';
import { ProtocolPrint } from './protocol-print.tsx';
import { countReadings, type SetupRows } from './reading-rows.ts';
import { SetupCard } from './setup-card.tsx';
import { SpanCard } from './span-card.tsx';
import { type NextReadingState, useNextReading } from './use-next-reading.ts';

/** The bend of the blank as read on the bench, set-up by set-up. */
export function ReadingsPart({ setups, stands }: { setups: readonly SetupRows[]; stands: readonly Stand[] }) {
  const { open: all } = useOpenParts();
  const { read, planned } = countReadings(setups);
  const [picked, pick] = useState<string>();
  const next = useNextReading();
  const at = Math.max(
    0,
    picked === undefined ? firstOpen(setups) : setups.findIndex(({ setup }) => setup.id === picked),
  );
  return (
    <div data-path="readings" data-group="leads" tabIndex={-1}>
      <Part
        title="Readings"
        anchor="readings"
        aside={planned > 0 ? `${read} of ${planned} taken` : 'how the blank bends under weights'}
        tools={setups.length > 0 && <ProtocolPrint setups={setups} />}
      >
        {stands.map((stand) => (
          <PicturesCard key={stand.id} stand={stand} />
        ))}
        {setups.length === 0 ? (
          <>
            <ReadingCautions />
            {stands.length === 0 ? (
              <ChooseProtocol standing={setups} />
            ) : (
              <details className="screen-only">
                <summary>Measure in another way as well</summary>
                <ChooseProtocol standing={setups} />
              </details>
            )}
          </>
        ) : (
          <>
            <WhatItBuys next={next} />
            {!all && <SetupRail setups={setups} current={at} onPick={pick} />}
            {setups.map((rows, index) => {
              if (!all && index !== at) return null;
              const Card = textOf(rows.setup, 'kind') === 'span' ? SpanCard : SetupCard;
              return <Card key={rows.setup.id} rows={rows} index={index} />;
            })}
            <ReadingCautions />
            <NextReadingPart setups={setups} next={next} />
            <details className="screen-only">
              <summary>Measure in another way as well</summary>
              <ChooseProtocol standing={setups} />
            </details>
          </>
        )}
      </Part>
    </div>
  );
}

/** The first set-up with something still to read; the last where all is read. */
function firstOpen(setups: readonly SetupRows[]): number {
  const open = setups.findIndex((rows) => !isRead(rows));
  return open < 0 ? setups.length - 1 : open;
}

function isRead(rows: SetupRows): boolean {
  const { read, planned } = countReadings([rows]);
  return read === planned;
}

interface SetupRailProps {
  setups: readonly SetupRows[];
  current: number;
  onPick(id: string): void;
}

/** The set-ups in the order they are taken, how much of each is read, and the one at hand. */
function SetupRail({ setups, current, onPick }: SetupRailProps) {
  return (
    <nav className="setup-rail screen-only" aria-label="Set-ups">
      {setups.map((rows, index) => {
        const { read, planned } = countReadings([rows]);
        return (
          <Button
            key={rows.setup.id}
            className="setup-tab"
            aria-current={index === current ? 'step' : undefined}
            data-holds={fieldsOf(rows)}
            onPress={() => onPick(rows.setup.id)}
          >
            <span>
              {index + 1} {setupName(rows.setup, index)}
            </span>
            <meter value={read} max={Math.max(1, planned)} aria-hidden="true" />
            <span className="small">
              {read} of {planned}
            </span>
          </Button>
        );
      })}
    </nav>
  );
}

/** Beginnings of the paths of everything that is filled in on one set-up's card. */
function fieldsOf({ setup, tests }: SetupRows): string {
  const rows = tests.flatMap(({ test, readings }) => [
    `tests/${test.id}/`,
    ...readings.map(({ id }) => `readings/${id}/`),
  ]);
  return [`setups/${setup.id}/`, ...rows].join(' ');
}

/** Before anything is hung. */
function ReadingCautions() {
  return (
    <div className="cautions">
      <Caution
        about="readings"
        brief="Eyes covered. Stand out of the plane in which the blank bends."
        source="common practice, no source; strain levels are a judgement from published laminate strengths"
      >
        Eye protection on, and stand out of the plane in which the blank bends. Add weight slowly, low over
        the floor, never over feet. A blank can break below any level named here.
      </Caution>
      <LeadCaution />
    </div>
  );
}

const bar = { width: 240, height: 14 };

/** How well the marks are known by now, and what the next readings would buy: one line over one bar. */
function WhatItBuys({ next: { answer, missing, failure } }: { next: NextReadingState }) {
  const { writer } = useShop();
  const bought = !missing && !failure && answer ? boughtByNext(answer) : undefined;
  if (!bought) return null;
  const share = (lengthM: number) => (bar.width * Math.min(lengthM, bought.nowM)) / bought.nowM;
  return (
    <div className="what-it-buys screen-only" role="status">
      <p>
        <Figure text={boughtInWords(bought, writer)} />
      </p>
      <svg viewBox={`0 0 ${bar.width} ${bar.height}`} width={bar.width} aria-hidden="true">
        <rect y={3} width={bar.width} height={8} className="bought-now" />
        <rect y={3} width={share(bought.thenM)} height={8} className="bought-then" />
        <path d={`M${share(bought.slackM)} 0v${bar.height}`} className="bought-slack" />
      </svg>
    </div>
  );
}

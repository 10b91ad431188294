import { Link } from 'wouter';
import { demoBend } from './demo-bend.ts';
import { DemoFigure, worstGuide } from './demo-figure.tsx';
import './welcome.css';

/** What Fairbend is for, shown on the demo, as long as nothing of the builder's own stands on the shelf. */
export function Welcome({ demoId, leave }: { demoId: string; leave(): void }) {
  const { ourDegrees, startDegrees, limitDegrees, loadGrams } = demoBend;
  return (
    <section className="welcome" aria-labelledby="welcome-head">
      <div className="welcome-words">
        <h2 id="welcome-head">How this blank bends, and where its guides go</h2>
        <p>
          Measure a blank with a tape, a scale and a few weights. Fairbend finds how stiff it is along its
          length, shows it bent with the line running through its guides, says how far any layout is from
          even, and places the guides within your limits. Marks, wraps, finish and the papers follow.
        </p>
        <p className="welcome-worst">
          The demo under {loadGrams} g: placed for this blank, the line turns{' '}
          {ourDegrees[worstGuide.ours].toFixed(1)}° at guide {worstGuide.ours + 1}, limit {limitDegrees}°. The
          start, an arithmetic rule, turns it {startDegrees[worstGuide.start].toFixed(1)}°{' '}
          {worstGuide.start === worstGuide.ours ? 'there' : `at guide ${worstGuide.start + 1}`}.
        </p>
        <p>
          <Link className="button button-main" href={`/builds/${demoId}/layout`} onClick={leave}>
            Open the demo’s layout
          </Link>
        </p>
        <p>For your own blank press New build and give its sections; one weight is enough to begin.</p>
        <p className="aside">
          The demo is invented. Nobody has yet hung a weight on a real blank beside this page: trust your own
          load test more.
        </p>
      </div>
      <DemoFigure />
    </section>
  );
}

/** The four steps on the page, each with its drawing; and the ways out of it: full screen, and paper. */
import { useId, useMemo, useState } from 'react';
import { type Story, type StoryStep, storyOf } from '../../figures/story.ts';
import { type StoryStep as Step, useSession } from '../../store/session.ts';
import { useTheme } from '../../store/theme.ts';
import { PrintOn } from '../parts/PrintOn.tsx';
import type { Worked } from '../plan/worked.ts';
import { FullStory } from './FullStory.tsx';
import { Picture, PictureKey } from './Picture.tsx';
import { Said } from './Said.tsx';
import { StoryPage } from './StoryPage.tsx';
import './show.css';

export function ShownStory({ bench }: { readonly bench: Worked }) {
  const { job, bore, boreSeen, joint } = bench;
  const story = useMemo(() => storyOf(job, bore, boreSeen, joint), [job, bore, boreSeen, joint]);
  const [full, setFull] = useState(false);
  return (
    <>
      <p className="soft">
        The story for the person who pays. Point at a step, or tap it, and the drawing shows it.
      </p>
      <Steps story={story} bench={bench} />
      <PictureKey story={story} />
      <p className="facts show-tools">
        <button type="button" className="plain-button" onClick={() => setFull(true)}>
          Full screen
        </button>{' '}
        <span>
          Print it on one page{' '}
          <PrintOn units={job.units}>
            {(paper) => <StoryPage bench={bench} story={story} paper={paper} />}
          </PrintOn>
        </span>
      </p>
      {full && <FullStory bench={bench} story={story} close={() => setFull(false)} />}
    </>
  );
}

interface StepsProps {
  readonly story: Story;
  readonly bench: Worked;
}

function Steps({ story, bench }: StepsProps) {
  const shown = useSession((session) => session.story);
  return (
    <ol className="story">
      {story.steps.map((one) => (
        <OneStep key={one.step} told={one} bench={bench} shown={shown === one.step} />
      ))}
    </ol>
  );
}

interface OneStepProps {
  readonly told: StoryStep;
  readonly bench: Worked;
  readonly shown: boolean;
}

function OneStep({ told, bench, shown }: OneStepProps) {
  const theme = useTheme((state) => state.shown);
  const look = useSession((session) => session.look);
  const id = useId();
  const [held, setHeld] = useState(false);
  const show = (story: Step | null) => look({ story });
  return (
    <li
      data-shown={shown}
      onPointerEnter={({ pointerType }) => pointerType === 'mouse' && show(told.step)}
      onPointerLeave={({ pointerType }) => pointerType === 'mouse' && !held && show(null)}
    >
      <Picture told={told} units={bench.job.units} theme={theme} />
      <div>
        <button
          type="button"
          className="story-say"
          aria-pressed={shown}
          aria-describedby={id}
          onFocus={() => show(told.step)}
          onBlur={() => {
            setHeld(false);
            show(null);
          }}
          onClick={() => {
            // A tap that brought the focus has shown it already; the next one puts it away.
            show(held ? null : told.step);
            setHeld(!held);
          }}
        >
          <span className="story-title">{told.title}</span>
          <Said text={told.say} />
        </button>
        <div id={id} className="story-more">
          {told.more.map((text) => (
            <p key={text}>
              <Said text={text} />
            </p>
          ))}
        </div>
      </div>
    </li>
  );
}

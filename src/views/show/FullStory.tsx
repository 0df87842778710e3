/** The story over the whole screen, large enough to be read across a bench: all four steps, or one at a time. */
import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import { STORY_CAUTION, type Story } from '../../figures/story.ts';
import { useTheme } from '../../store/theme.ts';
import type { Worked } from '../plan/worked.ts';
import { Picture, PictureKey } from './Picture.tsx';
import { Said } from './Said.tsx';
import { useFullScreen } from './useFullScreen.ts';
import './fullStory.css';

export interface FullStoryProps {
  readonly bench: Worked;
  readonly story: Story;
  close(): void;
}

/** Narrower than this, four columns of large letters do not fit. */
const WIDE = '(min-width: 1000px)';

export function FullStory({ bench, story, close }: FullStoryProps) {
  const [all, setAll] = useState(() => matchMedia(WIDE).matches);
  const [at, setAt] = useState(0);
  const page = useRef<HTMLElement>(null);
  const last = story.steps.length - 1;
  useFullScreen(close);
  useEffect(() => page.current?.focus(), []);
  const go = (by: -1 | 1) => {
    setAll(false);
    setAt((now) => (all ? now : Math.min(last, Math.max(0, now + by))));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape') close();
    else if (event.key === 'ArrowRight' || event.key === 'PageDown') go(1);
    else if (event.key === 'ArrowLeft' || event.key === 'PageUp') go(-1);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const shown = all ? story.steps : story.steps.slice(at, at + 1);
  return createPortal(
    <section
      className="full-story"
      ref={page}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it takes the arrow keys
      tabIndex={0}
      aria-label="The story, full screen. Left and right arrow go through its steps, Escape goes back."
      onKeyDown={onKeyDown}
    >
      <header className="full-head">
        <h2 className="full-title">
          {bench.job.title} <small>{bench.bore.name}</small>
        </h2>
        <button type="button" className="plain-button full-button" onClick={() => setAll(!all)}>
          {all ? 'one at a time' : 'all four'}
        </button>
        <button type="button" className="plain-button full-button" onClick={close}>
          Back
        </button>
      </header>
      <ol className="full-steps" data-all={all} aria-live="polite">
        {shown.map((told) => (
          <FullStep key={told.step} told={told} bench={bench} all={all} />
        ))}
      </ol>
      {!all && (
        <nav className="full-turn" aria-label="Steps of the story">
          <button
            type="button"
            className="plain-button full-button"
            disabled={at === 0}
            onClick={() => go(-1)}
          >
            ‹ before
          </button>
          <span>
            {at + 1} of {story.steps.length}
          </span>
          <button
            type="button"
            className="plain-button full-button"
            disabled={at === last}
            onClick={() => go(1)}
          >
            next ›
          </button>
        </nav>
      )}
      <PictureKey story={story} />
      <p className="soft story-key">{STORY_CAUTION}</p>
    </section>,
    document.body,
  );
}

interface FullStepProps {
  readonly told: Story['steps'][number];
  readonly bench: Worked;
  readonly all: boolean;
}

function FullStep({ told, bench, all }: FullStepProps) {
  const theme = useTheme((state) => state.shown);
  return (
    <li className={all ? undefined : 'full-one'}>
      <Picture told={told} units={bench.job.units} theme={theme} />
      <div>
        <h3 className="full-name">{told.title}</h3>
        <p className="full-say">
          <Said text={told.say} />
        </p>
        {!all &&
          told.more.map((text) => (
            <p key={text} className="full-more">
              <Said text={text} />
            </p>
          ))}
      </div>
    </li>
  );
}

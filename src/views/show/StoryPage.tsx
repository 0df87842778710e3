/** The story on one sheet of paper, black on white: pictures, map, what it rests on, and a line to sign. */
import { useId } from 'react';
import { FlatMap } from '../../drawings/FlatMap.tsx';
import { mapFigure } from '../../figures/map.ts';
import { mapFrame } from '../../figures/mapFrame.ts';
import { PAPERS, type Paper } from '../../figures/paper.ts';
import { STORY_CAUTION, type Story } from '../../figures/story.ts';
import type { Worked } from '../plan/worked.ts';
import { today } from '../today.ts';
import { Picture, PictureKey } from './Picture.tsx';
import { Said } from './Said.tsx';
import './storyPage.css';

export interface StoryPageProps {
  readonly bench: Worked;
  readonly story: Story;
  readonly paper: Paper;
}

export function StoryPage({ bench, story, paper }: StoryPageProps) {
  const { job, bore } = bench;
  const { width, height } = PAPERS[paper];
  const where = [job.machine, job.place, bore.name].filter((text) => (text ?? '') !== '');
  return (
    <article className="story-page" style={{ width: `${width}mm`, height: `${height - 1}mm` }}>
      <header className="page-head">
        <h1 className="page-title">{job.title}</h1>
        <p className="page-where">
          {where.join(' · ')} <time>{today()}</time>
        </p>
      </header>
      <ol className="page-steps">
        {story.steps.map((told) => (
          <li key={told.step} className="page-step">
            <Picture told={told} units={job.units} theme="sunlight" />
            <div>
              <h2 className="page-name">{told.title}</h2>
              <p className="page-say">
                <Said text={told.say} />
              </p>
              <p>
                <Said text={told.more.join(' ')} />
              </p>
            </div>
          </li>
        ))}
      </ol>
      <PictureKey story={story} />
      <StoryMap bench={bench} story={story} />
      <footer className="page-foot">
        {story.basis.length > 0 && (
          <p>
            <b>It rests on</b> {story.basis.join(' ')}
          </p>
        )}
        <p>{STORY_CAUTION}</p>
        <p className="page-sign">
          <span>Name</span>
          <span>Signature</span>
          <span>Date</span>
        </p>
      </footer>
    </article>
  );
}

/** Room for the map on the page, px of its own drawing; the page scales it. */
const MAP = { width: 760, height: 230 } as const;

function StoryMap({ bench: { job, boreSeen }, story }: Omit<StoryPageProps, 'paper'>) {
  const id = useId();
  const chapter = story.chapters.work ?? story.chapters.worn;
  const whole = chapter && mapFigure(chapter.seen, boreSeen.facts, job.units);
  if (chapter === null || whole === null) return null;
  // Where to read next is the shop's business.
  const map = { ...whole, next: [] };
  const counted =
    map.about === 'target'
      ? 'minus stands in the way and comes off, plus is short of metal; unbroken lines and broken lines say the same'
      : 'minus is smaller than the average of the whole wall, plus is larger';
  return (
    <figure className="page-map">
      <FlatMap map={map} frame={mapFrame(map, MAP.width, MAP.height)} theme="sunlight" id={id} />
      <figcaption>
        The wall rolled out flat, as read in “{chapter.typed.name}”, {map.face}, rim on top. Figures
        are per side: {counted}. Slanting lines: not well known.
      </figcaption>
    </figure>
  );
}

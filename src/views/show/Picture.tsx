/** A step's small drawing with what must be known to read it: where it is cut, and how much wear is exaggerated. */
import { useId } from 'react';
import { StoryDrawing } from '../../drawings/StoryDrawing.tsx';
import type { Theme } from '../../figures/colour.ts';
import type { Story, StoryStep } from '../../figures/story.ts';
import type { Units } from '../../job/schema.ts';
import { formatDepth } from '../../job/units.ts';

export interface PictureProps {
  readonly told: StoryStep;
  readonly units: Units;
  readonly theme: Theme;
}

export function Picture({ told: { picture, title, say }, units, theme }: PictureProps) {
  const id = useId();
  if (picture === null) return <div className="story-blank" aria-hidden="true" />;
  const where = Number.isNaN(picture.z) ? '' : `cut ${formatDepth(picture.z, units)} deep`;
  return (
    <figure className="story-picture">
      <StoryDrawing
        picture={picture}
        theme={theme}
        words={`${title}, seen looking in at face A${where === '' ? '' : `, ${where}`}: ${say}`}
        id={id}
      />
      <figcaption>{where === '' ? 'from face A' : where}</figcaption>
    </figure>
  );
}

/** How the four drawings are to be read. */
export function PictureKey({ story }: { readonly story: Story }) {
  const drawn = story.steps.map(({ picture }) => picture).find((one) => one !== null);
  if (drawn === undefined) return null;
  const wear = drawn.exaggeration === 1 ? 'at true size' : `${drawn.exaggeration} times`;
  return (
    <p className="soft story-key">
      All seen looking in at face A, wear drawn {wear}. Dotted: wider than it should be. Slanting
      lines: metal to take off. The broken circle: the size when new, or the size wanted.
    </p>
  );
}

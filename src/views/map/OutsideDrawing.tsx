/** A pin or a bushing's outside: not a hole, so that its sizes along the depth are all that is drawn of it. */
import { useMemo, useRef } from 'react';
import { ProfileView } from '../../drawings/ProfileView.tsx';
import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import type { Theme } from '../../figures/colour.ts';
import { profileFigure } from '../../figures/profileFigure.ts';
import type { Units } from '../../job/schema.ts';
import { inUnits } from '../../job/units.ts';
import { useCursor } from '../../store/useCursor.ts';
import { Grown } from '../parts/Grown.tsx';
import { useSize } from '../useSize.ts';
import './map.css';

interface Props {
  readonly part: BoreEvaluation;
  readonly survey: SurveyEvaluation;
  readonly units: Units;
  readonly theme: Theme;
}

const MOST_HIGH = 420;

export function OutsideDrawing({ part, survey, units, theme }: Props) {
  const profile = useMemo(
    // Nothing sits in an outside.
    () => profileFigure(survey, { ...part.facts, seats: [] }, units),
    [survey, part.facts, units],
  );
  const cursor = useCursor();
  const room = useRef<HTMLElement>(null);
  const { width, height } = useSize(room);
  const high = Math.min(MOST_HIGH, Math.round(0.75 * height));
  return (
    <figure className="outside-drawing" ref={room}>
      {profile !== null && width > 0 && high > 0 && (
        <Grown theme={theme} width={width} height={high}>
          {(across, down) => (
            <ProfileView
              profile={profile}
              theme={theme}
              width={Math.round(across)}
              height={Math.round(down)}
              at={cursor === null ? null : inUnits(cursor.z, units)}
            />
          )}
        </Grown>
      )}
      <figcaption>
        {part.name}: diameter across against depth, both in{' '}
        {units === 'in' ? 'inches' : 'millimetres'}, face A at the left. Full line: mean; dashed:
        least; dotted: greatest; bars: least to greatest at the measured depths. An outside is not
        drawn as a hole.
      </figcaption>
    </figure>
  );
}

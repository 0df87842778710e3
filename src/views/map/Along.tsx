/** The bore's size along its depth; pointing in it moves the cursor along the depth. */
import { useMemo } from 'react';
import { ProfileView } from '../../drawings/ProfileView.tsx';
import { middleOf } from '../../figures/bend.ts';
import { profileFigure } from '../../figures/profileFigure.ts';
import { depthScale } from '../../figures/profileFrame.ts';
import { lineWords, profileSentence } from '../../figures/profileWords.ts';
import { inUnits, MM_PER_INCH } from '../../job/units.ts';
import { useSession } from '../../store/session.ts';
import { useCursor } from '../../store/useCursor.ts';
import { PointArea } from './PointArea.tsx';
import type { SheetProps } from './sheetProps.ts';
import { heightOfWords } from './wordsRoom.ts';

/** The arrow that goes to the right goes inward, as the depth does here. */
const KEYS: Readonly<Record<string, string>> = {
  ArrowLeft: 'ArrowUp',
  ArrowRight: 'ArrowDown',
  Home: 'Home',
  End: 'End',
  Escape: 'Escape',
};
/** The picture keeps this height before there are more words than the sentence. */
const PICTURE = 150;

export function Along({ survey, facts, map, theme, width, height }: SheetProps) {
  const { units } = map;
  const profile = useMemo(() => profileFigure(survey, facts, units), [survey, facts, units]);
  const cursor = useCursor();
  if (profile === null) return null;
  const sentence = profileSentence(survey, cursor?.z ?? null, units);
  const across = Math.round(width);
  const whole = `${sentence} ${lineWords(profile)}`;
  const words = height - heightOfWords(whole, width) >= PICTURE ? whole : sentence;
  const high = Math.max(76, Math.round(height - heightOfWords(words, width)));
  return (
    <figure className="sheet-figure" data-words="below" style={{ width, height }}>
      <PointArea
        className="profile-view"
        label={`Size along the depth. ${sentence} Left and right arrow move along the depth, with Shift an eighth of it; Home is the rim, End the bottom.`}
        wall={map}
        keyOf={(key) => KEYS[key]}
        onPoint={(x) => {
          const depth = depthScale(profile, across).invert(x);
          const { cursor: before, look } = useSession.getState();
          const z = Math.min(map.height, depth * (units === 'in' ? MM_PER_INCH : 1));
          look({ cursor: { theta: before?.theta ?? middleOf(map.cut), z } });
        }}
      >
        <ProfileView
          profile={profile}
          theme={theme}
          width={across}
          height={high}
          at={cursor === null ? null : inUnits(cursor.z, units)}
        />
      </PointArea>
      <figcaption>{words}</figcaption>
    </figure>
  );
}

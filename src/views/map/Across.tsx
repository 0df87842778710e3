/** The bore cut across at the cursor's depth; pointing in it moves the cursor round the clock. */
import { useMemo, useState } from 'react';
import { CircleKey } from '../../drawings/CircleKey.tsx';
import { SectionView } from '../../drawings/SectionView.tsx';
import { turned } from '../../figures/sample.ts';
import { sectionFigure } from '../../figures/sectionFigure.ts';
import { sectionWords } from '../../figures/sectionWords.ts';
import { signedText } from '../../figures/signed.ts';
import { wallAt } from '../../figures/wall.ts';
import { handAt } from '../../store/centres.ts';
import { useSession } from '../../store/session.ts';
import { useCursor } from '../../store/useCursor.ts';
import { useJob } from '../../store/useJob.ts';
import { CentreCross } from './CentreCross.tsx';
import { PointArea } from './PointArea.tsx';
import type { SheetProps } from './sheetProps.ts';
import { heightOfWords } from './wordsRoom.ts';

const LEAST_PICTURE = 100;
/** Words go beside a picture that keeps this size, px. */
const LEAST_BESIDE = 170;
/** Room for the words beside the picture; under it the key comes only where it is high. */
const WORDS_WIDE = 180;
const KEY_HIGH = 100;
const KEY_FROM = 400;

/** Where nobody points, the depth of the first readings is shown. */
export function Across({ survey, map, wall, theme, exaggeration, width, height }: SheetProps) {
  const cursor = useCursor();
  const z = cursor?.z ?? survey.sections[0]?.z ?? 0;
  const hand = useHand(survey, wall);
  // A drag goes on at the scale at which it began.
  const [held, setHeld] = useState<number | null>(null);
  const drawn = held ?? exaggeration;
  const still = hand !== null;
  const section = useMemo(() => sectionFigure(survey, z, drawn, still), [survey, z, drawn, still]);
  const { units } = map;
  const words = useMemo(
    () => (section === null ? null : sectionWords(section, units)),
    [section, units],
  );
  if (section === null || words === null) return null;
  const wide = width >= Math.min(height, LEAST_BESIDE) + WORDS_WIDE;
  const keyed = wide ? height >= 130 : height >= KEY_FROM;
  const said = words.short(drawn);
  const under = heightOfWords(said, width) + (keyed ? KEY_HIGH : 0);
  const size = Math.round(
    Math.max(
      LEAST_PICTURE,
      wide ? Math.min(height, width - WORDS_WIDE) : Math.min(width, height - under),
    ),
  );
  const here = cursor === null ? null : wallAt(wall, cursor.theta, cursor.z);
  return (
    <figure
      className="sheet-figure"
      data-words={wide ? 'beside' : 'below'}
      style={{ width, height }}
    >
      <div className="section-room">
        <PointArea
          className="section-view"
          label={`Cut across. ${words.sentence} Left and right arrow move round the clock, with Shift an hour.`}
          wall={map}
          keyOf={(key) =>
            key === 'ArrowLeft' || key === 'ArrowRight' || key === 'Escape' ? key : undefined
          }
          onPoint={(x, y) => {
            const theta = turned(Math.atan2(x - size / 2, size / 2 - y));
            useSession.getState().look({ cursor: { theta, z } });
          }}
        >
          <SectionView
            section={section}
            words={words}
            theme={theme}
            size={size}
            at={
              cursor === null || here === null
                ? null
                : { theta: cursor.theta, text: signedText(here.deviation, here.give, units) }
            }
          />
        </PointArea>
        {hand !== null && (
          <CentreCross
            {...{ section, theme, units, size, hand }}
            onHold={(holds) => setHeld(holds ? drawn : null)}
          />
        )}
      </div>
      <figcaption>
        <p>{said}</p>
        {keyed && <CircleKey circles={words.circles} theme={theme} />}
      </figcaption>
    </figure>
  );
}

/** Where the centre is set by hand; null where it is not, or something else than the bore against its target is drawn. */
function useHand(survey: SheetProps['survey'], wall: SheetProps['wall']) {
  const at = useSession((session) => session.bore);
  const bore = useJob(({ job }) => job?.features[at]?.id);
  const centre = useJob(({ job }) => job?.features[at]?.decisions.centre);
  if (bore === undefined || wall.about !== 'target') return null;
  return handAt(bore, centre, survey);
}

/** A made-up pattern beside the bore at hand: cut across, along the depth, and rolled out, in one scale of colours. */
import { useId, useMemo, useRef } from 'react';
import { FlatMap } from '../../drawings/FlatMap.tsx';
import { TwoEarsView } from '../../drawings/MiniWearView.tsx';
import { ProfileView } from '../../drawings/ProfileView.tsx';
import { SectionView } from '../../drawings/SectionView.tsx';
import type { BoreFacts, SurveyEvaluation } from '../../evaluate.ts';
import { matchWords } from '../../figures/galleryMatch.ts';
import { sharedScale } from '../../figures/heldAgainst.ts';
import { type MapFigure, mapFigure } from '../../figures/map.ts';
import { mapFrame } from '../../figures/mapFrame.ts';
import { profileFigure } from '../../figures/profileFigure.ts';
import { sectionFigure } from '../../figures/sectionFigure.ts';
import { sectionWords } from '../../figures/sectionWords.ts';
import type { Steps } from '../../figures/steps.ts';
import { formatDepth } from '../../job/units.ts';
import { madeBore } from '../../practice/madeBore.ts';
import { toBeSeen } from '../../practice/patternReadings.ts';
import type { MadePattern, Scale } from '../../practice/patterns.ts';
import { useTheme } from '../../store/theme.ts';
import { Grown } from '../parts/Grown.tsx';
import { Words } from '../parts/Words.tsx';
import { useSize } from '../useSize.ts';
import type { Held } from './useHeld.ts';

export interface PicturesProps {
  readonly pattern: MadePattern;
  readonly scale: Scale;
  readonly held: Held;
}

export function Pictures({ pattern, scale, held }: PicturesProps) {
  const theme = useTheme(({ shown }) => shown);
  const made = useMemo(
    () => madeBore(pattern.truth(scale), scale.radius, scale.length),
    [pattern, scale],
  );
  const { own, units } = held;
  const shared = useMemo(
    () => sharedScale([made.survey, ...(own === null ? [] : [own.counted.survey])], units),
    [made, own, units],
  );
  if (pattern.usual === 0) {
    const words =
      'Two ears cut along their depth, their axes out of line: the straight bar touches above in one and below in the other';
    return (
      <figure className="gallery-ears">
        <TwoEarsView theme={theme} words={words} />
        <figcaption>
          Each bore is good by itself. The straight bar touches where the rings are, and a pin as
          thick as the bores does not go through. Drawn far more out of line than in life.
        </figcaption>
      </figure>
    );
  }
  const cuts = pattern.cuts.map((share) => share * scale.length);
  const depths = pattern.depths.map((share) => share * scale.length);
  const along = toBeSeen(pattern.truth(scale), scale.radius, depths).along > ALONG * scale.size;
  const common = { ...shared, cuts, units, along };
  return (
    <div className="gallery-pictures">
      <Side head="Made up" {...common} survey={made.survey} facts={made.facts} />
      {own !== null && (
        <Side
          head={`This bore, “${own.bench.surveySeen.name}”`}
          {...common}
          survey={own.counted.survey}
          facts={{ ...own.bench.boreSeen.facts, keepouts: [] }}
        />
      )}
      <p className="gallery-match">
        Both are counted from the size when new
        {own === null ? '' : NEW_SIZE[own.counted.from]}, per side; wear drawn {shared.exaggeration}{' '}
        times. Teal and broken lines: worn away. Copper and unbroken lines: metal stands proud.{' '}
        {own !== null && (
          <b>
            <Words
              text={matchWords(pattern.name, own.bench.surveySeen, own.bench.boreSeen, units)}
            />
          </b>
        )}
      </p>
    </div>
  );
}

/** Size that changes along the depth by more than this share of the wear is worth a picture of its own. */
const ALONG = 0.12;

/** Where the new size of the bore at hand is from. */
const NEW_SIZE = {
  stated: '',
  bushing: ' (this bore’s is taken from its bushing)',
  narrowest: ' (this bore’s is not written down: its narrowest place stands for it)',
} as const;

interface SideProps {
  readonly head: string;
  readonly survey: SurveyEvaluation;
  readonly facts: BoreFacts;
  readonly units: Held['units'];
  readonly steps: Steps;
  readonly exaggeration: number;
  readonly cuts: readonly number[];
  /** Its size along the depth is shown. */
  readonly along: boolean;
}

/** Widths of the drawings, px. */
const SECTION = { one: 230, two: 186, least: 150 } as const;
/** Room between two cuts, as the style sheet has it. */
const BETWEEN = 8;
const MAP_HIGH = 260;
const PROFILE = { most: 420, height: 150 } as const;

function Side({ head, survey, facts, units, steps, exaggeration, cuts, along }: SideProps) {
  const theme = useTheme(({ shown }) => shown);
  const id = useId();
  const room = useRef<HTMLElement>(null);
  const { width } = useSize(room);
  const half = Math.floor((width - BETWEEN) / 2);
  const size = cuts.length > 1 ? Math.min(SECTION.two, Math.max(SECTION.least, half)) : SECTION.one;
  const map = useMemo(
    () => plain(mapFigure(survey, facts, units, Math.PI, steps)),
    [survey, facts, units, steps],
  );
  const profile = useMemo(() => {
    const found = profileFigure(survey, facts, units);
    // What is wanted of the bore, and where its bushing sits, is no matter here.
    return found && { ...found, target: Number.NaN, seats: [] };
  }, [survey, facts, units]);
  return (
    <figure className="gallery-side" ref={room}>
      <figcaption>{head}</figcaption>
      <div className="gallery-cuts">
        {cuts.map((z) => {
          const found = sectionFigure(survey, z, exaggeration);
          // The circles of a plan are no matter here.
          const section = found && { ...found, circles: [] };
          return (
            section && (
              <div key={z}>
                <Grown theme={theme} width={size} height={size}>
                  {(across) => (
                    <SectionView
                      section={section}
                      words={sectionWords(section, units)}
                      theme={theme}
                      size={across}
                      at={null}
                    />
                  )}
                </Grown>
                <p>{formatDepth(z, units)} deep</p>
              </div>
            )
          );
        })}
      </div>
      {along && profile !== null && width > 0 && (
        <>
          <Grown theme={theme} width={Math.min(width, PROFILE.most)} height={PROFILE.height}>
            {(across, down) => (
              <ProfileView profile={profile} theme={theme} width={across} height={down} at={null} />
            )}
          </Grown>
          <p className="gallery-small">size along the depth, across</p>
        </>
      )}
      {map !== null && width > 0 && (
        <Grown theme={theme} width={width} height={mapFrame(map, width, MAP_HIGH).height}>
          {(across, down) => (
            <FlatMap map={map} frame={mapFrame(map, across, down)} theme={theme} id={id} />
          )}
        </Grown>
      )}
    </figure>
  );
}

/** The wall alone: where to grind and where to read next is no matter here. */
function plain(map: MapFigure | null): MapFigure | null {
  return map && { ...map, sure: [], possible: [], next: [], seats: [], marks: [], load: null };
}

/** The flat drawings, one at a time: the map, the bore cut across at the cursor, and its size along the depth. */
import { useMemo } from 'react';
import { ProfileView } from '../../drawings/ProfileView.tsx';
import { SectionView } from '../../drawings/SectionView.tsx';
import type { BoreFacts, SurveyEvaluation } from '../../evaluate.ts';
import type { Theme } from '../../figures/colour.ts';
import type { MapFigure } from '../../figures/map.ts';
import type { MapFrame } from '../../figures/mapFrame.ts';
import { profileFigure } from '../../figures/profileFigure.ts';
import { sectionFigure } from '../../figures/sectionFigure.ts';
import { formatDepth, inUnits } from '../../job/units.ts';
import { useSession } from '../../store/session.ts';
import { MapView } from './MapView.tsx';

export type Page = 'map' | 'across' | 'along';

export const PAGES = [
  { page: 'map', name: 'Map' },
  { page: 'across', name: 'Across' },
  { page: 'along', name: 'Along' },
] as const;

interface Props {
  readonly page: Page;
  readonly survey: SurveyEvaluation;
  readonly facts: BoreFacts;
  readonly map: MapFigure;
  readonly frame: MapFrame;
  readonly theme: Theme;
  /** Factor that wear is drawn with in the section. */
  readonly exaggeration: number;
  readonly id: string;
  /** Room across, CSS pixels. */
  readonly width: number;
}

export function Sheet(props: Props) {
  if (props.page === 'across') return <Across {...props} />;
  if (props.page === 'along') return <Along {...props} />;
  const { map, frame, theme, id } = props;
  return <MapView map={map} frame={frame} theme={theme} id={id} />;
}

/** Where nobody points, the depth of the first readings is shown. */
function Across({ survey, map, frame, theme, exaggeration, width }: Props) {
  const cursor = useSession((session) => session.cursor);
  const z = cursor?.z ?? survey.sections[0]?.z ?? 0;
  const section = useMemo(() => sectionFigure(survey, z, exaggeration), [survey, z, exaggeration]);
  if (section === null) return null;
  const depth = `${formatDepth(z, map.units)} deep`;
  const size = Math.round(Math.min(frame.height, 0.6 * width));
  const thin = section.about === 'target' ? 'the size wanted' : 'the average of the whole wall';
  return (
    <figure className="sheet-figure" style={{ height: frame.height, width }}>
      <SectionView
        section={section}
        theme={theme}
        size={size}
        depth={depth}
        at={cursor?.theta ?? null}
      />
      <figcaption>
        Cut across {depth}, wear drawn ×{exaggeration}. Thin circle: {thin}; dashed: the average
        round here; grey: the give-or-take.
      </figcaption>
    </figure>
  );
}

const NARROW = 520;

function Along({ survey, facts, map, frame, theme, width }: Props) {
  const profile = useMemo(
    () => profileFigure(survey, facts, map.units),
    [survey, facts, map.units],
  );
  const cursor = useSession((session) => session.cursor);
  if (profile === null) return null;
  const { units } = map;
  const beside = width > NARROW ? 220 : 0;
  return (
    <figure className="sheet-figure" style={{ height: frame.height, width }}>
      <ProfileView
        profile={profile}
        theme={theme}
        width={Math.round(width - beside)}
        height={Math.round(frame.height - (beside > 0 ? 0 : 60))}
        at={cursor === null ? null : inUnits(cursor.z, units)}
      />
      <figcaption>
        Diameter across against depth, both in {units === 'in' ? 'inches' : 'millimetres'}, rim at
        the left. Full line: mean; dashed: least; dotted: greatest; bars: least to greatest at the
        measured depths; thin: wanted; thick: the bushing’s seat.
      </figcaption>
    </figure>
  );
}

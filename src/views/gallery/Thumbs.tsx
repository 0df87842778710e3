/** All patterns at a glance, each a link to its entry. */
import { memo, useMemo } from 'react';
import { MiniWearView, TwoEarsView } from '../../drawings/MiniWearView.tsx';
import type { Theme } from '../../figures/colour.ts';
import { GALLERY } from '../../figures/gallery.ts';
import { miniWear } from '../../figures/miniWear.ts';
import { madeBore } from '../../practice/madeBore.ts';
import { MADE_PATTERNS, type MadePattern } from '../../practice/patterns.ts';
import { galleryHash } from '../../store/gallery.ts';
import { useTheme } from '../../store/theme.ts';

export function Thumbs({ open }: { readonly open: string }) {
  const theme = useTheme(({ shown }) => shown);
  return (
    <nav aria-label="All wear patterns">
      <ul className="gallery-thumbs">
        {GALLERY.map(({ name, title }) => (
          <li key={name}>
            <a href={galleryHash(name)} aria-current={name === open ? 'page' : undefined}>
              <Thumb name={name} theme={theme} />
              <span>{title}</span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

const LENGTH = 60;
const RADIUS = 25;

const Thumb = memo(({ name, theme }: { readonly name: string; readonly theme: Theme }) => {
  const pattern = MADE_PATTERNS.find((one) => one.name === name);
  const mini = useMemo(() => pattern && miniOf(pattern), [pattern]);
  // The link says what it is in its own words.
  return (
    <span aria-hidden="true">
      {pattern?.usual === 0 && <TwoEarsView theme={theme} words="" />}
      {pattern?.usual !== 0 && mini && <MiniWearView mini={mini} theme={theme} />}
    </span>
  );
});

function miniOf(pattern: MadePattern) {
  const scale = { radius: RADIUS, length: LENGTH, size: pattern.usual };
  const { survey } = madeBore(pattern.truth(scale), RADIUS, LENGTH);
  return miniWear(survey, pattern.cuts[0]! * LENGTH, pattern.theta);
}

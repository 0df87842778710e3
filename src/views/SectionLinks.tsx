/** Where the notebook is, and a way to its other sections. */
import { useSession } from '../store/session.ts';
import { SECTIONS } from './sections.ts';

export function SectionLinks() {
  const here = useSession((session) => session.section);
  return (
    <nav className="section-links" aria-label="Notebook">
      {SECTIONS.map(({ name, title }) => (
        <a key={name} href={`#${name}`} aria-current={name === here ? 'location' : undefined}>
          {title}
        </a>
      ))}
    </nav>
  );
}

/** Which metals boss and bushing are taken to be of, chosen where it stands in the sentence. */
import { setBossMaterial, setBushingText } from '../../job/edits.ts';
import type { Job } from '../../job/schema.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import type { FitProps } from './fitProps.ts';

export function MetalLine({ bench: { bore }, found, one }: FitProps) {
  const edit = useJob((state) => state.edit);
  const { seated, press } = one;
  const names = found.metals.map(({ material }) => material.name);
  const choice = (
    label: string,
    text: string | undefined,
    taken: string,
    set: (now: Job, name: string) => Job,
  ) => {
    const own = text?.trim() ?? '';
    const all = own === '' || names.includes(own) ? names : [own, ...names];
    return (
      <Choice
        label={label}
        value={own === '' ? taken : own}
        options={all.map((name) => ({ value: name, text: name }))}
        onChoose={(name) => edit((now) => set(now, name))}
      />
    );
  };
  return (
    <p className="facts">
      Metal of the boss:{' '}
      {choice('Metal of the boss', bore.boss?.material, press.boss.material.name, (now, name) =>
        setBossMaterial(now, bore.id, name),
      )}
      {seated.id !== '' && (
        <>
          ; of the bushing:{' '}
          {choice(
            `Metal of ${seated.name}`,
            seated.material,
            press.bushing.material.name,
            (now, name) => setBushingText(now, bore.id, seated.id, 'material', name),
          )}
        </>
      )}
      .
    </p>
  );
}

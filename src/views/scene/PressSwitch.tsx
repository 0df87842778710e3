/** Where there is no drawing in three dimensions: shows on the map where the bushing presses, or says why it cannot. */
import { useSession } from '../../store/session.ts';
import type { LaidOf } from './LaidOver.tsx';
import { useShown } from './useShown.ts';
import { useWhyNotPressed } from './useWhyNotPressed.ts';

export function PressSwitch(of: LaidOf) {
  const { shown } = useShown(of);
  const why = useWhyNotPressed(of);
  const overlays = useSession((session) => session.overlays);
  const look = useSession((session) => session.look);
  if (why !== null) return <p className="drawing-sceneless">{why}</p>;
  return (
    <label className="press-switch">
      <input
        type="checkbox"
        checked={shown.pressure}
        onChange={(event) => look({ overlays: { ...overlays, pressure: event.target.checked } })}
      />
      where the bushing presses
    </label>
  );
}

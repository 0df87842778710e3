/** What the drawing's label says. */
import type { Session } from '../../store/session.ts';

export function viewWords({ view, roll, turn }: Pick<Session, 'view' | 'roll' | 'turn'>): string {
  if (turn !== null) return 'Turned by hand';
  if (view === 'half') return 'Cut in half';
  if (roll >= 1) return 'Rolled flat';
  return roll > 0 ? 'Rolling out' : 'Looking in at face A';
}

export function factorWords(factor: number): string {
  return factor === 1 ? 'wear at true size' : `wear drawn ×${factor}`;
}

export function rollWords(roll: number): string {
  if (roll <= 0) return 'a hole';
  return roll >= 1 ? 'a flat map' : `${Math.round(100 * roll)} % rolled out`;
}

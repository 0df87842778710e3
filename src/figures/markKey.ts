/** The key to what is drawn over the colours: only what this map holds. */
import type { MapFigure } from './map.ts';

export type MarkKind =
  | 'high'
  | 'low'
  | 'sure'
  | 'possible'
  | 'unsure'
  | 'next'
  | 'reading'
  | 'doubt'
  | 'keepout'
  | 'seat'
  | 'load';

export interface KeyMark {
  readonly kind: MarkKind;
  readonly words: string;
}

export function mapKey(map: MapFigure): KeyMark[] {
  const peak = (sought: 'high' | 'low') => map.zones.some(({ kind }) => kind === sought);
  const entries: readonly (KeyMark & { readonly held: boolean })[] = [
    { kind: 'high', held: peak('high'), words: 'stands proudest: take off so much' },
    { kind: 'low', held: peak('low'), words: 'lowest: so much short' },
    { kind: 'sure', held: map.sure.length > 0, words: 'teeth to metal that surely comes off' },
    {
      kind: 'possible',
      held: map.possible.length > 0,
      words: 'teeth to metal that possibly stands',
    },
    { kind: 'unsure', held: map.doubtful.length > 0, words: 'unsure: out of reach or hardly read' },
    { kind: 'reading', held: map.marks.some(({ suspect }) => !suspect), words: 'read here' },
    { kind: 'doubt', held: map.marks.some(({ suspect }) => suspect), words: 'reading in doubt' },
    { kind: 'next', held: map.next.length > 0, words: 'next reading' },
    { kind: 'keepout', held: map.keepouts.length > 0, words: 'leave alone' },
    { kind: 'seat', held: map.seats.length > 0, words: 'end of the bushing’s seat' },
    { kind: 'load', held: map.load !== null, words: 'the load pulls this way' },
  ];
  return entries.filter(({ held }) => held).map(({ kind, words }) => ({ kind, words }));
}

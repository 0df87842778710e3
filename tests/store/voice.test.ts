import { describe, expect, test } from 'vitest';
import { createVoice, type Synthesis } from '../../src/store/voice.ts';

const utter = (text: string) => ({ text }) as SpeechSynthesisUtterance;

function heard(voices: number, fails = false): { log: string[]; own: Synthesis } {
  const log: string[] = [];
  return {
    log,
    own: {
      cancel: () => log.push('cut short'),
      speak: ({ text }) => {
        if (fails) throw new Error('busy');
        log.push(text);
      },
      getVoices: () => Array.from({ length: voices }),
    },
  };
}

describe('the voice', () => {
  test('what is said next cuts short what was being said', () => {
    const { log, own } = heard(1);
    const voice = createVoice(own, utter);
    voice.say('one');
    voice.say('two');
    voice.hush();
    expect(log).toEqual(['cut short', 'one', 'cut short', 'two', 'cut short']);
    expect(voice.able()).toBe(true);
  });
  test('without a voice, or without speech at all, it says that it cannot, and never throws', () => {
    expect(createVoice(heard(0).own, utter).able()).toBe(false);
    const none = createVoice(undefined, utter);
    expect(none.able()).toBe(false);
    expect(() => none.say('one')).not.toThrow();
    expect(() => createVoice(heard(1, true).own, utter).say('one')).not.toThrow();
  });
});

/** The device's own voice. A new sentence cuts the one before short; nothing ever waits for it, or fails by it. */

/** What of the browser's speech synthesis is used; a test has its own. */
export interface Synthesis {
  cancel(): void;
  speak(words: SpeechSynthesisUtterance): void;
  getVoices(): readonly unknown[];
  addEventListener?(kind: 'voiceschanged', hear: () => void): void;
  removeEventListener?(kind: 'voiceschanged', hear: () => void): void;
}

export interface Voice {
  /** False where the browser has no voice, or not yet. */
  able(): boolean;
  say(text: string): void;
  hush(): void;
  /** Calls when a voice has come; returns how to stop listening. */
  follow(hear: () => void): () => void;
}

export function createVoice(
  synthesis: Synthesis | undefined,
  utter: (text: string) => SpeechSynthesisUtterance,
): Voice {
  const attempt = (what: (own: Synthesis) => void) => {
    try {
      if (synthesis !== undefined) what(synthesis);
    } catch {
      // A device that refuses to speak is silent; the screen says the same.
    }
  };
  return {
    able: () => (synthesis?.getVoices().length ?? 0) > 0,
    say: (text) =>
      attempt((own) => {
        own.cancel();
        own.speak(utter(text));
      }),
    hush: () => attempt((own) => own.cancel()),
    follow(hear) {
      synthesis?.addEventListener?.('voiceschanged', hear);
      return () => synthesis?.removeEventListener?.('voiceschanged', hear);
    },
  };
}

/** A little quicker than a voice's own pace: the next reading waits for nobody. */
const RATE = 1.15;

export const voice = createVoice(globalThis.speechSynthesis, (text) => {
  const words = new SpeechSynthesisUtterance(text);
  words.lang = 'en';
  words.rate = RATE;
  return words;
});

/** The demo jobs, each its own chunk, fetched when it is opened. */
const TITLES = import.meta.glob<string>('../../demo-data/*.roundhand.json', {
  import: 'title',
  eager: true,
});
const TEXTS = import.meta.glob<string>('../../demo-data/*.roundhand.json', {
  query: '?raw',
  import: 'default',
});

export interface Demo {
  readonly name: string;
  readonly title: string;
  text(): Promise<string>;
}

/** The one that a first visit opens. */
const FIRST = /slipway-winch/;

/** The first one first, the others by title. */
export const demos: readonly Demo[] = Object.entries(TEXTS)
  .map(([path, text]) => ({
    name: path.slice(path.lastIndexOf('/') + 1),
    title: TITLES[path] ?? path,
    text,
  }))
  .sort((a, b) => {
    const first = Number(FIRST.test(b.name)) - Number(FIRST.test(a.name));
    // Titles of our own in plain letters: a collator would hold up the opening of the page.
    return first || (a.title < b.title ? -1 : 1);
  });

// What a refusal offers, taken from its words, as changes of the file: each a list of [path, value].
/** Changes that the sentence of a failing check offers, in its order. */
export function offersOf(says) {
  const offers = [];
  const counts = /(\d+) \/ (\d+) \/ (\d+) × (\d+)/g;
  for (const list of says.matchAll(
    /Nearest sets that (?:work|pass)[^:]*?( with profileShift: solve)? \([^)]*\): ([^.]*)/g,
  ))
    for (const [, sun, planet, ring, count] of list[2].matchAll(counts))
      offers.push([
        ['sun.teeth', Number(sun)],
        ['planets.teeth', Number(planet)],
        ['ring.teeth', Number(ring)],
        ['planets.count', Number(count)],
        ...shifts(list[1] ? 'solve' : 'none'),
      ]);
  if (/profileShift: solve would make it work/.test(says)) offers.push(shifts('solve'));
  if (/planets\.spacing: nearest would/.test(says)) offers.push([['planets.spacing', 'nearest']]);
  for (const [, list] of says.matchAll(/Nearest that works: (.*)\.$/g)) offers.push(...changesIn(list));
  for (const [, list] of says.matchAll(/; (\S+ [^;]*(?:; [^;]*)*) would do too/g))
    offers.push(...changesIn(list));
  for (const [, list] of says.matchAll(
    /, ((?:(?:module|transverseModule|faceWidth) [\d.]+(?: and )?)+) or less/g,
  ))
    offers.push(list.split(' and ').map(oneChange));
  for (const [, list] of says.matchAll(/planets\.count ([\d or]+) with the same teeth/g))
    for (const count of list.split(' or ')) offers.push([['planets.count', Number(count)]]);
  return offers;
}

/** `fit.gap 0.2; module 1.8, rack B` */
function changesIn(list) {
  return list.split('; ').map((one) => one.split(', ').map(oneChange));
}

function oneChange(text) {
  const [, path, value] = /^(\S+) (.*)$/.exec(text);
  if (value === 'left out') return [path, undefined];
  return [path, value.trim() === '' || Number.isNaN(Number(value)) ? value : Number(value)];
}

const shifts = (form) => [
  ['profileShift', form],
  ['sun.profileShift', undefined],
  ['planets.profileShift', undefined],
  ['ring.profileShift', undefined],
];

/** A copy of `file` with changes made; undefined takes a value out. */
export function withChanges(file, changes) {
  const copy = structuredClone(file);
  for (const [path, value] of changes) {
    const keys = path.split('.');
    const last = keys.pop();
    let group = copy;
    for (const key of keys) {
      if (typeof group[key] !== 'object' || group[key] === null || Array.isArray(group[key])) group[key] = {};
      group = group[key];
    }
    if (value === undefined) delete group[last];
    else group[last] = structuredClone(value);
  }
  return copy;
}

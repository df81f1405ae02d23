// The table of keys: it lists every key there is, and no key means two things in one place.
import { expect, test } from 'vitest';
import { familyActions } from '../../renderer/family/family-actions';
import { STEPS } from '../../renderer/family/use-walking';

test('no key of the family means two things', () => {
  const chords = familyActions.flatMap((action) => action.keys);
  expect(chords.filter((chord, at) => chords.indexOf(chord) !== at)).toEqual([]);
});

test('every step that the drawing takes on a key is listed', () => {
  const listed = familyActions.flatMap((action) => action.keys);
  expect(listed).toEqual(expect.arrayContaining(Object.keys(STEPS).map((key) => key.toLowerCase())));
  expect(listed).toEqual(expect.arrayContaining(['enter', 'space']));
});

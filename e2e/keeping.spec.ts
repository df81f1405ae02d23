// What is typed and recorded stays: drafts after the program is killed, corrections, undo across restarts, history,
// photographs. The half second is the issue's; nothing here measures speed.
import { complaintsByDayAndNight, complaintsOfAxe } from './axe';
import { moreOf, openOutcome, recordBatch, toBatches, toHistory, toSources, underMore } from './recording';
import { expect, test } from './window';

test.use({ seed: 'empty' });

const wait = (ms: number): Promise<void> =>
  new Promise((done) => {
    setTimeout(done, ms);
  });

test('after SIGKILL every character typed more than half a second earlier is back in its field', async ({
  program,
}) => {
  await recordBatch(program.page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  await toBatches(program.page);
  await program.page.keyboard.press('n');
  const fields = {
    'Made on': '18 May 2026',
    'Name for this batch (optional)': 'windowsill',
    'How many jars': 'thr',
    Milk: 'whole milk from the corner shop',
    'How much milk': '3 ha', // half typed, and wrong so far
    Vessel: 'quart jar',
    'Final volume': '940 ml',
    'Stirred in': 'oat bran',
    Amount: '2 tbsp',
    'Held for': '36',
    'Planned warmth': '38,2 °C',
    'Note on the batch': 'The bath stood by the open window.',
  };
  await program.page.getByRole('button', { name: /^More: another seed/ }).click();
  for (const [label, text] of Object.entries(fields))
    await program.page.getByLabel(label, { exact: true }).first().fill(text);
  await program.page.getByRole('combobox', { name: 'Seeded from' }).fill('10 ma');

  // A steady stream of typing, so that no pause ever gives a save its chance; then the power goes. Thrice, each time
  // after another length, so that no lucky moment hides a save that comes too seldom.
  let before = fields['Note on the batch'];
  for (const presses of [23, 34, 47]) {
    const note = program.page.getByLabel('Note on the batch');
    await note.focus();
    await note.press('Control+End');
    const typed: { text: string; at: number }[] = [];
    for (let n = 0; n < presses; n += 1) {
      const text = String(n % 10);
      await program.page.keyboard.type(text);
      typed.push({ text, at: Date.now() });
      await wait(50);
    }
    const killedAt = Date.now();
    await program.kill();
    const owed = typed
      .filter(({ at }) => at <= killedAt - 500)
      .map(({ text }) => text)
      .join('');
    expect(owed.length).toBeGreaterThan(5);

    await program.open();
    await toBatches(program.page);
    await expect(program.page.getByText('Unfinished entry restored.')).toBeVisible();
    for (const [label, text] of Object.entries(fields)) {
      if (label === 'Note on the batch') continue;
      await expect(program.page.getByLabel(label, { exact: true }).first()).toHaveValue(text);
    }
    await expect(program.page.getByRole('combobox', { name: 'Seeded from' })).toHaveValue('10 ma');
    const back = await program.page.getByLabel('Note on the batch').inputValue();
    expect(back.slice(0, before.length + owed.length)).toBe(`${before}${owed}`);
    before = back;
  }
});

test('an outcome, a source and a package are back in their fields too', async ({ program }) => {
  const { batch } = await recordBatch(program.page, '2026-05-16', ['a'], { product: 'Blue Tin' });
  await toBatches(program.page);
  await program.page.getByRole('button', { name: /^16 May/ }).click();
  await openOutcome(program.page.getByRole('region', { name: '16 May a', exact: true }));
  await program.page.getByLabel('pH', { exact: true }).fill('4.3');
  await program.page.getByLabel('Smell', { exact: true }).fill('clean, a little yeasty');
  await program.page.getByText('None of these').click();
  await wait(600);
  await program.kill();

  await program.open();
  await toBatches(program.page);
  await program.page.getByRole('button', { name: 'Go on with the outcome of 16 May a' }).click();
  await expect(program.page.getByText('Unfinished entry restored.')).toBeVisible();
  await expect(program.page.getByLabel('pH', { exact: true })).toHaveValue('4.3');
  await expect(program.page.getByLabel('Smell', { exact: true })).toHaveValue('clean, a little yeasty');
  await expect(program.page.getByRole('checkbox', { name: 'None of these' })).toBeChecked();

  await toSources(program.page);
  await program.page.getByRole('button', { name: 'New source' }).click();
  await program.page.getByLabel('Name', { exact: true }).fill('Meadow Pot');
  await program.page.getByLabel('Genus').fill('Lactobacillus');
  await wait(600);
  await program.kill();
  await program.open();
  await toSources(program.page);
  await expect(program.page.getByLabel('Name', { exact: true })).toHaveValue('Meadow Pot');
  await expect(program.page.getByLabel('Genus')).toHaveValue('Lactobacillus');
  await program.page.getByRole('button', { name: 'Cancel' }).click();

  await program.page.getByRole('button', { name: 'New package' }).click();
  await program.page.getByLabel('What is in it').fill('oat bran');
  await program.page.getByLabel('Price').fill('2,4');
  await wait(600);
  await program.kill();
  await program.open();
  await toSources(program.page);
  await expect(program.page.getByLabel('What is in it')).toHaveValue('oat bran');
  await expect(program.page.getByLabel('Price')).toHaveValue('2,4');
  expect(batch).toBeTruthy();
});

test.describe('800 px wide', () => {
  test.use({ size: { width: 800, height: 900 } });
  test('a name of which nothing is seen is asked for again, and the longest one wraps', async ({ page }) => {
    await toSources(page);
    await page.getByRole('button', { name: 'New source' }).click();
    const name = page.getByLabel('Name', { exact: true });
    await name.fill('\u200B\u200D');
    await page.keyboard.press('Control+Enter');
    await expect(page.getByText('Type the name on the label.').first()).toBeVisible();
    const longest = 'L'.repeat(200);
    await name.fill(longest);
    await page.keyboard.press('Control+Enter');
    await expect(page.getByRole('heading', { name: longest })).toBeVisible();
    const wider = await page.locator('main').evaluate((main) => main.scrollWidth - main.clientWidth);
    expect(wider).toBe(0);
  });
});

test('a source with strains and a package are recorded and shown', async ({ page }) => {
  await toSources(page);
  await page.getByRole('button', { name: 'New source' }).click();
  await page.getByLabel('Name', { exact: true }).fill('Blue Tin');
  await page.getByText('Capsules', { exact: true }).click();
  await page.getByLabel('Count of all strains together').fill('5 billion');
  await page.getByText('Until expiry').click();
  await page.getByLabel('Genus').fill('Lactobacillus');
  await page.getByLabel('Species').fill('inventus');
  await page.getByLabel('Strain name').fill('Heron 4');
  await page.getByLabel('Count in one piece', { exact: true }).fill('2 billion');
  await page.keyboard.press('Control+Enter');
  const card = page
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name: 'Blue Tin', exact: true }) });
  await expect(card).toContainText('5 billion a capsule, all strains together');
  await expect(card).toContainText('Counts guaranteed until expiry.');
  await expect(card).toContainText('not used yet');
  await expect(card).toContainText('Lactobacillus inventus Heron 4');
  await expect(
    page.getByText('Strains and counts are as declared at the start, not tested since.'),
  ).toBeVisible();

  await card.getByRole('button', { name: 'Add a package of Blue Tin' }).click();
  await page.getByLabel('Size').fill('60 capsules');
  await page.getByLabel('Price').fill('€18,50');
  await page.getByLabel('Opened on').fill('1 May');
  await page.keyboard.press('Control+Enter');
  await expect(card.getByRole('list', { name: 'Packages of Blue Tin' })).toContainText(
    /60 of 60 left.*18\.50 EUR.*0\.31 EUR a piece/,
  );
  await expect(card).toContainText(/opened 1 May 2026/i);
});

test('corrections: a reason is kept, a refused one is explained and keeps what was typed', async ({
  page,
}) => {
  const first = await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  await recordBatch(page, '2026-05-14', ['a'], { jar: first.jars[0]! });
  await toBatches(page);
  await page.getByRole('button', { name: /^10 May/ }).click();
  await page.getByRole('button', { name: 'Correct day, word, note' }).click();
  await page.getByLabel('Made on').fill('18 May');
  await page.keyboard.press('Control+Enter');
  const refused = page.getByRole('alert');
  await expect(refused).toContainText('14 May');
  await expect(page.getByLabel('Made on')).toHaveValue('18 May');
  await page.getByLabel('Made on').fill('9 May');
  await page.getByLabel('Why it is corrected').fill('It was past midnight.');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByRole('heading', { name: '9 May 2026' })).toBeVisible();

  const jar = page.getByRole('region', { name: '9 May a', exact: true });
  await underMore(jar, 'What seeded it');
  await page.getByLabel('How many pieces').fill('12 capsules');
  await page.keyboard.press('Control+Enter');
  await expect(jar).toContainText('12 capsules of Blue Tin');

  await page.getByRole('button', { name: 'Correct the warmth' }).click();
  await page.getByLabel('Held for').fill('38');
  await page.getByText('Start and end, note').click();
  await page.getByLabel('Started').fill('18:30');
  await page.getByLabel('Ended').fill('11 May 8:30');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByText('38 hours')).toBeVisible();
  await expect(page.getByText('9 May 2026 18:30 to 11 May 2026 08:30')).toBeVisible();

  await underMore(jar, 'Keep some back');
  await page.getByText('Freezer').click();
  await page.getByLabel('Cubes or pieces').fill('6');
  await page.keyboard.press('Control+Enter');
  await expect(jar).toContainText('6 freezer cubes, a reserve, kept since 20 May 2026');
  await underMore(jar, 'What was kept back, freezer');
  await expect(page.getByLabel('Cubes or pieces')).toHaveValue('6');
  await page.getByLabel('Gone on').fill('20 May');
  await page.keyboard.press('Control+Enter');
  await expect(jar).toContainText('6 freezer cubes, a reserve, gone on 20 May 2026');
  await jar.getByRole('button', { name: 'Gone' }).click();
  await expect(jar.getByText('gone', { exact: true })).toBeVisible();

  await underMore(jar, 'Its history');
  await expect(page.getByRole('heading', { name: /^History of/ })).toBeVisible();
  await page.getByRole('button', { name: 'Show the whole history' }).click();
  await expect(page.getByText('Why: It was past midnight.')).toBeVisible();
});

test('undo and redo across a restart; entered by mistake; a lost jar; undo from the history', async ({
  program,
}) => {
  const first = await recordBatch(program.page, '2026-05-10', ['a', 'b'], { product: 'Blue Tin' });
  await recordBatch(program.page, '2026-05-14', ['a'], { jar: first.jars[0]! });
  await program.close();
  await program.open();
  await toBatches(program.page);
  await expect(program.page.getByRole('button', { name: /^14 May/ })).toBeVisible();
  await program.page.keyboard.press('Control+z');
  await expect(program.page.getByRole('button', { name: /^14 May/ })).toHaveCount(0);
  await program.close();
  await program.open();
  await toBatches(program.page);
  await program.page.keyboard.press('Control+Shift+z');
  await expect(program.page.getByRole('button', { name: /^14 May/ })).toBeVisible();

  await program.page.getByRole('button', { name: /^10 May/ }).click();
  const seed = program.page.getByRole('region', { name: '10 May a', exact: true });
  await underMore(seed, 'Entered by mistake');
  const asked = program.page.getByRole('dialog', { name: '10 May a: entered by mistake?' });
  await expect(asked).toContainText('until you say what really seeded it');
  await asked.getByRole('button', { name: 'Take it back' }).click();
  await expect(seed).toHaveCount(0);
  await program.page.getByRole('button', { name: /^14 May/ }).click();
  await expect(program.page.getByRole('region', { name: '14 May a', exact: true })).toContainText(
    'of 10 May a (entered by mistake)',
  );

  await toHistory(program.page);
  await program.page.getByRole('checkbox').first().check();
  await program.page.getByRole('button', { name: 'Undo it', exact: true }).click();
  await expect(program.page.getByText('undone since').first()).toBeVisible();
  await toBatches(program.page);
  await program.page.getByRole('button', { name: /^10 May/ }).click();
  await expect(moreOf(seed)).toBeVisible();

  await program.page.getByRole('button', { name: 'Lost jar' }).click();
  await program.page.getByLabel('What it is called').fill('the good one');
  await program.page.keyboard.press('Control+Enter');
  await expect(program.page.getByText('Recorded a lost jar.')).toBeVisible();
  await program.page.getByRole('button', { name: 'New batch' }).click();
  await program.page.getByRole('combobox', { name: 'Seeded from' }).fill('the good');
  await expect(program.page.getByRole('option').first()).toContainText('stands for a jar nobody can name');
});

test('a photograph is added from a file, and nothing but the picture is kept', async ({ page }) => {
  const { jars } = await recordBatch(page, '2026-05-16', ['a'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.getByRole('button', { name: /^16 May/ }).click();
  const jar = page.getByRole('region', { name: '16 May a', exact: true });
  const picture = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(640, 480);
    canvas.getContext('2d')!.fillRect(100, 100, 200, 200);
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/png' })).arrayBuffer())];
  });
  await jar
    .getByLabel('Add a photograph')
    .setInputFiles({ name: 'jar.png', mimeType: 'image/png', buffer: Buffer.from(picture) });
  const shown = jar.getByRole('img', { name: '16 May a, photograph 1' });
  await expect(shown).toBeVisible();
  await expect.poll(() => shown.evaluate((image: HTMLImageElement) => image.naturalWidth)).toBe(640);
  await jar
    .getByLabel('Add a photograph')
    .setInputFiles({ name: 'list.txt', mimeType: 'text/plain', buffer: Buffer.from('milk, oats') });
  await expect(jar.getByRole('alert')).toContainText('can’t be read as a picture');
  const listed = await page.evaluate((id) => window.jarline.call['photograph.list']({ jar: id }), jars[0]!);
  expect(listed).toMatchObject({ ok: true, value: { photographs: [{ width: 640, height: 480 }] } });
});

test.describe('800 wide', () => {
  test.use({ size: { width: 800, height: 900 } });
  test('no screen of recording has a complaint of axe, nor scrolls sideways', async ({ page }) => {
    const first = await recordBatch(page, '2026-05-10', ['a', 'b'], { product: 'Blue Tin' });
    await recordBatch(page, '2026-05-14', ['a', 'b'], { jar: first.jars[0]! });
    const holds = async (screen: string): Promise<void> => {
      await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
      expect(await complaintsByDayAndNight(page), screen).toEqual([]);
      const wide = await page.evaluate(
        () => document.querySelector('main')!.scrollWidth - document.querySelector('main')!.clientWidth,
      );
      expect(wide, `${screen} fits its width`).toBeLessThanOrEqual(0);
    };
    await toBatches(page);
    await holds('batches');
    await page.keyboard.press('r');
    await page.getByRole('combobox', { name: 'Seeded from' }).fill('10');
    await expect(page.getByRole('option').first()).toBeVisible();
    await holds('picking a seed');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: /^More: another seed/ }).click();
    await page.getByRole('button', { name: 'Seed it otherwise: jar b' }).click();
    await holds('new batch');
    await page.getByRole('button', { name: 'Discard this entry' }).click();
    await page.getByRole('button', { name: 'Remember earlier jars' }).click();
    await page.getByLabel('Seeded from, row 1').fill('Moss Pot');
    await page.keyboard.press('Control+Enter');
    await expect(page.getByText(/^Say about when/)).toBeVisible();
    await holds('earlier jars');
    await page.getByRole('button', { name: 'Discard this entry' }).click();
    await page.getByRole('button', { name: /^14 May/ }).click();
    await expect(page.getByRole('heading', { level: 1, name: /^14 May/ })).toBeFocused();
    await holds('open batch');
    await openOutcome(page.getByRole('region', { name: '14 May a', exact: true }));
    await page.getByText('I am writing this down later').click();
    await holds('outcome');
    await toSources(page);
    await page.getByRole('button', { name: 'New source' }).click();
    await holds('sources');
    await toHistory(page);
    await page.getByText('What changed').first().click();
    await holds('history');
  });
});

test('the history is found by words, and several acts are undone as one with what stands on them', async ({
  page,
}) => {
  const first = await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  await recordBatch(page, '2026-05-14', ['a'], { jar: first.jars[0]! });
  await toHistory(page);
  const rows = page.locator('.act');
  await expect(rows.first()).toBeVisible();
  const all = await rows.count();
  await page.getByLabel('Find in the history').fill('10 may');
  await expect(rows).toHaveCount(1);
  await rows.getByRole('checkbox').check();
  const panel = page.getByRole('complementary', { name: 'Undo what is chosen' });
  await expect(panel).toContainText('What stands on it and goes too');
  await expect(panel).toContainText('Recorded 14 May a');
  expect(await complaintsOfAxe(page)).toEqual([]);
  await panel.getByRole('button', { name: 'Undo all two' }).click();
  await page.getByLabel('Find in the history').fill('');
  await expect(rows).toHaveCount(all + 1);
  await expect(page.locator('.act.undone')).toHaveCount(2);
  await page.getByRole('button', { name: /^Redo/ }).click();
  await expect(page.locator('.act.undone .act-says', { hasText: /^Recorded/ })).toHaveCount(0);
});

test('what is read while the pointer is down waits for it to come up: what is pressed stays under it', async ({
  page,
}) => {
  await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  await toHistory(page);
  const rows = page.locator('.act');
  const [recorded, product] = [1, 1];
  await expect(rows).toHaveCount(recorded + product);
  const box = rows.last().getByRole('checkbox');
  const at = (await box.boundingBox())!;
  await page.mouse.move(at.x + at.width / 2, at.y + at.height / 2);
  await page.mouse.down();
  // Recorded as from elsewhere: a line more at the top, which the page reads at once.
  await page.evaluate(async () => {
    await window.jarline.call['act.undo']({ act: null });
    for (let frame = 0; frame < 10; frame++) await new Promise((drawn) => requestAnimationFrame(drawn));
    await window.jarline.call['history.list']({ record: null, before: null, limit: 1 });
  });
  await page.mouse.up();
  await expect(rows).toHaveCount(recorded + product + 1);
  await expect(box).toBeChecked();
});

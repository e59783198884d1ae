import type { Rung } from '@pullbook/core/reach';
import { expect, test } from 'vitest';
import { servedBook } from './testing/served-book.ts';

const { ask, book } = servedBook('demo');

const REACH = `/api/combinations/${encodeURIComponent('Supercharged, base cam')}/reach`;
/** Little is searched: the search is tested where it is written. */
const WITHOUT = 'fuel,cooler,supercharger,stepUp,breathing,speedLimit,pump,belt,injectors';

let kept = '';

test('a bundle holds all that the page searches by; what cannot be asked is refused in words', async () => {
  const bundle = (await ask('GET', `${REACH}?power=520hp&without=fuel,cooler`)).json();
  expect(bundle.asked).toMatchObject({ power: '520hp', what: 'peak power', without: ['fuel', 'cooler'] });
  expect(bundle.input.target.power).toBeCloseTo(387_764, -1);
  expect(bundle.input.fuels).toEqual([]);
  expect(bundle.input.blowerPulleys.length).toBeGreaterThan(10);
  const wrong = await ask('GET', `${REACH}?power=520 bananas`);
  expect(wrong.statusCode).toBe(400);
  expect(wrong.json().error.message).toContain('520 bananas');
  expect((await ask('GET', REACH.replace('base', 'no'))).statusCode).toBe(404);
  const kind = await ask('GET', `${REACH}?power=520hp&without=wings`);
  expect(kind.json().error.message).toContain('wings');
});

test('an answer is kept by the same search, found and shown with its stamp', async () => {
  const { asked } = (await ask('GET', `${REACH}?power=500hp&without=${WITHOUT}`)).json();
  const made = await ask('POST', '/api/enquiries', {
    combinationId: 'Supercharged, base cam',
    asked,
    question: 'A smaller pulley for 500 hp?',
  });
  expect(made.statusCode).toBe(201);
  kept = made.json().id;
  const list = (await ask('GET', '/api/enquiries?find=smaller%20500&units=si&decimal=,')).json();
  expect(list).toMatchObject({
    total: 1,
    all: 1,
    rows: [{ id: kept, question: 'A smaller pulley for 500 hp?' }],
  });
  expect((await ask('GET', '/api/enquiries?find=nothing')).json().rows).toEqual([]);
  const shown = (await ask('GET', `/api/enquiries/${kept}`)).json();
  expect(shown).toMatchObject({ enquiry: { id: kept, asked }, remarks: [], isInvented: true });
  expect(shown.stamp).toBe(await book().stamp(`enquiry ${kept}`));
  expect((await ask('GET', '/api/enquiries/nothing')).statusCode).toBe(404);
  const odd = await ask('POST', '/api/enquiries', { combinationId: 'x', asked: { ...asked, what: 'luck' } });
  expect(odd.json().error.code).toBe('wrong-shape');
});

test('a rung becomes a trial once, and is taken back at once', async () => {
  const { enquiry } = (await ask('GET', `/api/enquiries/${kept}`)).json();
  // The 80 mm pulley was pulled already.
  const rung = (enquiry.answer.answer.rungs as Rung[]).find(
    ({ changes }) => !changes.some(({ edits }) => edits.some(({ text }) => text?.startsWith('80'))),
  )!;
  const url = `/api/enquiries/${kept}/rungs/${rung.id}/plan`;
  const planned = await ask('POST', url, {});
  expect(planned.statusCode).toBe(201);
  expect(planned.json()).toMatchObject({ enquiryId: kept, rungId: rung.id, predictions: 2 });
  const trial = await ask('GET', `/api/trials/${planned.json().trial.id}`);
  expect(trial.json().question).toBe(planned.json().trial.question);
  const again = await ask('POST', url, {});
  expect([again.statusCode, again.json().error.code]).toEqual([400, 'planned-already']);
  expect((await ask('POST', '/api/undo', { uid: null })).statusCode).toBe(200);
  expect((await ask('GET', `/api/enquiries/${kept}`)).json().enquiry.became).toEqual([]);
});

test('a card is looked at without a note, and noted when it leaves', async () => {
  const seen = await ask('GET', `/api/enquiries/${kept}/card?size=square&theme=dark&download=1`);
  expect(seen.headers['content-type']).toContain('image/svg+xml');
  expect(seen.headers['content-disposition']).toContain('a-smaller-pulley-for-500-hp-card');
  expect((await ask('GET', `/api/enquiries/${kept}`)).json().enquiry.cards).toEqual([]);
  const left = await ask('POST', `/api/enquiries/${kept}/cards`, {
    format: 'svg',
    size: 'square',
    theme: 'dark',
  });
  expect(left.statusCode).toBe(201);
  const { cards } = (await ask('GET', `/api/enquiries/${kept}`)).json().enquiry;
  expect(cards).toMatchObject([{ name: left.json().name }]);
  expect(seen.headers['content-disposition']).toContain(left.json().name);
  expect((await ask('GET', `/api/enquiries/${kept}/card?size=vast`)).statusCode).toBe(400);
});

test('the parts list is shown, changed on what was looked at, refused with its place, and reset', async () => {
  const before = (await ask('GET', '/api/parts?units=si')).json();
  expect(before).toMatchObject({ isOwn: false, page: { costClasses: expect.any(Array) } });
  const { stamp } = before;
  const parts = { ...before.parts, blowerPulleys: before.parts.blowerPulleys.slice(0, 2) };
  const changed = await ask('PUT', '/api/parts', { parts, stamp });
  expect(changed.json()).toMatchObject({ isOwn: true });
  expect(changed.json().parts.blowerPulleys).toHaveLength(2);
  expect((await ask('PUT', '/api/parts', { parts, stamp })).statusCode).toBe(409);
  const wrong = await ask('PUT', '/api/parts', { parts: { blowerPulleys: [{ diameter: '8 bananas' }] } });
  expect(wrong.statusCode).toBe(400);
  expect(wrong.json().error.message).toContain('8 bananas');
  expect((await ask('PUT', '/api/parts', { parts: null })).json()).toMatchObject({ isOwn: false });
});

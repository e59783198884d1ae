import { expect, test } from 'vitest';
import { servedBook } from './testing/served-book.ts';

const { ask } = servedBook('empty');

test('settings are kept, refused in words, and stand in the start page as text that cannot break out of it', async () => {
  const kept = await ask('PATCH', '/api/settings', { units: 'si', shopName: '"><script>1</script>' });
  expect(kept.json()).toMatchObject({ units: 'si' });
  const refused = await ask('PATCH', '/api/settings', { units: 'furlongs' });
  expect(refused.statusCode).toBe(400);
  expect(refused.json().error.message).toContain('Accepted: us, si');
  const { body } = await ask('GET', '/');
  expect(body).not.toContain('<script>');
  const content = /content="([^"]*)"/.exec(body)![1]!;
  const read = JSON.parse(
    content
      .replace(/&quot;/g, '"')
      .replace(/&lt;/g, '<')
      .replace(/&amp;/g, '&'),
  );
  expect(read).toMatchObject({ units: 'si', shopName: '"><script>1</script>' });
});

test('a mark is served as a picture that may do nothing, and is not there before it is kept', async () => {
  expect((await ask('GET', '/api/settings/mark')).statusCode).toBe(404);
  const svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 3 2"/>';
  await ask('PATCH', '/api/settings', { mark: { base64: Buffer.from(svg).toString('base64') } });
  const served = await ask('GET', '/api/settings/mark');
  expect(served.headers['content-type']).toContain('image/svg+xml');
  expect(served.headers['content-security-policy']).toContain('sandbox');
  expect(served.body).toBe(svg);
});

test('a cell with instrument and calibration; two windows do not overwrite each other', async () => {
  const added = await ask('POST', '/api/cells', { name: 'Cell 1', altitude: '210 m' });
  expect(added.statusCode).toBe(201);
  const { id } = added.json();
  const instrument = await ask('POST', `/api/cells/${id}/instruments`, {
    name: 'Load cell',
    measures: 'torque',
  });
  expect(instrument.statusCode).toBe(201);
  const path = `/api/cells/${id}/instruments/${instrument.json().instrumentId}/calibrations`;
  expect((await ask('POST', path, { day: '2026-03-10' })).statusCode).toBe(201);
  expect((await ask('POST', path, { day: '10 March' })).json().error.message).toContain('not a day');
  const [cell] = (await ask('GET', '/api/cells?units=us')).json().cells;
  expect(cell).toMatchObject({ altitudeM: 210, altitudeText: '689\u00a0ft' });
  const first = await ask('PATCH', `/api/cells/${id}`, { change: { brake: 'water' }, stamp: cell.stamp });
  expect(first.statusCode).toBe(200);
  const second = await ask('PATCH', `/api/cells/${id}`, { change: { brake: 'eddy' }, stamp: cell.stamp });
  expect(second.statusCode).toBe(409);
  expect((await ask('PATCH', '/api/cells/nowhere', { change: { brake: 'x' } })).statusCode).toBe(404);
});

test('the shop’s own figures, its guess beside the built-in one, and no prediction of a trial that is not there', async () => {
  const figures = await ask('GET', '/api/figures?units=si&decimal=.');
  expect(figures.statusCode).toBe(200);
  expect(figures.json()).toMatchObject({ repeatability: null, pullsNotRead: 0, predictions: { lines: [] } });
  await ask('PATCH', '/api/settings', { scatterPrior: { pull: { injected: '0.3 %' } } });
  const { rows } = (await ask('GET', '/api/scatter-prior?units=si&decimal=,')).json();
  expect(rows[0]).toMatchObject({ path: 'pull.injected', builtIn: '0,40\u00a0%', own: '0,30\u00a0%' });
  const refused = await ask('PATCH', '/api/settings', { scatterPrior: { setUp: '50 %' } });
  expect(refused.statusCode).toBe(400);
  expect(refused.json().error.message).toContain('setUp: "50 %" cannot stand there');
  const prediction = { key: 'B', gain: '3 %', low: '1 %', high: '5 %', basis: 'a guess' };
  expect((await ask('POST', '/api/trials/nothing/predictions', prediction)).statusCode).toBe(404);
  expect((await ask('POST', '/api/trials/nothing/predictions', { key: 'B' })).statusCode).toBe(400);
});

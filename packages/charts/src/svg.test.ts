import { expect, test } from 'vitest';
import { inventedChart } from './invented-chart.test-support.ts';
import type { Scene } from './model.ts';
import { drawStack } from './stack.ts';
import { sceneToSvg } from './svg.ts';

/** A small strict reader: tags must nest and close, attributes be quoted, text and values escaped. */
function assertWellFormed(xml: string): void {
  const open: string[] = [];
  let rest = xml;
  while (rest !== '') {
    const text = /^[^<]+/u.exec(rest)?.[0];
    const tag = /^<(\/?)([a-zA-Z][\w-]*)((?: [a-zA-Z][\w-]*="[^"<]*")*)(\/?)>/u.exec(rest);
    if (text !== undefined) {
      expect(text).not.toMatch(/&(?!(?:amp|lt|gt|quot);)/u);
      expect(open.length, text).toBeGreaterThan(0);
      rest = rest.slice(text.length);
      continue;
    }
    if (!tag) throw new Error(`Not well formed at: ${rest.slice(0, 60)}`);
    const [whole, closing, name = '', attributes = '', empty] = tag;
    expect(attributes).not.toMatch(/&(?!(?:amp|lt|gt|quot);)/u);
    if (closing) expect(open.pop()).toBe(name);
    else if (!empty) open.push(name);
    rest = rest.slice(whole.length);
  }
  expect(open).toEqual([]);
}

test('a stack is well-formed XML with the alternative text', () => {
  const { scene } = drawStack(inventedChart(), {
    width: 860,
    height: 740,
    text: 13,
    theme: 'light',
    ground: true,
  });
  const svg = sceneToSvg(scene, { title: 'Longer cam' });
  assertWellFormed(svg);
  expect(svg).toContain('role="img"');
  expect(svg).toContain('<title>Longer cam</title>');
  expect(svg).toContain('B &amp; A cross below 4,000 rpm.</desc>');
});

test('what people type is text, never markup', () => {
  const scene: Scene = {
    width: 10,
    height: 10,
    alternative: 'a < b & "c" \u0007',
    nodes: [
      {
        tag: 'text',
        attributes: { x: 1, fill: '"><script>' },
        children: [],
        text: '<script>alert(1)</script> & \ud800 ]]>',
      },
    ],
  };
  const svg = sceneToSvg(scene);
  assertWellFormed(svg);
  expect(svg).not.toContain('<script');
  expect(svg).not.toContain('\u0007');
});

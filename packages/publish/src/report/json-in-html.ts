/** JSON that stands in a script element: no sign of it can end the element. */
export const jsonInHtml = (value: unknown): string =>
  JSON.stringify(value).replaceAll('<', String.raw`\u003c`);

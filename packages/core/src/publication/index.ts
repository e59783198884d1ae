export { figuresOf } from './figures-of.ts';
export * from './model.ts';
export { publicationsOf } from './publications-of.ts';
export { staleFigures } from './stale-figures.ts';

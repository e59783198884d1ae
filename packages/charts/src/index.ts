export * from './cursor.ts';
export * from './fonts.ts';
export * from './model.ts';
export * from './palette.ts';
export { drawStack } from './stack.ts';
export * from './still.ts';
export * from './svg.ts';
export * from './text-width.ts';
export * from './theme.ts';

export * from './still-image.ts';
export * from './still-name.ts';
export * from './still-size.ts';

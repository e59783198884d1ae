export { DEMO_SEED } from './demo-seed.ts';
export * from './model.ts';
export { demoScenario } from './scenario.ts';
